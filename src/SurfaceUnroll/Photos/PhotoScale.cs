using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>How far one mark, corner or side of the reference is from where all others put it.</summary>
/// <param name="Name">Which.</param>
/// <param name="Off">mm: a place to the right and up; of a side or a distance its misfit as X alone.</param>
/// <param name="Counts">It was weighed in; otherwise a tap that only led to what counts.</param>
/// <param name="OneWay">A side or a distance, which can only be off one way.</param>
public readonly record struct ReferenceResidual(string Name, Vec2 Off, bool Counts = true, bool OneWay = false);

/// <summary>What a reference tells of a photo: its camera and how well that is known.</summary>
/// <param name="Camera">Best guess.</param>
/// <param name="ErrorFactor">A row for each of the camera's numbers: makes independent numbers of spread 1 into errors of the camera's numbers.</param>
/// <param name="Freedom">Degrees of freedom that the size of the errors itself is known with; Student's t goes with it.</param>
/// <param name="Residuals">Of each part of the reference.</param>
/// <param name="BowIsKnown">The photo tells the bow of the lens; otherwise it is taken for nought, give or take what lenses have.</param>
/// <param name="Findings">What the user should know.</param>
public sealed record PhotoScale(
    PlaneCamera Camera, ImmutableArray<ImmutableArray<double>> ErrorFactor, int Freedom, ImmutableArray<ReferenceResidual> Residuals, bool BowIsKnown, ImmutableArray<Notice> Findings)
{
    /// <summary>Root of the mean square of the residuals that count, mm.</summary>
    public double Scatter => Math.Sqrt(Residuals.Where(r => r.Counts).Select(r => r.Off.Dot(r.Off)).DefaultIfEmpty().Average());

    /// <summary>A fit's error factor for the camera's numbers, times a spread that all residuals have in common.</summary>
    internal static ImmutableArray<ImmutableArray<double>> Errors(LeastSquaresFit fit, double spread) =>
        [.. Enumerable.Range(0, PlaneCamera.Count).Select(i => Enumerable.Range(0, fit.Values.Length).Select(k => spread * fit.ErrorFactor[i, k]).ToImmutableArray())];
}
