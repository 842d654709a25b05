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
    public void The_table_in_the_docs_is_the_one_in_use()
    {
        string page = Fixtures.Page("materials.md").Split("## Sharp bends")[0];
        string[] rows = [.. page.Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Skip(1).Where(line => !line.StartsWith("| ---", StringComparison.Ordinal))];
        Assert.Equal(
            Materials.All.Select(m => string.Create(CultureInfo.InvariantCulture, $"| {m.Name} | {100 * m.UniformElongation:0} | {string.Join(", ", m.Words)} | {m.Source} | {m.Bending.ToString().ToLowerInvariant()} |")),
            rows);
    }
}
