using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Plates;

/// <summary>Where the metal of a plate lies: flat, or bent along straight lines from left to right. On the blank y runs forward.</summary>
internal abstract record PlateShape
{
    /// <summary>Place on the blank under a place of a measured curve, mm: square to a flat plate, straight down in the plan of a bent one.</summary>
    public abstract Vec2 Flat(Vec3 place);

    /// <summary>Place on the measured face, and unit normal on the outside, in job space.</summary>
    public abstract (Vec3 Face, Vec3 Normal) At(Vec2 flat);

    /// <summary>Heights on the blank, ascending, between which the plate counts as flat, within two limits, both among them.</summary>
    public abstract ImmutableArray<double> Stations(double from, double to);

    /// <summary>Planes point·axis = offset at which a curve over the plate changes its law.</summary>
    public abstract IEnumerable<(Vec3 Axis, double Offset)> Breaks { get; }

    // Largest gap between an outline and its chords on the blank, mm, and how often a piece of a curve is halved at most.
    private const double Sagitta = 0.002;
    private const int Deepest = 12, Shallowest = 2;

    private static readonly ImmutableArray<double> Probes = [0.25, 0.5, 0.75];

    /// <summary>A measured curve on the blank.</summary>
    public ImmutableArray<Vec2> Trace(SpaceCurve curve)
    {
        var path = ImmutableArray.CreateBuilder<Vec2>();
        path.Add(Flat(curve.Start.Point));
        foreach (CurvePiece piece in curve.Pieces)
        {
            double[] cuts = [0, .. Breaks.SelectMany(b => piece.Crossings(b.Axis, b.Offset)).Where(t => t is > 1e-9 and < 1 - 1e-9).Order(), 1];
            for (int i = 0; i + 1 < cuts.Length; i++) Halve(piece, (cuts[i], Flat(piece.At(cuts[i]).Point)), (cuts[i + 1], Flat(piece.At(cuts[i + 1]).Point)), 0, path);
        }
        return path.ToImmutable();
    }

    private void Halve(CurvePiece piece, (double T, Vec2 Flat) a, (double T, Vec2 Flat) b, int depth, ImmutableArray<Vec2>.Builder path)
    {
        bool straight = Probes.All(s => Gap(a.Flat, b.Flat, Flat(piece.At(a.T + s * (b.T - a.T)).Point)) <= Sagitta);
        if (depth == Deepest || (straight && (piece.IsStraight || depth >= Shallowest)))
        {
            path.Add(b.Flat);
            return;
        }
        double t = 0.5 * (a.T + b.T);
        (double, Vec2) middle = (t, Flat(piece.At(t).Point));
        Halve(piece, a, middle, depth + 1, path);
        Halve(piece, middle, b, depth + 1, path);
    }

    private static double Gap(Vec2 a, Vec2 b, Vec2 p)
    {
        Vec2 along = (b - a).Unit;
        return along == Vec2.Zero ? (p - a).Length : Math.Abs(along.Cross(p - a));
    }
}

/// <summary>A flat plate.</summary>
/// <param name="Axes">X to the right on the blank, Y up on it, Z the outside normal; its origin is that of the blank.</param>
internal sealed record FlatShape(Frame Axes) : PlateShape
{
    /// <inheritdoc/>
    public override IEnumerable<(Vec3 Axis, double Offset)> Breaks => [];

    /// <inheritdoc/>
    public override Vec2 Flat(Vec3 place) => new((place - Axes.Origin).Dot(Axes.X), (place - Axes.Origin).Dot(Axes.Y));

    /// <inheritdoc/>
    public override (Vec3 Face, Vec3 Normal) At(Vec2 flat) => (Axes.Origin + flat.X * Axes.X + flat.Y * Axes.Y, Axes.Z);

    /// <inheritdoc/>
    public override ImmutableArray<double> Stations(double from, double to) => [from, to];
}

/// <summary>A plate bent along a side profile.</summary>
/// <param name="Axes">Of the plate: x aft, y right, z up.</param>
/// <param name="Side">Its profile.</param>
internal sealed record BentShape(Frame Axes, SideChain Side) : PlateShape
{
    /// <inheritdoc/>
    public override IEnumerable<(Vec3 Axis, double Offset)> Breaks => Side.Spans.Skip(1).Select(s => (Axes.X, s.At(0).Face.X + Axes.Origin.Dot(Axes.X)));

    /// <inheritdoc/>
    public override Vec2 Flat(Vec3 place) => new((place - Axes.Origin).Dot(Axes.Y), -Side.AlongAt((place - Axes.Origin).Dot(Axes.X)));

    /// <inheritdoc/>
    public override (Vec3 Face, Vec3 Normal) At(Vec2 flat)
    {
        SidePlace side = Side.At(-flat.Y);
        return (Axes.Point(new Vec3(side.Face.X, flat.X, side.Face.Y)), Axes.Direction(new Vec3(side.Normal.X, 0, side.Normal.Y)));
    }

    /// <inheritdoc/>
    public override ImmutableArray<double> Stations(double from, double to) => [.. Side.Stations(-to, -from).Reverse().Select(u => -u)];
}
