using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads the paper to print on.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="units">Of plain numbers.</param>
internal sealed class PaperReader(Measures measures, LengthUnit units)
{
    private const string Example = "{ \"size\": \"A4\", \"margin\": 10, \"overlap\": 10, \"orientation\": \"fewest\", \"turn\": \"fewest\" }";

    // Longer sides are no paper.
    private const double LongestSide = 5000;

    private const double MostDegrees = 180;

    /// <summary>The paper of a job: a size, or a block; A4 where it is left out. The pattern is turned to use the fewest sheets, unless the job says otherwise.</summary>
    public PaperSpec Read(JobBlock job)
    {
        PaperSpec paper = PaperSpec.Default with { Turn = null };
        if (job.Find("paper") is not { } tree) return paper;
        if (tree is JsonText)
        {
            paper = paper with { Size = Size(tree, "paper", paper.Size) };
            CheckRoom(paper, tree, "paper", tree);
            return paper;
        }
        if (JobBlock.Of(tree, "paper", job.Faults, $"\"A4\" or {Example}") is not { } block) return paper;
        block.CheckKeys(["size", "margin", "overlap", "orientation", "turn", "together"]);
        paper = new PaperSpec(
            block.Find("size") is { } size ? Size(size, block.PathOf("size"), paper.Size) : paper.Size,
            Margins(block, paper.Margins),
            block.Find("overlap") is { } overlap ? measures.Length(overlap, block.PathOf("overlap"), Allowed.NotNegative) : paper.Overlap,
            measures.Choice(block, "orientation", paper.Orientation,
                ("fewest", PaperOrientation.Fewest), ("portrait", PaperOrientation.Portrait), ("landscape", PaperOrientation.Landscape)))
        {
            Turn = Turn(block),
            Together = measures.Flag(block, "together"),
        };
        bool fits = CheckRoom(paper, block.Find("margin") ?? block.Find("size") ?? tree, block.Has("margin") ? "paper.margin" : block.Has("size") ? "paper.size" : "paper", block.Find("overlap"));
        if (fits && paper.Size.IsRoll && block.Find("orientation") is { } way && paper.Orientation == PaperOrientation.Landscape)
            block.Faults.Add("paper-roll-orientation", "paper.orientation", way.Place, "A roll lies with its width across: it has no landscape.", "Leave \"orientation\" out; \"turn\": 90 turns the pattern.");
        return paper;
    }

    private PaperSize Size(JsonTree tree, string path, PaperSize fallback)
    {
        if (tree is JsonText text)
        {
            (PaperSize? named, string problem, string mend) = PaperText.Read(text.Value, units);
            if (named is null) measures.Faults.Add("paper-size", path, text.Place, problem, mend);
            return Checked(named ?? fallback, tree, path, fallback);
        }
        if (tree is JsonObject)
        {
            const string example = "{ \"roll\": 610 }";
            if (JobBlock.Of(tree, path, measures.Faults, example) is not { } block) return fallback;
            block.CheckKeys(["roll"]);
            if (block.Need("roll", $"Write the width of the roll, like {example}.") is not { } wide) return fallback;
            double width = measures.Length(wide, block.PathOf("roll"), Allowed.Positive);
            return width > 0 ? Checked(PaperSize.Roll(width), tree, path, fallback) : fallback;
        }
        if (tree is JsonList)
        {
            if (measures.Tuple(tree, path, "[width, height]", 2) is not { } sides) return fallback;
            return sides.All(s => s > 0) ? Checked(PaperSize.Own(sides[0], sides[1]), tree, path, fallback) : NotPositive(tree, path, fallback);
        }
        measures.Faults.WrongType(path, tree, "a paper size", $"Write {PaperText.Words}, [width, height] or {{ \"roll\": width }}.");
        return fallback;
    }

    private PaperSize NotPositive(JsonTree tree, string path, PaperSize fallback)
    {
        if (!measures.Faults.HasUnder(path)) measures.Faults.Add("length-not-positive", path, tree.Place, "Both sides of a sheet of paper must be more than zero.", "Measure the paper again.");
        return fallback;
    }

    private PaperSize Checked(PaperSize size, JsonTree tree, string path, PaperSize fallback)
    {
        double longest = size.IsRoll ? size.Width : size.Height;
        if (longest <= LongestSide) return size;
        measures.Faults.Add("paper-size", path, tree.Place, $"Paper of {measures.Show(longest)} is larger than a page can be, {measures.Show(LongestSide)}.", "Check the unit of the size.");
        return fallback;
    }

    private PaperMargins Margins(JobBlock paper, PaperMargins fallback)
    {
        if (paper.Find("margin") is not { } tree) return fallback;
        if (tree is not JsonObject) return measures.Length(tree, "paper.margin", Allowed.NotNegative);
        if (JobBlock.Of(tree, "paper.margin", paper.Faults, "{ \"top\": 5, \"right\": 5, \"bottom\": 15, \"left\": 5 }") is not { } block) return fallback;
        block.CheckKeys(["top", "right", "bottom", "left"]);
        double Edge(string key, double left) => block.Find(key) is { } edge ? measures.Length(edge, block.PathOf(key), Allowed.NotNegative) : left;
        return new PaperMargins(Edge("top", fallback.Top), Edge("right", fallback.Right), Edge("bottom", fallback.Bottom), Edge("left", fallback.Left));
    }

    private double? Turn(JobBlock paper)
    {
        if (paper.Find("turn") is not { } tree) return null;
        if (tree is not JsonNumber number) return measures.Choice(tree, "paper.turn", (double?)null, ("fewest", null), ("none", 0));
        if (Math.Abs(number.Value) <= MostDegrees) return number.Value * Math.PI / 180;
        measures.Faults.Add("number-range", "paper.turn", tree.Place, "Here should be an angle from -180 to 180 degrees, \"fewest\" or \"none\".", "Write how far the pattern is turned on the paper, counter-clockwise.");
        return null;
    }

    private bool CheckRoom(PaperSpec paper, JsonTree at, string path, JsonTree? overlap)
    {
        if (PaperRoom.Fault(paper, measures.Show) is not var (code, problem, mend)) return true;
        bool tape = code == "paper-overlap";
        measures.Faults.Add(code, tape ? "paper.overlap" : path, (tape ? overlap ?? at : at).Place, problem, mend);
        return false;
    }
}
