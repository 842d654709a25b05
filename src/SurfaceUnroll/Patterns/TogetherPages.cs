using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns;

/// <summary>All pieces of a job in one run of paper, side by side at one scale.</summary>
public static class TogetherPages
{
    // Room between pieces for scissors, mm; the run is laid out so many sheets wide at most.
    private const double Gap = 8;
    private const int WidestRun = 4;

    /// <summary>How the pieces lie on the paper together, and where each stands; the fewest sheets, or the least of a roll.</summary>
    /// <param name="development">The job.</param>
    /// <param name="drawings">Of its pieces, in their order.</param>
    /// <returns>The plan, and where each piece lies in its drawing.</returns>
    public static (TilePlan Plan, ImmutableArray<NestPlacement> Placements) Plan(Development development, ImmutableArray<Drawing> drawings)
    {
        PaperSpec paper = development.Job.Paper with { Turn = 0 };
        ImmutableArray<NestPiece> pieces = [.. development.Panels.Select(p => new NestPiece(p.Cut))];
        (TilePlan Plan, ImmutableArray<NestPlacement> Placements)? best = null;
        // As wide as one sheet, two sheets …, until every piece has room and more width spares nothing.
        for (int count = 1; count <= WidestRun || best is null; count++)
        {
            // The gap beside the outermost pieces takes no paper.
            NestedStrip strip = Nester.OnStrip(pieces, TileLayout.WidthOf(paper, count) + 2 * Gap, new NestSpec(Gap, NestTurns.Quarter));
            if (!strip.TooLarge.IsEmpty) continue;
            // A run goes up the page.
            Drawing all = NestDrawing.Laid(strip.Placements, drawings, development.Job.Name).Turned(0.5 * Math.PI);
            TilePlan plan = TileLayout.Plan(all, paper);
            if (best is null || plan.Cost < best.Value.Plan.Cost) best = (plan, [.. strip.Placements.Select(p => new NestPlacement(p.Panel, p.Turn + 0.5 * Math.PI, p.Move.Left))]);
        }
        return best.Value;
    }

    /// <summary>The pages: how the sheets go together, then the tiles.</summary>
    /// <param name="development">The job.</param>
    /// <param name="plan">What <see cref="Plan"/> gives.</param>
    public static ImmutableArray<Page> Of(Development development, TilePlan plan)
    {
        Job job = development.Job;
        var words = new TileWords("all pieces", job.Name, PatternDrawing.SheetText(job));
        Tile[] printed = [.. plan.Printed];
        ImmutableArray<(string, string)> facts =
        [
            .. development.Panels.Select(p => (p.Spec.Name, Box.Around(p.Cut) is var box ? $"{ShopLength.Print(box.Width, job.Units)} × {ShopLength.Print(box.Height, job.Units)}" : "")),
            .. PaperWords.Of(plan),
        ];
        ImmutableArray<string> tape = ["Check the edge lengths of every piece with a tape."];
        ImmutableArray<string> cautions = [.. ShopCautions.Always.Concat(development.Panels.SelectMany(p => ShopCautions.Beside(p, JointWords.Of(p, development.Joints)))).Distinct()];
        return
        [
            AssemblyPage.Draw(plan, [], tape, facts, cautions, words),
            .. printed.Select((tile, i) => plan.Corrected(TilePage.Draw(plan, tile, (i + 2, printed.Length + 1), [], words))),
            .. AssemblyPage.IsBare(plan, tape, facts, cautions, words) ? FittingPages.Draw(PrintSheet.ForWords(job.Paper, plan.IsLandscape), "in words", facts, AssemblyPage.HowTo, cautions, words) : [],
        ];
    }
}
