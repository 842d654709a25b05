using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Forming;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads the materials that a job defines for itself.</summary>
/// <param name="measures">Reads single values.</param>
internal sealed class MaterialReader(Measures measures)
{
    // Far beyond any sheet on either side: they catch a slipped decimal or another unit.
    private const double MostStrength = 5000, LeastModulus = 1, MostModulus = 1000, LeastDensity = 100, MostDensity = 25_000, MostRadius = 50;

    private const double GigaToMega = 1000, Percents = 100;

    private const string Given = "given in the job", Example = "{ \"shop steel\": { \"like\": \"mild steel\", \"yield\": 240 } }";

    private static readonly string[] Numbers = ["yield", "tensile", "elongation", "uniformElongation", "modulus", "density", "k", "minimumRadius"];

    private readonly FaultList _faults = measures.Faults;

    /// <summary>The job's own materials in the order of the file.</summary>
    public ImmutableArray<Material> Read(JobBlock job)
    {
        if (job.Find("materials") is not { } tree || JobBlock.Of(tree, "materials", _faults, Example) is not { } block) return [];
        var materials = ImmutableArray.CreateBuilder<Material>();
        foreach (JsonMember member in block.Tree.Members)
        {
            string path = block.PathOf(member.Key);
            if (string.IsNullOrWhiteSpace(member.Key))
                _faults.Add("name-empty", path, member.Place, "This material has no name.", "Give it a name that the sheet can call it by, such as \"shop steel\".");
            if (JobBlock.Of(member.Value, path, _faults, "{ \"like\": \"mild steel\", \"yield\": 240 }") is { } own) materials.Add(One(own, member.Key.Trim()));
        }
        return materials.ToImmutable();
    }

    private Material One(JobBlock block, string name)
    {
        block.CheckKeys(["like", .. Numbers]);
        Material start = Like(block) with { Name = name, Words = [name.ToLowerInvariant()], IsOwn = true };
        bool uniform = block.Has("uniformElongation");
        Material material = start with
        {
            UniformElongation = Elongation(block, "uniformElongation", start.UniformElongation),
            Source = uniform ? Given : start.Source,
            Yield = Strength(block, "yield", start.Yield),
            Tensile = Strength(block, "tensile", start.Tensile),
            Elongation = new Sourced(Elongation(block, "elongation", start.Elongation.Value), block.Has("elongation") ? Given : start.Elongation.Source),
            Modulus = Number(block, "modulus", start.Modulus, GigaToMega, LeastModulus, MostModulus, "a modulus in GPa from 1 to 1000", "Write it in GPa: 210 for steel, 70 for aluminium."),
            Density = Number(block, "density", start.Density, 1, LeastDensity, MostDensity, "a density in kg/m³ from 100 to 25000", "Write it in kg/m³: 7850 for steel, 2700 for aluminium."),
            MinimumRadius = Number(block, "minimumRadius", start.MinimumRadius, 1, 0, MostRadius, "a radius from 0 to 50, in thicknesses of the sheet", "Write the smallest inside radius as a multiple of the thickness, such as 1.5."),
            K = block.Has("k") ? measures.Number(block, "k", 0.4, k => k is > 0 and <= 0.5, "a K-factor above 0 and up to 0.5", "Write a number such as 0.42.") : null,
        };
        // The table of another metal does not hold for one of other strength or modulus: the formula does.
        if (block.Has("yield") || block.Has("modulus")) material = material with { Springback = [], SpringbackSource = "" };
        if (!_faults.HasUnder(block.Path)) Agree(block, material);
        return material;
    }

    // What is left out is as of this one. Without it nothing may be left out.
    private Material Like(JobBlock block)
    {
        var blank = new Material("", [], 0, Given, BendClass.Medium) { BendingSource = "taken as medium: the job does not say what it is like (no source)" };
        if (block.Find("like") is not { } tree)
        {
            string[] missing = [.. Numbers.Where(key => !block.Has(key))];
            if (missing.Length > 0)
                _faults.Add("key-missing", block.PathOf("like"), block.Tree.Place, $"The job does not say what this material is like, nor its {string.Join(", ", missing)}.", "Write \"like\": \"mild steel\", or another of the list of \"surfaceunroll materials\": it gives what is left out.");
            return blank;
        }
        if (measures.Text(tree, block.PathOf("like")) is not { } words) return blank;
        (Material material, bool known) = Materials.Of(words);
        if (!known)
        {
            string mend = NearestWord.To(words, Materials.All.SelectMany(m => m.Words)) is { } near ? $"Did you mean \"{near}\"?" : $"The materials of the list are: {string.Join("; ", Materials.All.Select(m => m.Name))}.";
            _faults.Add("material-unlisted", block.PathOf("like"), tree.Place, $"\"{words}\" is not in the list of materials.", mend);
        }
        string From(string source) => source.Length == 0 ? "" : $"like {material.Name}: {source}";
        Sourced As(Sourced number) => new(number.Value, From(number.Source));
        return material with
        {
            Source = From(material.Source),
            Yield = As(material.Yield),
            Tensile = As(material.Tensile),
            Elongation = As(material.Elongation),
            Modulus = As(material.Modulus),
            Density = As(material.Density),
            MinimumRadius = As(material.MinimumRadius),
            BendingSource = From(material.BendingSource),
            ThicknessSource = From(material.ThicknessSource),
            SpringbackSource = From(material.SpringbackSource),
        };
    }

    // Numbers that were given against those that were left out, too.
    private void Agree(JobBlock block, Material material)
    {
        if (material.Yield.Value > material.Tensile.Value)
        {
            _faults.Add("material-strengths", block.PathOf(block.Has("yield") ? "yield" : "tensile"), block.Find(block.Has("yield") ? "yield" : "tensile")!.Place,
                string.Create(CultureInfo.InvariantCulture, $"No sheet yields at {material.Yield.Value:0.###} MPa and tears at {material.Tensile.Value:0.###} MPa."),
                "Give \"yield\" and \"tensile\" both from one data sheet, in MPa; the yield strength is the smaller one.");
        }
        if (material.UniformElongation > material.Elongation.Value)
        {
            string key = block.Has("uniformElongation") ? "uniformElongation" : "elongation";
            _faults.Add("material-elongation", block.PathOf(key), block.Find(key)!.Place,
                string.Create(CultureInfo.InvariantCulture, $"No sheet stretches evenly by {Percents * material.UniformElongation:0.###} % and breaks at {Percents * material.Elongation.Value:0.###} %."),
                "Give \"elongation\", at break, and \"uniformElongation\", up to where it begins to neck, both in per cent; where only the first is known, half of it is a careful guess for the second.");
        }
    }

    private Sourced Strength(JobBlock block, string key, Sourced fallback) =>
        Number(block, key, fallback, 1, 1, MostStrength, "a strength in MPa from 1 to 5000", "Write it in MPa (N/mm²): 1 ksi is 6.895 MPa.");

    private double Elongation(JobBlock block, string key, double fallback) =>
        Number(block, key, new Sourced(fallback, ""), 1 / Percents, 1, Percents, "an elongation in per cent from 1 to 100", "Write it in per cent: 22 for 22 %.").Value;

    private Sourced Number(JobBlock block, string key, Sourced fallback, double unit, double least, double most, string wanted, string mend)
    {
        if (!block.Has(key)) return fallback;
        return new Sourced(unit * measures.Number(block, key, fallback.Value / unit, value => value >= least && value <= most, wanted, mend), Given);
    }
}
