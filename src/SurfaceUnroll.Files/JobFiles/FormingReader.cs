using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads how a sheet that cannot only bend is to be made: held edges, the cost of shrinking, pieces, slits.</summary>
internal sealed class FormingReader(Measures measures)
{
    private const double MostShrinkCost = 100;

    /// <summary>Into so many pieces a sheet is split at most.</summary>
    public const int MostPieces = 6;

    private const string SlitExample = "[ { \"edge\": \"front\", \"at\": 120, \"depth\": 60 } ], or \"auto\"";

    private static readonly (string Word, string Value)[] LoftEdges = [("front", "front"), ("right", "right"), ("rear", "rear"), ("left", "left")];

    private static readonly (string Word, string Value)[] MeshEdges = [("rim", "rim")];

    private readonly FaultList _faults = measures.Faults;

    /// <summary>The panel with what the block says of forming it.</summary>
    public PanelSpec Read(JobBlock block, PanelSpec panel)
    {
        bool mesh = block.Has("mesh");
        panel = panel with { Hold = Hold(block, mesh ? MeshEdges : LoftEdges), ShrinkCost = ShrinkCost(block) };
        // On a mesh these keys are refused already.
        return mesh ? panel : panel with
        {
            Pieces = Pieces(block),
            Along = measures.Choice(block, "along", SeamDirection.Lengthwise, ("lengthwise", SeamDirection.Lengthwise), ("across", SeamDirection.Across)),
            Slits = Slits(block),
        };
    }

    private ImmutableArray<string> Hold(JobBlock block, (string, string)[] edges)
    {
        string path = block.PathOf("hold");
        if (block.Find("hold") is not { } tree || measures.List(tree, path, "[\"front\", \"rear\"]") is not { } list) return [];
        var held = ImmutableArray.CreateBuilder<string>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            string at = $"{path}[{Measures.Count(i)}]";
            string edge = measures.Choice(list.Items[i], at, "", edges);
            if (edge.Length == 0) continue;
            if (held.Contains(edge)) _faults.Add("hold-twice", at, list.Items[i].Place, $"The edge \"{edge}\" is held already.", "Take one of the two out.");
            else held.Add(edge);
        }
        return held.ToImmutable();
    }

    private double ShrinkCost(JobBlock block) => measures.Number(
        block, "shrinkCost", 1, cost => cost is >= 1 and <= MostShrinkCost, "a number from 1 to 100",
        "Write 1 if shrinking is no harder than stretching; 2 or 3 suits thin sheet formed by hand.", "shrink-cost", "What shrinking costs against stretching is a number from 1 to 100.");

    private int Pieces(JobBlock block) => measures.Whole(
        block, "pieces", 1, 1, MostPieces, "Write a whole number: into so many pieces the sheet is split.", "pieces-count", "A sheet is split into 1 to 6 pieces.");

    private ImmutableArray<SlitSpec> Slits(JobBlock block)
    {
        string path = block.PathOf("slits");
        if (block.Find("slits") is not { } tree) return [];
        var wherever = new SlitSpec("", null, null);
        if (tree is JsonText) return [measures.Choice(tree, path, wherever, ("auto", wherever))];
        if (measures.List(tree, path, SlitExample) is not { } list) return [];
        var slits = ImmutableArray.CreateBuilder<SlitSpec>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            if (Slit(list.Items[i], $"{path}[{Measures.Count(i)}]") is { } slit) slits.Add(slit);
        }
        return slits.ToImmutable();
    }

    private SlitSpec? Slit(JsonTree tree, string path)
    {
        if (JobBlock.Of(tree, path, _faults, "{ \"edge\": \"front\", \"at\": 120, \"depth\": 60 }") is not { } block) return null;
        block.CheckKeys(["edge", "at", "depth"]);
        string edge = block.Need("edge", "Name the edge that the slit starts from: front, right, rear or left.") is { } name
            ? measures.Choice(name, block.PathOf("edge"), "", LoftEdges) : "";
        return new SlitSpec(edge, Size(block, "at", Allowed.NotNegative), Size(block, "depth", Allowed.Positive));
    }

    // Null where it is left to be found.
    private double? Size(JobBlock slit, string key, Allowed allowed) =>
        slit.Find(key) is { } tree and not JsonText { Value: "auto" } ? measures.Length(tree, slit.PathOf(key), allowed) : null;
}
