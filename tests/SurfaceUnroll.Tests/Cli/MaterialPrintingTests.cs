using SurfaceUnroll.Cli;
using SurfaceUnroll.Forming;

namespace SurfaceUnroll.Tests.Cli;

public class MaterialPrintingTests
{
    [Fact]
    public void Every_material_is_listed_in_a_row_of_its_own()
    {
        InProcess.Result result = InProcess.Run("materials");
        Assert.Equal(ExitStatus.Done, result.Status);
        string[] lines = result.Out.TrimEnd().Split('\n');
        Assert.Equal(1 + Materials.All.Length, lines.Length);
        Assert.StartsWith("material", lines[0], StringComparison.Ordinal);
        Assert.Equal(["mild steel (DC01)", "200", "340", "28", "210", "7850", "0.38", "0.5", "sheet steel"], lines[1].Split("  ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)[..9]);
        Assert.EndsWith("sheet metal", lines[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("stainless steel", "stainless steel 304")]
    [InlineData("copper R240", "copper, half hard (R240)")]
    [InlineData("galvanised", "galvanized steel")]
    [InlineData("aluminium, alloy and temper not given", "aluminium, alloy and temper not given")]
    public void One_material_is_told_in_full(string name, string heading)
    {
        foreach (string[] words in new[] { [name], name.Split(' ') })
        {
            InProcess.Result result = InProcess.Run(["materials", .. words]);
            Assert.Equal((ExitStatus.Done, ""), (result.Status, result.Error));
            Assert.Equal(heading, result.Out.Split('\n')[0]);
            Material material = Materials.Of(name).Material;
            Assert.Contains(material.Yield.Source, result.Out, StringComparison.Ordinal);
            Assert.Contains(material.Source, result.Out, StringComparison.Ordinal);
            Assert.Equal(material.Gauges is not null, result.Out.Contains("\ngauge ", StringComparison.Ordinal));
        }
    }

    // .0359 in: the manufacturers' standard gauge.
    [Fact]
    public void Gauges_of_steel_stand_below_its_numbers() =>
        Assert.Contains("\n20     .0359  0.912  manufacturers' standard gauge\n", InProcess.Run("materials", "steel").Out, StringComparison.Ordinal);

    [Theory]
    [InlineData("stainles steel", "Did you mean “stainless steel”?")]
    [InlineData("brasss", "Did you mean “brass”?")]
    [InlineData("unobtainium", "The materials are: mild steel (DC01); galvanized steel;")]
    public void An_unknown_material_ends_with_2_and_the_nearest_names(string name, string mend)
    {
        InProcess.Result result = InProcess.Run("materials", name);
        Assert.Equal((ExitStatus.CannotUse, ""), (result.Status, result.Out));
        Assert.Contains($"There is no material “{name}” in the list.", result.Error, StringComparison.Ordinal);
        Assert.Contains(mend, result.Error, StringComparison.Ordinal);
    }
}
