using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Patterns.Strain;

public class FormingWordsTests
{
    private static readonly SheetMesh Sheet = StrainSamples.Grid(600, 400, 60, 40);

    private static ImmutableArray<string> Words(Func<Vec2, double> strain, LengthUnit units = LengthUnit.Millimetre)
    {
        StrainMap map = StrainSamples.Signed(Sheet, strain);
        return FormingWords.Of(Sheet, map, StrainSpots.Of(Sheet, map, [], [], units), units);
    }

    private static double Bump(Vec2 p, double x, double y) => Math.Exp(-(p - new Vec2(x, y)).Dot(p - new Vec2(x, y)) / 2000);

    [Fact]
    public void Dome_is_shrunk_round_the_rim_and_stretched_in_the_middle()
    {
        (SheetMesh mesh, StrainMap map) = StrainSamples.Dome();
        Assert.Equal<string>(
            [
                "Shrink all round the rim, a band about 50 mm deep, by up to 6.4 %: shrinker, or tucks hammered down.",
                "Stretch the middle, about 175 mm across and 175 mm lengthwise, by up to 3 %: wheel, or hammer over dolly or bag.",
            ],
            FormingWords.Of(mesh, map, [], LengthUnit.Millimetre));
    }

    [Theory]
    [InlineData(0, 0, "the middle")]
    [InlineData(0, 180, "the middle of the front")]
    [InlineData(250, 0, "the middle of the right side")]
    [InlineData(250, -180, "the right rear corner")]
    [InlineData(-250, 180, "the left front corner")]
    public void Areas_are_named_by_where_they_lie(double x, double y, string place)
    {
        Assert.StartsWith($"Stretch {place} (no. 1), about ", Assert.Single(Words(p => 0.02 * Bump(p, x, y))));
        Assert.StartsWith($"Shrink {place} (no. 1), about ", Assert.Single(Words(p => -0.02 * Bump(p, x, y))));
    }

    [Fact]
    public void Bands_along_an_edge_and_through_the_middle_are_told_as_such()
    {
        Assert.StartsWith("Stretch along the front edge", Assert.Single(Words(p => p.Y > 150 ? 0.01 : 0)));
        Assert.StartsWith("Stretch from side to side through the middle", Assert.Single(Words(p => Math.Abs(p.Y) < 50 ? 0.01 : 0)));
        Assert.StartsWith("Stretch from front to rear on the left side", Assert.Single(Words(p => p.X < -250 ? 0.01 : 0)));
        Assert.StartsWith("Stretch nearly all of the sheet", Assert.Single(Words(_ => 0.01)));
    }

    [Fact]
    public void Strain_one_way_is_told_with_its_direction()
    {
        Assert.Contains(", crosswise only:", Assert.Single(Words(p => 0.02 * Bump(p, 0, 0))), StringComparison.Ordinal);
        StrainMap up = StrainSamples.Map(Sheet, p => (0.02 * Bump(p, 0, 0), 0, new Vec2(0, -1)));
        Assert.Contains(", lengthwise only:", Assert.Single(FormingWords.Of(Sheet, up, [], LengthUnit.Millimetre)), StringComparison.Ordinal);
        StrainMap everyWay = StrainSamples.Map(Sheet, p => (0.02 * Bump(p, 0, 0), 0.015 * Bump(p, 0, 0), new Vec2(0, -1)));
        Assert.DoesNotContain("only", Assert.Single(FormingWords.Of(Sheet, everyWay, [], LengthUnit.Millimetre)), StringComparison.Ordinal);
    }

    [Fact]
    public void Sizes_are_of_the_area_above_a_third_of_the_worst()
    {
        // exp(−r²/2000) is a third at r = 46.9 mm: vertices 40 mm from the middle are in it, those at 50 mm are not.
        Assert.Contains("about 80 mm across and 80 mm lengthwise, by up to 2 %", Assert.Single(Words(p => 0.02 * Bump(p, 0, 0))), StringComparison.Ordinal);
        Assert.Contains("about 3 1/4\" across", Assert.Single(Words(p => 0.02 * Bump(p, 0, 0), LengthUnit.Inch)), StringComparison.Ordinal);
    }

    [Fact]
    public void Six_sentences_at_most_with_the_worst_of_both_kinds()
    {
        ImmutableArray<string> words = Words(p => 0.02 * Math.Sin(p.X / 25) * Math.Sin(p.Y / 25) - 0.0035);
        Assert.Equal(6, words.Length);
        Assert.Contains(words, w => w.StartsWith("Stretch", StringComparison.Ordinal));
    }

    [Fact]
    public void Sheet_that_only_bends_is_said_to() => Assert.Contains("bend the sheet only", Assert.Single(Words(_ => 0.0009)), StringComparison.Ordinal);
}
