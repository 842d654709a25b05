using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Jobs;

/// <summary>A developed panel, or why there is none.</summary>
/// <param name="Panel">Null if a notice is an error.</param>
/// <param name="Notices">What the user should know.</param>
public sealed record PanelResult(PanelDevelopment? Panel, ImmutableArray<Notice> Notices);

/// <summary>Runs one panel: sheet → verdict → middle surface → blank → pattern.</summary>
public static class PanelDeveloper
{
    /// <summary>Develops the ruled sheet between two curves that run the same way.</summary>
    /// <param name="job">Sheet, measured face and units.</param>
    /// <param name="spec">The panel.</param>
    /// <param name="where">Its path in the job file.</param>
    /// <param name="front">Front curve, left to right.</param>
    /// <param name="rear">Rear curve, in the same direction.</param>
    public static PanelResult Develop(Job job, PanelSpec spec, string where, SpaceCurve front, SpaceCurve rear)
    {
        RuledSheet measured = Loft.Between(front, rear, spec.Elements);
        if (SheetNotices.Crossing(job, spec, where, measured) is { } crossing) return new PanelResult(null, [crossing]);
        RuledSheet middle = MiddleSurface.Of(measured, Offset(job));
        if (SheetNotices.Backward(job, spec, where, measured, middle) is { } backward) return new PanelResult(null, [backward]);
        Blank blank = Blank.Of(middle);
        ImmutableArray<Vec2> cut = BlankOutline.Loop(blank.FlatRulings);
        if (SheetNotices.Overlap(job, spec, where, blank, cut) is { } overlap) return new PanelResult(null, [overlap]);

        TwistSummary twist = SheetFitness.Twist(measured);
        TwistSummary even = spec.Elements == ElementMatching.Even ? twist : SheetFitness.EvenTwist(front, rear);
        StrainSummary strain = SheetFitness.Strain(middle);
        Verdict verdict = SheetFitness.Judge(strain);
        ImmutableArray<ElementLine> elements = ElementLines.Of(blank);
        var panel = new PanelDevelopment(
            spec, verdict, twist, even, strain, blank.FormedArea, blank.FlatArea,
            BlankOutline.Edges(blank), elements, cut, BlankOutline.Triangles(blank));
        return new PanelResult(panel, [.. SheetNotices.Advice(job, where, panel)]);
    }

    // From the measured face to the middle surface, along the outside normal, mm.
    private static double Offset(Job job) => job.Measured switch
    {
        MeasuredFace.Outside => -0.5 * job.Sheet.Thickness,
        MeasuredFace.Inside => 0.5 * job.Sheet.Thickness,
        _ => 0,
    };
}
