using System.Collections.Immutable;
using SurfaceUnroll.Curves.Drawn;
using SurfaceUnroll.Curves.Readings;
using SurfaceUnroll.Curves.Sections;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Curves;

/// <summary>What came of reading a measured curve.</summary>
/// <param name="Curve">The curve in job space; null exactly if <paramref name="Notices"/> holds an error.</param>
/// <param name="Notices">Errors and notes, in the order of the measures.</param>
public sealed record CurveReading(SpaceCurve? Curve, ImmutableArray<Notice> Notices);

/// <summary>Makes exact curves of what was measured. The method is told in docs/curves.md.</summary>
public static class MeasuredCurve
{
    /// <summary>The curve of one specification, placed in job space, from its left end to its right end.</summary>
    /// <param name="spec">What was measured.</param>
    /// <param name="where">Path of the curve in the job file, for notices: <c>curves.front</c>.</param>
    /// <param name="units">Units for values in messages.</param>
    public static CurveReading Build(CurveSpec spec, string where, LengthUnit units = LengthUnit.Millimetre)
    {
        var faults = new CurveFaults(where, units);
        OwnCurve own = spec switch
        {
            PlanSideSpec both => PlanAndSide(both, faults),
            SpaceSpec space => PointCurve.InSpace(space, faults),
            _ => Profile(spec, faults),
        };
        // A wrong reading is the likeliest cause of whatever is the matter with the curve, so it is told first.
        IEnumerable<Notice> doubts = spec is PointsSpec read && read.Points.All(p => double.IsFinite(p.Place.Length)) ? ReadingChecks.Of(read, where, units) : [];
        own = own with { Notices = [.. spec.Remarks.Select(r => r with { Where = where + ".file" }), .. doubts, .. own.Notices] };
        if (own.Failed) return new CurveReading(null, own.Notices);
        if (spec.Taped is { } taped) own = own with { Notices = [.. own.Notices, .. ReadingChecks.Of(taped, new SpaceCurve(own.Whole()), where, units)] };
        var frame = Frame.Of(spec.At);
        return IsFinite(frame.Origin) && IsFinite(frame.X) && IsFinite(frame.Y)
            ? new CurveReading(new SpaceCurve([.. own.Whole().Select(piece => piece.Placed(frame))]), own.Notices)
            : new CurveReading(null, [faults.NotFinite(".at")]);
    }

    /// <summary>The line that a flat curve comes to, as if it had been drawn; null where it cannot be had.</summary>
    internal static DrawnSpec? Drawn(CurveSpec spec, string where)
    {
        OwnCurve own = Profile(spec, new CurveFaults(where, LengthUnit.Millimetre));
        return own.Failed ? null : new DrawnSpec(where, own.Pieces, own.Mirrored, spec.At) { Errors = spec.Errors };
    }

    internal static bool IsFinite(Vec3 v) => double.IsFinite(v.Dot(v));

    // A flat curve as (0, across, up), checked against crossing itself.
    private static OwnCurve Profile(CurveSpec spec, CurveFaults faults)
    {
        OwnCurve own = spec switch
        {
            PointsSpec points => PointCurve.InPlane(points, faults),
            RunSpec run => RunCurve.Of(run, faults),
            ChordSpec chord => RunCurve.Of(chord, faults),
            DrawnSpec drawn => DrawnCurve.Of(drawn, faults),
            SectionSpec section => SectionCurve.Of(section, faults),
            _ => new OwnCurve([], false, [faults.PlanKind()]),
        };
        if (own.Failed) return own;
        return SelfCrossing.Find(own.Whole()) is { } place ? own with { Notices = [.. own.Notices, faults.CrossesItself(place)] } : own;
    }

    private static OwnCurve PlanAndSide(PlanSideSpec spec, CurveFaults faults)
    {
        OwnCurve plan = spec.Plan is PlanSideSpec or SpaceSpec
            ? new OwnCurve([], false, [faults.PlanKind()])
            : Profile(spec.Plan, faults.In(".plan"));
        ImmutableArray<Notice> notices = [.. plan.Notices, .. SideFaults(spec.Side, faults)];
        if (notices.Any(n => n.Severity == Severity.Error)) return new OwnCurve([], false, notices);
        SideView side = SideView.Through(spec.Side, spec.SideFit);
        return new OwnCurve(
            [.. plan.Pieces.SelectMany(piece => PlanSidePiece.Raise(piece.Placed(Frame.LaidFlat), side))], plan.Mirrored, notices);
    }

    private static IEnumerable<Notice> SideFaults(ImmutableArray<Vec2> side, CurveFaults faults)
    {
        if (side.Length < 2) yield return faults.SideTooShort(side.Length);
        for (int i = 0; i < side.Length; i++)
        {
            if (!double.IsFinite(side[i].Dot(side[i]))) yield return faults.NotFinite($".side[{i}]");
            else if (i > 0 && !(side[i].X > side[i - 1].X)) yield return faults.SideOutOfOrder(i, side[i].X, side[i - 1].X);
        }
    }
}

/// <summary>A curve in its own axes before it is placed, with what was found on the way.</summary>
/// <param name="Pieces">The whole curve; the right half from the centreline out if <paramref name="Mirrored"/>. Empty after an error.</param>
/// <param name="Mirrored">The left half is the mirror image in y = 0.</param>
/// <param name="Notices">What was found.</param>
internal sealed record OwnCurve(ImmutableArray<CurvePiece> Pieces, bool Mirrored, ImmutableArray<Notice> Notices)
{
    public bool Failed => Notices.Any(n => n.Severity == Severity.Error);

    /// <summary>All pieces from left to right. The left half evaluates the very pieces of the right half, run backwards with y negated,
    /// so both halves are the same numbers.</summary>
    public ImmutableArray<CurvePiece> Whole()
    {
        if (!Mirrored) return StraightRuns.Merge(Pieces);
        IEnumerable<CurvePiece> left = Pieces.Reverse().Select(piece => new ReversedPiece(piece.Placed(Frame.MirrorLeftRight)));
        return StraightRuns.Merge([.. left, .. Pieces]);
    }
}
