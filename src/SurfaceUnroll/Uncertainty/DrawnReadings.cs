using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Uncertainty;

/// <summary>The readings of a line that was drawn, or cut from a scan, where no single number was read: how far it lies off, square to itself, at independent places, and smoothly
/// from one to the next.</summary>
internal static class DrawnReadings
{
    // Places stand about this far apart, mm: what a template or a batten bridges (common practice, no source); no fewer and no more of them than this.
    private const double Pitch = 60;
    private const int Fewest = 4, Most = 16;

    // Ends this near to each other, or to the centreline, meet, mm.
    private const double Same = 1e-3;

    /// <summary>The readings of a drawn curve.</summary>
    public static IEnumerable<PartReading<CurveSpec>> Of(DrawnSpec spec)
    {
        var curve = new SpaceCurve(spec.Pieces);
        bool closed = !spec.Mirror && (curve.End.Point - curve.Start.Point).Length <= Same;
        int gaps = Math.Clamp((int)Math.Round(curve.Length / Pitch), Fewest - 1, Most - 1);
        double reach = curve.Length / gaps, error = spec.Errors.Each;
        for (int k = 0; k < (closed ? gaps : gaps + 1); k++)
        {
            CurveSample sample = curve.AtLength(k * reach);
            // On the centreline a mirrored line can only lie too high or too low.
            bool centre = spec.Mirror && (k == 0 || (k == gaps && Math.Abs(sample.Point.Y) <= Same));
            Vec3 normal = centre ? new Vec3(0, 0, 1) : new Vec3(0, -sample.Tangent.Z, sample.Tangent.Y);
            var bump = new Bump(k * reach, reach, closed ? curve.Length : 0, normal);
            yield return new($"file[{CurveReadings.Count(k)}]", $"the line of {{0}} at place {CurveReadings.Count(k + 1)} of {CurveReadings.Count(closed ? gaps : gaps + 1)} along it", error, false,
                (drawn, by) => ((DrawnSpec)drawn) with { Pieces = DisplacedPiece.Over(((DrawnSpec)drawn).Pieces, bump, by) });
        }
    }
}

/// <summary>A smooth hill along a line. The squares of neighbouring hills add up to 1 everywhere, so that a line which is off by them, each by chance, is off by as much between two
/// places as at one.</summary>
/// <param name="At">Its top, mm along the line.</param>
/// <param name="Reach">From its top to where it ends, mm: the top of the next.</param>
/// <param name="Period">Length of a closed line, mm; 0 for an open one.</param>
/// <param name="Normal">Unit vector along which it moves the line.</param>
internal readonly record struct Bump(double At, double Reach, double Period, Vec3 Normal)
{
    /// <summary>Height, 0 to 1, and its first two derivatives by length.</summary>
    public (double Height, double D1, double D2) Over(double s)
    {
        double from = s - At;
        if (Period > 0) from -= Period * Math.Round(from / Period);
        double x = Math.Abs(from) / Reach;
        if (x >= 1) return (0, 0, 0);
        // A quarter wave over a step with two vanishing derivatives at either end (6x⁵ − 15x⁴ + 10x³).
        double q = x * x * x * (x * (6 * x - 15) + 10), slope = 30 * x * x * (1 - x) * (1 - x), bend = 60 * x * (1 - x) * (1 - 2 * x);
        (double sin, double cos) = Math.SinCos(0.5 * Math.PI * q);
        double first = -0.5 * Math.PI * slope * sin, second = -(0.25 * Math.PI * Math.PI * slope * slope * cos) - 0.5 * Math.PI * bend * sin;
        return (cos, Math.Sign(from) * first / Reach, second / (Reach * Reach));
    }

    /// <summary>It moves some of the line between two lengths.</summary>
    public bool Meets(double from, double to)
    {
        (double at, double reach) = (At, Reach);
        return Covers(at) || (Period > 0 && (Covers(at - Period) || Covers(at + Period)));
        bool Covers(double top) => top - reach < to && top + reach > from;
    }
}

/// <summary>A piece of a drawn line that is moved by hills.</summary>
/// <param name="piece">As drawn.</param>
/// <param name="start">Its start, mm along the line as drawn.</param>
/// <param name="hills">By how much each moves it, mm.</param>
internal sealed class DisplacedPiece(CurvePiece piece, double start, ImmutableArray<(Bump Bump, double By)> hills) : CurvePiece
{
    // A length at every place would have to be integrated anew: between so many places it follows from lengths and speeds at both ends, and at the ends of the piece it is exact.
    private const int Parts = 4;

    private readonly double[] _lengths = [.. Enumerable.Range(0, Parts + 1).Select(k => piece.Length(0, (double)k / Parts))];

    private readonly double[] _speeds = [.. Enumerable.Range(0, Parts + 1).Select(k => piece.At((double)k / Parts).D1.Length)];

    /// <summary>A line moved by one more hill.</summary>
    /// <param name="pieces">As drawn, or moved already.</param>
    /// <param name="bump">The hill.</param>
    /// <param name="by">mm.</param>
    public static ImmutableArray<CurvePiece> Over(ImmutableArray<CurvePiece> pieces, Bump bump, double by)
    {
        var moved = ImmutableArray.CreateBuilder<CurvePiece>(pieces.Length);
        double start = 0;
        foreach (CurvePiece own in pieces)
        {
            var before = own as DisplacedPiece;
            double end = start + (before?.Drawn ?? own).Length(0, 1);
            moved.Add(bump.Meets(start, end) ? new DisplacedPiece(before?.Drawn ?? own, start, [.. before?.Hills ?? [], (bump, by)]) : own);
            start = end;
        }
        return moved.MoveToImmutable();
    }

    private CurvePiece Drawn => piece;

    private ImmutableArray<(Bump Bump, double By)> Hills => hills;

    /// <inheritdoc/>
    public override CurveSample At(double t)
    {
        CurveSample sample = piece.At(t);
        (double s, double speed, double gain) = Along(t);
        (Vec3 point, Vec3 d1, Vec3 d2) = (sample.Point, sample.D1, sample.D2);
        foreach ((Bump bump, double by) in hills)
        {
            (double height, double first, double second) = bump.Over(s);
            point += by * height * bump.Normal;
            d1 += by * first * speed * bump.Normal;
            d2 += by * (second * speed * speed + first * gain) * bump.Normal;
        }
        return new CurveSample(point, d1, d2);
    }

    // Length along the line as drawn and its first two derivatives by t: the cubic of Hermite over the part.
    private (double S, double Speed, double Gain) Along(double t)
    {
        int k = Math.Clamp((int)(t * Parts), 0, Parts - 1);
        const double h = 1.0 / Parts;
        double x = t / h - k, rise = _lengths[k + 1] - _lengths[k], a = h * _speeds[k], b = h * _speeds[k + 1];
        double c2 = 3 * rise - 2 * a - b, c3 = a + b - 2 * rise;
        return (start + _lengths[k] + x * (a + x * (c2 + x * c3)), (a + x * (2 * c2 + 3 * x * c3)) / h, (2 * c2 + 6 * x * c3) / (h * h));
    }
}
