using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Plates;

namespace SurfaceUnroll.Jobs;

/// <summary>A developed panel, or why there is none.</summary>
/// <param name="Panels">The panel, or its pieces; empty if a notice is an error.</param>
/// <param name="Notices">What the user should know.</param>
public sealed record PanelResult(ImmutableArray<PanelDevelopment> Panels, ImmutableArray<Notice> Notices)
{
    /// <summary>No panel, for this reason.</summary>
    internal static PanelResult Failed(Notice error) => new([], [error]);
}

/// <summary>Runs one panel: sheet → verdict → middle surface → blank → pattern.</summary>
public static class PanelDeveloper
{
    /// <summary>Develops a loft between curves that run the same way.</summary>
    /// <param name="job">Sheet, measured face and units.</param>
    /// <param name="spec">The panel.</param>
    /// <param name="where">Its path in the job file.</param>
    /// <param name="curves">From front to rear, all in the same direction.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public static PanelResult Develop(Job job, PanelSpec spec, string where, ImmutableArray<SpaceCurve> curves, CancellationToken cancellation = default) =>
        Develop(job, spec, where, curves, null, cancellation);

    /// <summary>Develops a loft of which a curve was moved.</summary>
    internal static PanelResult Develop(Job job, PanelSpec spec, string where, FreedomFit fit, CancellationToken cancellation)
    {
        PanelResult result = Develop(job, spec, where, fit.Curves, fit, cancellation);
        return result with { Panels = [.. result.Panels.Select(p => p with { Freedom = fit })] };
    }

    private static PanelResult Develop(Job job, PanelSpec spec, string where, ImmutableArray<SpaceCurve> curves, FreedomFit? fit, CancellationToken cancellation)
    {
        double offset = Offset(job, spec), limit = Limit(job);
        if (curves.Length > 2 && Enumerable.Range(1, curves.Length - 1).Any(i => Coincide(curves[i - 1], curves[i])))
            return PanelResult.Failed(SheetNotices.Folded(spec, where));
        if (curves.Length > 2) return OffFace(SheetPanels.Develop(job, spec, where, CrownedLoft.Through(curves, offset), null, cancellation), offset);
        (SpaceCurve front, SpaceCurve rear) = (curves[0], curves[1]);
        RuledSheet measured = fit is null ? Loft.Between(front, rear, spec.Elements) : Loft.Along(front, rear, fit.Lines);
        if (SheetNotices.Crossing(job, spec, where, measured) is { } crossing) return PanelResult.Failed(crossing);
        RuledSheet middle = MiddleSurface.Of(measured, offset);
        if (SheetNotices.Backward(job, spec, where, measured, middle) is { } backward) return PanelResult.Failed(backward);
        TwistSummary twist = SheetFitness.Twist(measured);
        TwistSummary even = spec.Elements == ElementMatching.Even ? twist : SheetFitness.EvenTwist(front, rear);
        StrainSummary strain = SheetFitness.Strain(middle);
        bool bends = SheetFitness.Judge(strain, limit) == Verdict.BendsOnly;
        if (!bends || spec.Pieces > 1 || !spec.Slits.IsEmpty)
            return OffFace(SheetPanels.Develop(job, spec, where, RuledGrid.Of(middle), (twist, even), cancellation), offset);

        Blank blank = Blank.Of(middle);
        ImmutableArray<Vec2> cut = BlankOutline.Loop(blank.FlatRulings);
        if (!job.EdgesOnly && SheetNotices.Overlap(job, spec, where, blank, cut) is { } overlap) return PanelResult.Failed(overlap);
        var panel = new PanelDevelopment(
            spec, Verdict.BendsOnly, twist, even, strain, blank.FormedArea, blank.FlatArea,
            BlankOutline.Edges(blank), ElementLines.Of(blank, job.Shop.LinePitch), cut, BlankOutline.Triangles(blank, measured))
        {
            Limit = limit,
            Offset = offset,
        };
        return new PanelResult([panel], [.. SheetNotices.Advice(job, where, panel)]);
    }

    /// <summary>Develops a flat or bent plate.</summary>
    /// <param name="job">Sheet, measured face, curves and units.</param>
    /// <param name="spec">The panel.</param>
    /// <param name="where">Its path in the job file.</param>
    /// <param name="curves">The curves of the job; those of the plate are among them.</param>
    public static PanelResult Develop(Job job, PanelSpec spec, string where, IReadOnlyDictionary<string, SpaceCurve> curves)
    {
        double offset = Offset(job, spec);
        PlateReading reading = new PlateBuilder(job, spec, where, offset).Build(curves);
        return new PanelResult(reading.Plate is { } plate ? [PlatePanel.Of(spec, plate, offset, job.Shop.LinePitch) with { Limit = Limit(job) }] : [], reading.Notices);
    }

    /// <summary>Develops a sheet that was given as a mesh.</summary>
    /// <param name="job">Sheet and units.</param>
    /// <param name="spec">The panel, with its mesh.</param>
    /// <param name="where">Its path in the job file.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public static PanelResult Develop(Job job, PanelSpec spec, string where, CancellationToken cancellation = default)
    {
        TriangleMesh formed = spec.Mesh!.Mesh;
        ImmutableArray<int> border = DiscCheck.Border(formed);
        var free = new FlatteningOptions { ShrinkCost = spec.ShrinkCost };
        FlattenedMesh blank = MeshFlattening.Flatten(formed, free, cancellation);
        StrainSummary? unheld = null;
        if (!spec.Hold.IsEmpty)
        {
            unheld = new StrainSummary(blank.MaxStretch, blank.MaxShrink, blank.Energy);
            blank = Flattener.Flatten(formed, free with { Held = [[.. border, border[0]]], Starts = [blank.Flat] }, cancellation);
        }
        PanelDevelopment panel = SheetPanels.Judged(job, MeshPanel.Of(spec, formed, blank) with { Unheld = unheld });
        if (!OutlineCheck.IsSimple(panel.Cut)) return PanelResult.Failed(SheetNotices.MeshOverlap(spec, where));
        return new PanelResult([panel], [.. SheetNotices.Advice(job, where, panel)]);
    }

    // The measured face of a sheet that is known by its middle surface alone.
    private static PanelResult OffFace(PanelResult result, double offset) => result with
    {
        Panels = [.. result.Panels.Select(p => p with { Offset = offset, Mesh = p.Mesh with { Face = MeshNormals.Shifted(p.Mesh.Formed, p.Mesh.Faces, -offset) } })],
    };

    // Two curves of a loft that lie on each other leave no sheet between them.
    private static bool Coincide(SpaceCurve a, SpaceCurve b)
    {
        const int places = 8;
        return Enumerable.Range(0, places + 1).All(k =>
            (a.AtLength(a.Length * k / places).Point - b.AtLength(b.Length * k / places).Point).Length < 0.01);
    }

    private static double Limit(Job job) => job.Sheet.Metal.UniformElongation;

    // From the measured face to the middle surface, along the outside normal, mm.
    internal static double Offset(Job job, PanelSpec spec) => (spec.Measured ?? job.Measured) switch
    {
        MeasuredFace.Outside => -0.5 * job.Sheet.Thickness,
        MeasuredFace.Inside => 0.5 * job.Sheet.Thickness,
        _ => 0,
    };
}
