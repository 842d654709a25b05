using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Drawings;

public class ShopWordsTests
{
    [Theory]
    [InlineData(293_200, LengthUnit.Millimetre, "0.2932 m²")]
    [InlineData(10_000, LengthUnit.Millimetre, "0.0100 m²")]
    [InlineData(3_167, LengthUnit.Millimetre, "31.7 cm²")]
    [InlineData(20, LengthUnit.Millimetre, "0.200 cm²")]
    [InlineData(645.16, LengthUnit.Inch, "1.0 sq in")]
    [InlineData(64.516, LengthUnit.Inch, "0.100 sq in")]
    public void Areas_are_told_in_a_unit_of_their_size(double mm2, LengthUnit units, string words) => Assert.Equal(words, AreaWords.Of(mm2, units));

    [Theory]
    [InlineData(1, LengthUnit.Inch, "0.039")]
    [InlineData(1.016, LengthUnit.Inch, "0.040")]
    [InlineData(0, LengthUnit.Inch, "0.000")]
    [InlineData(-0.001, LengthUnit.Millimetre, "0.00")]
    [InlineData(2.5, LengthUnit.Millimetre, "2.50")]
    public void What_a_bend_is_reckoned_with_has_as_many_decimals_in_every_row(double mm, LengthUnit units, string words) => Assert.Equal(words, BendWords.Fine(mm, units));

    [Theory]
    [InlineData(89.6, 91, "89.6–91.0°")]
    [InlineData(85, 95, "85–95°")]
    [InlineData(31.6, 31.6, "31.6°")]
    public void Both_ends_of_a_range_of_angles_have_as_many_decimals(double least, double greatest, string words) =>
        Assert.Equal(words, BendWords.Degrees(least * Math.PI / 180, greatest * Math.PI / 180, 0.5 * (least + greatest) * Math.PI / 180));

    [Fact]
    public void A_bend_is_never_called_like_a_match_mark()
    {
        PanelDevelopment panel = FittedSamples.Cover().Panels[0];
        Assert.Equal("bend 1", BendWords.Name(panel.Bends[0]));
        Assert.Equal("Bend 1, lip rear", BendWords.Heading(panel.Bends[0]));
        Assert.DoesNotContain(JointWords.Label(panel.Marks[0] with { Joint = "B" }), new[] { BendWords.Name(panel.Bends[0]), new Tile(1, 0, default, false).Label });
    }

    [Fact]
    public void Cautions_speak_of_each_matter_once_whether_or_not_they_fit_the_first_page()
    {
        Development cover = FittedSamples.Cover();
        string[] all = [.. ShopCautions.Of(cover.Panels[0], cover.Joints)];
        foreach (string matter in new[] { "razor sharp", "eburr", "crush", "Grind", "zinc", "road" })
            Assert.Single(all, c => c.Contains(matter, StringComparison.Ordinal));
        Assert.Equal(ShopCautions.Always.AsEnumerable(), ShopCautions.Of(Samples.HalfCylinder().Panels[0], []));
        Assert.Empty(ShopCautions.Always.Intersect(ShopCautions.Beside(cover.Panels[0], cover.Joints)));
    }
}
