using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Lofting.Nearest;

namespace SurfaceUnroll.Jobs;

/// <summary>Moves the curves that may move, before any panel is developed: a piece that shares such a curve follows it.</summary>
/// <param name="job">The job.</param>
/// <param name="cancellation">Stops between steps.</param>
internal sealed class FreedomStage(Job job, CancellationToken cancellation)
{
    /// <summary>Twist up to which a sheet needs no move, and which a moved one has at the most: 0.01°.</summary>
    public const double Torsal = 0.01 * Math.PI / 180;

    private readonly List<Notice> _notices = [];
    private readonly Dictionary<int, FreedomFit> _fits = [];

    /// <summary>What was found, in the order of the panels.</summary>
    public IReadOnlyList<Notice> Notices => _notices;

    /// <summary>By the number of the panel in the job; none where nothing was moved.</summary>
    public IReadOnlyDictionary<int, FreedomFit> Fits => _fits;

    /// <summary>Moves curves in place.</summary>
    /// <param name="curves">All curves of the job that could be built.</param>
    /// <param name="progress">Told the name of each step as it begins.</param>
    public void Move(Dictionary<string, SpaceCurve> curves, IProgress<string>? progress)
    {
        for (int i = 0; i < job.Panels.Length; i++)
        {
            PanelSpec spec = job.Panels[i];
            if (spec.Freedom is not { } freedom || !spec.Loft.All(curves.ContainsKey)) continue;
            cancellation.ThrowIfCancellationRequested();
            progress?.Report($"Moving {freedom.Curve}");
            if (Fit(spec, freedom, $"panels[{i}].freedom", curves) is not { } fit) continue;
            _fits[i] = fit;
            // A curve that was measured from right to left stays so.
            bool turned = CurveDirection.Opposed(curves[freedom.Curve], fit.Edge);
            curves[freedom.Curve] = turned ? fit.Edge.Reversed() : fit.Edge;
        }
    }

    private FreedomFit? Fit(PanelSpec spec, FreedomSpec freedom, string where, Dictionary<string, SpaceCurve> curves)
    {
        (SpaceCurve front, SpaceCurve rear, _) = CurveAlignment.Of(spec.Loft[0], spec.Loft[1], curves[spec.Loft[0]], curves[spec.Loft[1]]);
        bool movesFront = freedom.Curve == spec.Loft[0];
        (SpaceCurve still, SpaceCurve moved) = movesFront ? (rear, front) : (front, rear);
        if (PlaneOf(freedom.Curve, moved) is not { } plane) return Say(FreedomNotices.NoPlane(freedom, where));
        RuledSheet sheet = Loft.Between(front, rear, spec.Elements);
        TwistSummary twist = SheetFitness.Twist(sheet);
        if (twist.Max <= Torsal) return Say(FreedomNotices.NotNeeded(spec, freedom, where));
        FreedomResult found = EdgeFreedom.Find(still, moved, plane, freedom.Most);
        if (found.Outcome == FreedomOutcome.TooFar) return Say(FreedomNotices.TooSmall(job, spec, freedom, where, found.Least));
        if (found.Edge is not { } edge) return Say(FreedomNotices.None(spec, freedom, where));
        ImmutableArray<SpaceCurve> pair = movesFront ? [edge, still] : [still, edge];
        ImmutableArray<Match> lines = movesFront ? [.. found.Lines.Select(m => new Match(m.Rear, m.Front))] : found.Lines;
        RuledSheet after = Loft.Along(pair[0], pair[1], lines);
        if (SheetFitness.Twist(after).Max > Torsal) return Say(FreedomNotices.None(spec, freedom, where));
        double outward = Outward(sheet, plane, movesFront);
        var fit = new FreedomFit(freedom, edge, plane, [.. found.Moves.Select(m => m with { Move = outward * m.Move })], twist, Strain(spec, sheet)) { Curves = pair, Lines = lines };
        Say(FreedomNotices.Moved(job, spec, fit, where));
        return fit;
    }

    private FreedomFit? Say(Notice notice)
    {
        _notices.Add(notice);
        return null;
    }

    // A flat curve lies in the plane in which it was measured, which a straight one alone does not show.
    private EdgePlane? PlaneOf(string name, SpaceCurve curve)
    {
        CurveSpec spec = job.Curves.First(c => c.Name == name).Spec;
        if (spec is PlanSideSpec or SpaceSpec) return EdgePlane.Of(curve);
        var frame = Frame.Of(spec.At);
        var plane = new EdgePlane(frame.Origin, frame.Y, frame.Z);
        return plane.Holds(curve) ? plane : EdgePlane.Of(curve);
    }

    // What the best blank of the measured sheet asks for; null where the sheet is no one surface.
    private StrainSummary? Strain(PanelSpec spec, RuledSheet sheet)
    {
        if (sheet.Strips.Any(s => s.MaxTwist > Math.PI / 2)) return null;
        RuledSheet middle = MiddleSurface.Of(sheet, PanelDeveloper.Offset(job, spec));
        StrainSummary strain = SheetFitness.Strain(middle);
        if (SheetFitness.Judge(strain, job.Sheet.Metal.UniformElongation) == Verdict.BendsOnly) return strain;
        SheetGrid grid = RuledGrid.Of(middle);
        if (!DiscCheck.Check(GridMesh.Of(grid).Mesh).IsEmpty) return null;
        FlattenedMesh blank = GridFlattening.Flatten(grid, spec.ShrinkCost, [], cancellation).Blank;
        return new StrainSummary(blank.MaxStretch, blank.MaxShrink, blank.Energy);
    }

    // +1 where the left of the way the edge runs, in its plane, is on the outside of the sheet; −1 where it is on the inside.
    private static double Outward(RuledSheet sheet, EdgePlane plane, bool front)
    {
        double sum = sheet.Strips.Sum(s => s.Middle.Normal.Dot(plane.Normal.Cross(front ? s.Middle.FrontTangent : s.Middle.RearTangent)));
        return sum < 0 ? -1 : 1;
    }
}
