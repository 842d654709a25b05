using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns.MovedEdges;

/// <summary>What is printed of a moved edge: how the sheets go together, the template at true scale, and the page of moves.</summary>
public static class EdgePages
{
    /// <summary>How the template lies over sheets of the job's paper; null if no curve of the panel was moved.</summary>
    public static TilePlan? Plan(PanelDevelopment panel, Job job) => panel.Freedom is { } fit ? TileLayout.Plan(EdgeTemplate.Of(panel, fit, job), job.Paper) : null;

    /// <summary>The pages.</summary>
    /// <param name="panel">A panel of which a curve was moved.</param>
    /// <param name="job">For names, units and paper.</param>
    /// <param name="plan">What <see cref="Plan"/> gives.</param>
    public static ImmutableArray<Page> Of(PanelDevelopment panel, Job job, TilePlan plan)
    {
        FreedomFit fit = panel.Freedom!;
        var words = new TileWords($"{panel.Spec.Name}: {fit.Spec.Curve} as moved", job.Name, "template") { Face = "LEFT END ON THE LEFT" };
        Tile[] printed = [.. plan.Printed];
        Vec2 first = fit.Plane.Own(fit.Edge.Start.Point) is var a ? new Vec2(a.X, a.Y) : default, last = fit.Plane.Own(fit.Edge.End.Point) is var b ? new Vec2(b.X, b.Y) : default;
        ImmutableArray<(string, string)> facts =
        [
            ("Moved edge", ShopLength.Print(fit.Edge.Length, job.Units)),
            .. FreedomWords.Rows(fit, panel.Verdict, panel.JudgedStrain, job.Units).Select(row => (row.Label.Trim(), row.Value)),
            .. PaperWords.Of(plan),
        ];
        double chord = (last - first).Length;
        ImmutableArray<string> tape = [chord > 1 ? $"Tape from end to end of the edge: {ShopLength.Print(chord, job.Units)}" : "Check the length of the edge with a tape."];
        return
        [
            AssemblyPage.Draw(plan, [], tape, facts, ShopCautions.Always, words),
            .. printed.Select((tile, i) => plan.Corrected(TilePage.Draw(plan, tile, (i + 2, printed.Length + 2), [], words))),
            EdgeMovePage.Of(panel, fit, job),
        ];
    }
}
