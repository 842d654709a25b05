using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Curves;

/// <summary>Curves laid from straights and arcs, in their own plane as (0, across, up).</summary>
internal static class RunCurve
{
    private static readonly Vec3 Across = new(0, 1, 0), Up = new(0, 0, 1);

    /// <summary>A run of straights and arcs, each going on in the direction in which the one before it ends.</summary>
    public static OwnCurve Of(RunSpec spec, CurveFaults faults)
    {
        ImmutableArray<Notice> notices = [.. Faults(spec, faults)];
        if (notices.Length > 0) return new OwnCurve([], false, notices);
        var pieces = ImmutableArray.CreateBuilder<CurvePiece>(spec.Steps.Length);
        Vec3 place = Vec3.Zero;
        double heading = spec.Heading;
        foreach (RunStep step in spec.Steps)
        {
            CurvePiece piece = Lay(step, place, heading);
            pieces.Add(piece);
            place = piece.At(1).Point;
            if (step is ArcStep arc) heading += arc.Turn;
        }
        Vec3 shift = spec.Start is { } start ? start.X * Across + start.Y * Up : -0.5 * place.Y * Across;
        return new OwnCurve([.. pieces.Select(p => p.Placed(Frame.Identity with { Origin = shift }))], false, notices);
    }

    /// <summary>The arc over a chord: with half its opening a = 2·atan(2h/c) the radius is c²/(8h) + h/2. A rise of more than half the
    /// chord gives more than a half circle.</summary>
    public static OwnCurve Of(ChordSpec spec, CurveFaults faults)
    {
        if (!double.IsFinite(spec.Chord * spec.Rise)) return new OwnCurve([], false, [faults.NotFinite(".chord")]);
        if (!(spec.Chord > 0)) return new OwnCurve([], false, [faults.NotPositive(".chord", "chord", spec.Chord)]);
        double rise = Math.Abs(spec.Rise), side = Math.Sign(spec.Rise);
        if (rise <= Tolerance.Straightness * spec.Chord)
            return new OwnCurve([new LinePiece(-0.5 * spec.Chord * Across, 0.5 * spec.Chord * Across)], false, []);
        double radius = spec.Chord / 8 * (spec.Chord / rise) + rise / 2, half = 2 * Math.Atan(2 * rise / spec.Chord);
        return new OwnCurve([new ArcPiece(side * (rise - radius) * Up, side * Up, Across, radius, -half, 2 * half)], false, []);
    }

    private static CurvePiece Lay(RunStep step, Vec3 place, double heading)
    {
        (double sin, double cos) = QuarterTurns.SinCos(heading);
        Vec3 along = sin * Across + cos * Up, right = cos * Across - sin * Up;
        if (step is not ArcStep arc) return new LinePiece(place, place + ((LineStep)step).Length * along);
        Vec3 toCentre = Math.Sign(arc.Turn) * right;
        return new ArcPiece(place + arc.Radius * toCentre, -toCentre, along, arc.Radius, 0, Math.Abs(arc.Turn));
    }

    private static IEnumerable<Notice> Faults(RunSpec spec, CurveFaults faults)
    {
        if (spec.Steps.IsEmpty) yield return faults.EmptyRun();
        if (!double.IsFinite(spec.Heading)) yield return faults.NotFinite(".heading");
        if (spec.Start is { } start && !double.IsFinite(start.X + start.Y)) yield return faults.NotFinite(".start");
        for (int i = 0; i < spec.Steps.Length; i++)
        {
            string part = $".run[{i}]";
            (string what, double size, double turn) = spec.Steps[i] is ArcStep arc
                ? ("radius", arc.Radius, arc.Turn)
                : ("length", ((LineStep)spec.Steps[i]).Length, 1);
            if (!double.IsFinite(size) || !double.IsFinite(turn)) yield return faults.NotFinite(part);
            else if (size <= 0) yield return faults.NotPositive(part, what, size);
            else if (turn == 0) yield return faults.NoTurn(part);
            else if (Math.Abs(turn) > Math.Tau * (1 + 1e-12)) yield return faults.OverFullTurn(part, turn);
        }
    }
}
