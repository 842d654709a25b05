using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads what the shop's machines can do, the sheets that it has, and how pieces are laid out on them.</summary>
/// <param name="measures">Reads single values.</param>
internal sealed class ShopReader(Measures measures)
{
    // Lines or tacks nearer than this are no use, and thousands of them take long.
    private const double LeastPitch = 5;

    private const int MostSheets = 10_000;

    private const string SheetExample = "{ \"size\": [2000, 1000], \"count\": 3, \"grain\": \"long\" }";

    /// <summary>The machines and pitches of a job; unknown where it does not say.</summary>
    public ShopSpec Shop(JobBlock job)
    {
        if (job.Find("shop") is not { } tree || JobBlock.Of(tree, "shop", job.Faults, "{ \"rollWidth\": 1000, \"brakeLength\": 1250 }") is not { } block) return ShopSpec.Unknown;
        block.CheckKeys(["rollWidth", "rollMinRadius", "brakeLength", "shearThickness", "linePitch", "tackPitch"]);
        return new ShopSpec(
            Size(block, "rollWidth"), Size(block, "rollMinRadius"), Size(block, "brakeLength"), Size(block, "shearThickness"),
            Pitch(block, "linePitch", "numbered lines"), Pitch(block, "tackPitch", "tacks"));
    }

    /// <summary>The sheets of a job: a list, or a single one.</summary>
    public ImmutableArray<StockSheet> Stock(JobBlock job)
    {
        if (job.Find("stock") is not { } tree) return [];
        if (tree is JsonObject) return Sheet(tree, "stock") is { } single ? [single] : [];
        if (measures.List(tree, "stock", $"[ {SheetExample} ]") is not { } list) return [];
        return [.. list.Items.Select((item, i) => Sheet(item, $"stock[{Measures.Count(i)}]")).OfType<StockSheet>()];
    }

    /// <summary>How pieces are laid out on the sheets.</summary>
    public NestSpec Nest(JobBlock job)
    {
        NestSpec nest = NestSpec.Default;
        if (job.Find("nest") is not { } tree || JobBlock.Of(tree, "nest", job.Faults, "{ \"gap\": 5, \"turns\": \"quarter\" }") is not { } block) return nest;
        block.CheckKeys(["gap", "turns", "grain"]);
        double gap = block.Find("gap") is { } found ? measures.Length(found, block.PathOf("gap"), Allowed.NotNegative) : nest.Gap;
        if (gap > NestSpec.LargestGap)
            measures.Faults.Add("nest-gap", block.PathOf("gap"), block.Find("gap")!.Place, $"A gap of {measures.Show(gap)} between pieces is too wide; the most is {measures.Show(NestSpec.LargestGap)}.", "Check the decimal point and the unit of the gap.");
        return new NestSpec(gap, measures.Choice(block, "turns", nest.Turns, ("quarter", NestTurns.Quarter), ("any", NestTurns.Any), ("none", NestTurns.None)), measures.Choice(block, "grain", nest.GrainIsFree, ("keep", false), ("free", true)));
    }

    private StockSheet? Sheet(JsonTree tree, string path)
    {
        if (JobBlock.Of(tree, path, measures.Faults, SheetExample) is not { } block) return null;
        block.CheckKeys(["size", "count", "grain"]);
        int? count = block.Has("count") ? measures.Whole(block, "count", 1, 1, MostSheets, "Write how many of these sheets there are; leave \"count\" out if there are as many as it takes.") : null;
        bool across = measures.Choice(block, "grain", false, ("long", false), ("short", true));
        if (block.Need("size", "Give both sides of the sheet, like \"size\": [2000, 1000].") is not { } sides) return null;
        string at = block.PathOf("size");
        if (measures.Tuple(sides, at, "[length, width]", 2) is not { } size) return null;
        for (int i = 0; i < size.Length; i++)
        {
            if (size[i] <= 0)
                measures.Faults.Add("length-not-positive", $"{at}[{Measures.Count(i)}]", ((JsonList)sides).Items[i].Place, $"A side of a sheet must be more than zero; it is {measures.Show(size[i])}.", "Measure it again, or take this sheet out.");
        }
        return new StockSheet(Math.Max(size[0], size[1]), Math.Min(size[0], size[1]), count, across);
    }

    private double? Size(JobBlock block, string key) => block.Find(key) is { } tree ? measures.Length(tree, block.PathOf(key), Allowed.Positive) : null;

    private double? Pitch(JobBlock block, string key, string what)
    {
        if (Size(block, key) is not { } pitch) return null;
        if (pitch is > 0 and < LeastPitch)
            measures.Faults.Add("pitch-too-small", block.PathOf(key), block.Find(key)!.Place, $"{measures.Show(pitch)} from one to the next is too close for {what}; the least is {measures.Show(LeastPitch)}.", "Check the decimal point and the unit of the distance.");
        return pitch;
    }
}
