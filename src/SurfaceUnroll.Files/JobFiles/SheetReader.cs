using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads what the pieces are cut from, and how the shop bends it.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="own">The job's own materials.</param>
internal sealed class SheetReader(Measures measures, ImmutableArray<Material> own)
{
    private const double ThickestSheet = 25;

    private const string Unnamed = "sheet metal";

    /// <summary>The sheet of a job.</summary>
    public SheetStock Read(JobBlock job)
    {
        if (job.Find("sheet") is not { } tree) return new SheetStock(Unnamed, 0);
        if (JobBlock.Of(tree, "sheet", job.Faults, "{ \"material\": \"mild steel\", \"thickness\": 0.9 }") is not { } block) return new SheetStock(Unnamed, double.NaN);
        block.CheckKeys(["material", "thickness", "bendRule", "k", "ownBend"]);
        string? material = block.Find("material") is { } text ? measures.Text(text, "sheet.material")?.Trim() : null;
        if (string.IsNullOrEmpty(material)) material = null;
        Material? metal = material is null ? null : Metal(material, block);
        double thickness = block.Find("thickness") switch
        {
            null => 0,
            // A material with a fault does not tell which table to look in.
            { } t when GaugeReader.IsGauge(t) => job.Faults.HasUnder("sheet.material") ? double.NaN : GaugeReader.Read(t, "sheet.thickness", metal, material, job.Faults),
            { } t => measures.Length(t, "sheet.thickness", Allowed.NotNegative),
        };
        if (thickness > ThickestSheet)
        {
            job.Faults.Add("sheet-too-thick", "sheet.thickness", block.Find("thickness")!.Place,
                string.Create(CultureInfo.InvariantCulture, $"A sheet {measures.Show(thickness)} thick is plate: the limit is {measures.Show(ThickestSheet)}."),
                "Check the decimal point and the unit of the thickness.");
        }
        var stock = new SheetStock(material ?? Unnamed, thickness) { Bending = Bending(block, thickness) };
        return metal is { IsOwn: true } ? stock with { Metal = metal } : stock;
    }

    // The job's own material of that name, else that of the list; null where neither has it.
    private Material? Metal(string written, JobBlock sheet)
    {
        if (own.FirstOrDefault(m => m.Name.Equals(written, StringComparison.OrdinalIgnoreCase)) is { } ours) return ours;
        (Material listed, bool known) = Materials.Of(written);
        if (known) return listed;
        // A job that defines materials means one of them by a word that nothing else goes by.
        if (!own.IsEmpty) measures.Faults.Knows(written, [.. own.Select(m => m.Name)], "material", "sheet.material", sheet.Find("material")!, "");
        return null;
    }

    private BendSetup Bending(JobBlock block, double thickness)
    {
        BendRule rule = measures.Choice(block, "bendRule", BendRule.KFactor, ("k-factor", BendRule.KFactor), ("din-6935", BendRule.Din6935), ("per-degree", BendRule.PerDegree));
        double? k = !block.Has("k") ? null : measures.Number(
            block, "k", 0.4, value => value is > 0 and <= 0.5, "a K-factor above 0 and up to 0.5", "Write a number such as 0.42: how far in the fibre lies that keeps its length, as a share of the thickness.");
        return new BendSetup(rule, k, Own(block, thickness));
    }

    private OwnBend? Own(JobBlock sheet, double thickness)
    {
        const string example = "{ \"radius\": 1, \"angle\": 90, \"deduction\": 1.7 }";
        if (sheet.Find("ownBend") is not { } tree || JobBlock.Of(tree, sheet.PathOf("ownBend"), sheet.Faults, example) is not { } block) return null;
        block.CheckKeys(["radius", "angle", "deduction"]);
        double radius = block.Need("radius", "Give the inside radius of the bend.") is { } r ? measures.Length(r, block.PathOf("radius"), Allowed.NotNegative) : double.NaN;
        double deduction = block.Need("deduction", "Give what both outside lengths together came out longer than the scrap was.") is { } d ? measures.Length(d, block.PathOf("deduction")) : double.NaN;
        var own = new OwnBend(radius, measures.BendAngle(block, "angle", "Give the angle in degrees that the sheet was bent through: 90 for a square bend."), deduction);
        if (thickness is > 0 and <= ThickestSheet && block.Find("deduction") is { } place) Check(own, thickness, block.PathOf("deduction"), place);
        return own;
    }

    // The fibre that keeps its length lies inside the sheet. No fault where a part of the bend could not be read.
    private void Check(OwnBend own, double thickness, string path, JsonTree at)
    {
        const double rounding = 1e-6;
        double k = BendAllowance.Shown(own, thickness);
        if (double.IsNaN(k) || k is >= -rounding and <= BendAllowance.MostShownK + rounding) return;
        double Deduction(double share) => BendAllowance.Deduction(own.Radius, thickness, share, own.Angle);
        measures.Faults.Add(
            "own-bend-deduction", path, at.Place,
            $"A bend through {Degrees(own.Angle)} to an inside radius of {measures.Show(own.Radius)}, in a sheet {measures.Show(thickness)} thick, cannot have a deduction of {measures.Show(own.Deduction)}: it lies between {measures.Show(Deduction(BendAllowance.MostShownK))} and {measures.Show(Deduction(0))}.",
            "Measure again: the deduction is both outside lengths, to where the outside faces meet (past 90° to the outermost place of the bend), together less the length of the scrap before. The angle is that which the sheet was bent through.");
    }

    private static string Degrees(double radians) => (radians * 180 / Math.PI).ToString("0.#", CultureInfo.InvariantCulture) + "°";
}
