using System.Globalization;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Forming;

public class MaterialsTests
{
    [Fact]
    public void Every_material_says_where_its_number_comes_from() =>
        Assert.All(Materials.All, m =>
        {
            Assert.True(m.Source.Contains("memory", StringComparison.Ordinal) || m.Source.Contains("EN ", StringComparison.Ordinal), m.Source);
            Assert.InRange(m.UniformElongation, 0.01, 0.6);
        });

    [Fact]
    public void Names_are_lower_case_and_do_not_clash()
    {
        string[] words = [.. Materials.All.SelectMany(m => m.Words)];
        Assert.Equal(words.Distinct(), words);
        Assert.All(words, w => Assert.Equal(w.ToLowerInvariant(), w));
    }

    [Theory]
    [InlineData("304 stainless steel", "stainless steel 304")]
    [InlineData("Stainless steel", "stainless steel 304")]
    [InlineData("galvanized steel", "galvanized steel")]
    [InlineData("Galvanised steel 0.7", "galvanized steel")]
    [InlineData("mild steel", "mild steel (DC01)")]
    [InlineData("DC04", "deep-drawing steel (DC04)")]
    [InlineData("DC04 steel", "deep-drawing steel (DC04)")]
    [InlineData("deep-drawing steel", "deep-drawing steel (DC04)")]
    [InlineData("aluminium 3003-O", "aluminium 1050/1100/3003 soft (O)")]
    [InlineData("aluminum 3003-H14", "aluminium 3003-H14")]
    [InlineData("soft aluminium", "aluminium 1050/1100/3003 soft (O)")]
    [InlineData("6061-T6 aluminium", "aluminium 6061-T6")]
    [InlineData("aluminium", "aluminium, alloy and temper not given")]
    [InlineData("half-hard copper", "copper, half hard (R240)")]
    [InlineData("half hard copper", "copper, half hard (R240)")]
    [InlineData("copper R240", "copper, half hard (R240)")]
    [InlineData("copper", "copper, soft (R220)")]
    public void A_material_is_known_by_the_name_that_says_most(string written, string name)
    {
        (Material material, bool known) = Materials.Of(written);
        Assert.Equal((name, true), (material.Name, known));
    }

    [Theory]
    [InlineData("unobtainium")]
    [InlineData("")]
    [InlineData("sheet in 1304 pieces")]
    public void What_is_not_in_the_table_is_taken_for_mild_steel_and_said_not_to_be_known(string written) =>
        Assert.Equal((Materials.All[0], false), Materials.Of(written));

    [Fact]
    public void The_tables_in_the_docs_are_the_ones_in_use()
    {
        Assert.Equal(Materials.All.Select(m => $"| {m.Name} | {Number(100 * m.UniformElongation)} | {string.Join(", ", m.Words)} | {m.Source} | {m.Bending.ToString().ToLowerInvariant()} |"), Rows("# Materials"));
        Assert.Equal(
            Materials.All.Select(m => $"| {m.Name} | {Cell(m.Yield)} | {Cell(m.Tensile)} | {Cell(m.Elongation, 100)} | {Cell(m.Modulus, 0.001)} | {Cell(m.Density)} | {Cell(m.MinimumRadius)} |"),
            Rows("## Strength, weight, bending"));
        Assert.Equal(
            Materials.All.Select(m => $"| {m.Name} | {(m.Gauges is { } system ? Gauges.Name(system) : "none")} | {string.Join(", ", m.Thicknesses.Select(Number))} | {Factors(m)} |"),
            Rows("## Gauges, thicknesses, springback"));
    }

    [Fact]
    public void Every_number_of_every_material_has_a_source_and_can_be()
    {
        Assert.All(Materials.All, m =>
        {
            Assert.All([m.Yield.Source, m.Tensile.Source, m.Elongation.Source, m.Modulus.Source, m.Density.Source, m.MinimumRadius.Source, m.BendingSource, m.ThicknessSource], s => Assert.NotEqual("", s));
            Assert.Equal(m.Springback.IsEmpty, m.SpringbackSource.Length == 0);
            Assert.InRange(m.Yield.Value, 30, m.Tensile.Value);
            Assert.InRange(m.UniformElongation, 0, m.Elongation.Value);
            Assert.Equal(m.Thicknesses.Order(), m.Thicknesses);
            Assert.Equal(m.Springback.OrderBy(s => s.Ratio), m.Springback);
        });
    }

    // Yield and tensile in MPa, elongation in %, E in GPa: EN 10130 (DC01), EN 10139:1998 (DC04), supplier data sheets (304, 3003-H14), Aluminum Design Manual table 3.3-1M (5052-H32),
    // an engineering handbook (6061-T6), EN 1172 (copper). A range or a limit of the source is one here too.
    [Theory]
    [InlineData("DC01", 0, 280, 270, 410, 28)]
    [InlineData("DC04", 0, 240, 270, 370, 34)]
    [InlineData("304", 205, 310, 515, 600, 60)]
    [InlineData("5052-H32", 160, 160, 215, 215, null, 70.3)]
    [InlineData("3003-H14", 145, 145, 152, 152, 8, 68.9)]
    [InlineData("6061-T6", 241, 241, 290, 290, null, 69.0)]
    [InlineData("copper", 0, 1000, 220, 260, 42)]
    [InlineData("copper R240", 0, 1000, 240, 300, 15)]
    public void Strengths_are_those_of_standards_and_data_sheets(string name, double leastYield, double mostYield, double leastTensile, double mostTensile, int? elongation, double? modulus = null)
    {
        Material material = Materials.Of(name).Material;
        Assert.InRange(material.Yield.Value, leastYield, mostYield);
        Assert.InRange(material.Tensile.Value, leastTensile, mostTensile);
        if (elongation is { } percent) Assert.Equal(percent / 100.0, material.Elongation.Value, 1e-12);
        if (modulus is { } e) Assert.Equal(1000 * e, material.Modulus.Value, 1e-6);
    }

    // Published for sheet of .125 in.
    [Theory]
    [InlineData("5052-H32", 1.5)]
    [InlineData("6061-T6", 2.5)]
    public void Least_radius_is_the_published_one(string name, double thicknesses) => Assert.Equal(thicknesses, Materials.Of(name).Material.MinimumRadius.Value);

    private static string[] Rows(string heading)
    {
        string page = "\n" + Fixtures.Page("materials.md");
        string section = page[(page.IndexOf($"\n{heading}\n", StringComparison.Ordinal) + heading.Length + 1)..].Split("\n## ")[0];
        return [.. section.Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Skip(1).Where(line => !line.StartsWith("| ---", StringComparison.Ordinal))];
    }

    private static string Cell(Sourced number, double unit = 1) => $"{Number(unit * number.Value)} ({number.Source})";

    private static string Factors(Material m) =>
        m.Springback.IsEmpty ? "no table" : $"{string.Join(", ", m.Springback.Select(s => s.Factor.ToString("0.00", CultureInfo.InvariantCulture)))} ({m.SpringbackSource})";

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
