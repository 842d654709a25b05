using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>From the tree of a job file to the job. Reads on past faults; what it returns counts only if there is none.</summary>
internal static class JobReader
{
    private const string UnitsMend = "Write \"units\": \"mm\" or \"units\": \"in\": it says what the plain numbers of the job are.";

    private static readonly string[] Keys = ["job", "units", "sheet", "measured", "curves", "panels", "joints", "openings", "paper", "materials", "shop", "stock", "nest", "cutting", "built", "$schema"];

    /// <summary>Reads a whole job; null if the tree is no block at all.</summary>
    /// <param name="tree">The file.</param>
    /// <param name="faults">Where faults go.</param>
    /// <param name="open">Opens the files that the job names.</param>
    /// <param name="lengths">Paths of all lengths of the job.</param>
    public static Job? Read(JsonTree tree, FaultList faults, Func<string, FileReading> open, out IReadOnlyList<string> lengths)
    {
        lengths = [];
        if (tree is not JsonObject root)
        {
            faults.Add("job-not-block", "", tree.Place, $"A job is a block {{ … }}, but the file holds {tree.Kind}.",
                "Start from the job that \"surfaceunroll new FILE.json\" writes.");
            return null;
        }
        JobBlock block = JobBlock.Of(root, "", faults, "")!;
        block.CheckKeys(Keys);
        LengthUnit units = Units(block);
        var measures = new Measures(faults, units);
        lengths = measures.Lengths;
        string name = block.Find("job") is { } title ? measures.Text(title, "job") ?? "" : "";
        if (block.Find("$schema") is { } schema) measures.Text(schema, "$schema");
        SheetStock sheet = new SheetReader(measures, new MaterialReader(measures).Read(block)).Read(block);
        MeasuredFace face = Face(block, measures, sheet);
        ImmutableArray<NamedCurve> curves = Curves(block, measures, open, out CurveNames names);
        var reader = new PanelReader(measures, names, open);
        ImmutableArray<PanelSpec> panels = reader.Read(block);
        ImmutableArray<OpeningSpec> openings = new OpeningReader(measures, names).Shared(block, reader.Names);
        var edges = new EdgeNames(block, panels, openings);
        edges.Check();
        ImmutableArray<JointSpec> joints = new JointReader(measures, panels, reader.Names, edges).Read(block);
        PaperSpec paper = new PaperReader(measures, units).Read(block);
        var shop = new ShopReader(measures);
        return new Job(string.IsNullOrWhiteSpace(name) ? "Untitled" : name.Trim(), units, sheet, face, curves, panels, paper)
        {
            Joints = joints,
            Openings = openings,
            Shop = shop.Shop(block),
            Stock = shop.Stock(block),
            Nest = shop.Nest(block),
            Cutting = CuttingReader.Read(block, measures),
            Built = new BuiltReader(measures, [.. reader.Names, .. panels.SelectMany(p => PanelNames.Pieces(p.Name, p.Pieces))], edges).Read(block),
        };
    }

    private static LengthUnit Units(JobBlock block)
    {
        if (block.Need("units", UnitsMend) is not { } tree) return LengthUnit.Millimetre;
        // Measures need the unit, so this one word is read with any.
        return new Measures(block.Faults, LengthUnit.Millimetre).Choice(tree, "units", LengthUnit.Millimetre, ("mm", LengthUnit.Millimetre), ("in", LengthUnit.Inch));
    }

    private static MeasuredFace Face(JobBlock job, Measures measures, SheetStock sheet)
    {
        if (!job.Has("measured") && sheet.Thickness > 0 && !Panels(job, "mesh", "measured"))
        {
            job.Faults.Add("key-missing", "measured", job.Tree.Place, "The sheet has a thickness, but the job does not say which face was measured.",
                "Write \"measured\": \"outside\" (a tape laid over the part), \"inside\" (over a former) or \"middle\".");
        }
        return measures.Choice(job, "measured", MeasuredFace.Middle,
            ("outside", MeasuredFace.Outside), ("inside", MeasuredFace.Inside), ("middle", MeasuredFace.Middle));
    }

    private static ImmutableArray<NamedCurve> Curves(JobBlock job, Measures measures, Func<string, FileReading> open, out CurveNames names)
    {
        names = new CurveNames(measures, [], []);
        const string example = "\"curves\": { \"front\": { \"chord\": 240, \"rise\": 120 }, \"rear\": { … } }";
        if (!job.Has("curves") && Panels(job, "mesh", "bent")) return [];
        if (job.Need("curves", $"Give the measured curves, like {example}.") is not { } tree) return [];
        if (JobBlock.Of(tree, "curves", job.Faults, example) is not { } block) return [];
        if (block.Tree.Members.IsEmpty && !Panels(job, "mesh", "bent"))
            job.Faults.Add("curves-none", "curves", block.Tree.Place, "There is no curve in the job.", $"Give the measured curves, like {example}.");
        var curves = ImmutableArray.CreateBuilder<NamedCurve>();
        foreach (JsonMember member in block.Tree.Members)
        {
            if (string.IsNullOrWhiteSpace(member.Key))
                job.Faults.Add("name-empty", block.PathOf(member.Key), member.Place, "This curve has no name.", "Give it a name that panels can call it by, such as \"front\".");
            if (new CurveReader(measures, open).Read(member.Value, block.PathOf(member.Key)) is { } spec) curves.Add(new NamedCurve(member.Key, spec));
        }
        names = new CurveNames(measures, [.. block.Tree.Members.Select(m => m.Key).Distinct()], [.. curves.Where(c => c.Spec is PlanSideSpec).Select(c => c.Name)]);
        return curves.ToImmutable();
    }

    // True if every panel has one of these keys.
    private static bool Panels(JobBlock job, params string[] keys) =>
        job.Find("panels") is JsonList { Items: [_, ..] panels } && panels.All(p => p is JsonObject panel && keys.Any(key => panel.Find(key) is not null));
}
