using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads the paper to print on.</summary>
internal static class PaperReader
{
    // An upright check bar of 4 in stands on every sheet above the strip of words at its foot, 30 mm high, also where the sheet lies on its long side.
    private const double NarrowestPrint = 135;

    private const string Example = "{ \"size\": \"A4\", \"margin\": 10, \"overlap\": 10, \"orientation\": \"fewest\" }";

    private static readonly ImmutableArray<(string, PaperSize)> Sizes = [(PaperSize.A4.Name, PaperSize.A4), (PaperSize.Letter.Name, PaperSize.Letter)];

    /// <summary>The paper of a job: a size, or a block; A4 where it is left out.</summary>
    public static PaperSpec Read(JobBlock job, Measures measures)
    {
        PaperSpec paper = PaperSpec.Default;
        if (job.Find("paper") is not { } tree) return paper;
        if (tree is JsonText) return paper with { Size = measures.Choice(tree, "paper", paper.Size, [.. Sizes]) };
        if (JobBlock.Of(tree, "paper", job.Faults, $"\"A4\" or {Example}") is not { } block) return paper;
        block.CheckKeys(["size", "margin", "overlap", "orientation"]);
        paper = new PaperSpec(
            measures.Choice(block, "size", paper.Size, [.. Sizes]),
            Edge(block, measures, "margin", paper.Margin),
            Edge(block, measures, "overlap", paper.Overlap),
            measures.Choice(block, "orientation", paper.Orientation,
                ("fewest", PaperOrientation.Fewest), ("portrait", PaperOrientation.Portrait), ("landscape", PaperOrientation.Landscape)));
        CheckRoom(block, measures, paper);
        return paper;
    }

    private static double Edge(JobBlock block, Measures measures, string key, double fallback) =>
        block.Find(key) is { } tree ? measures.Length(tree, block.PathOf(key), Allowed.NotNegative) : fallback;

    private static void CheckRoom(JobBlock block, Measures measures, PaperSpec paper)
    {
        double print = paper.Size.Width - 2 * paper.Margin, largestMargin = (paper.Size.Width - NarrowestPrint) / 2;
        if (print < NarrowestPrint)
        {
            block.Faults.Add("paper-margin", "paper.margin", block.Find("margin")!.Place,
                $"Margins of {measures.Show(paper.Margin)} leave {measures.Show(Math.Max(0, print))} of the width of {paper.Size.Name}; the check bars and words need {measures.Show(NarrowestPrint)}.",
                $"Make the margin {measures.Show(largestMargin)} at most; 10 mm suits most printers.");
        }
        else if (paper.Overlap > print / 3)
        {
            block.Faults.Add("paper-overlap", "paper.overlap", block.Find("overlap")!.Place,
                $"An overlap of {measures.Show(paper.Overlap)} is more than a third of the printed width, {measures.Show(print)}.",
                "Make it smaller; 10 mm is enough for tape.");
        }
    }
}
