using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;

namespace SurfaceUnroll.Tests.Patterns.Strain;

public class StrainPageTests
{
    public static TheoryData<string> Names => StrainPages.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Everything_is_inside_the_margins(string name)
    {
        Page page = StrainPages.Of(name);
        double margin = name switch { "wide margins" => 25, "saddle letter" => 6.35, _ => 10 };
        Box printable = new Box(Vec2.Zero, new Vec2(page.Width, page.Height)).Grow(-margin);
        Assert.All(page.Fills.SelectMany(f => f.More.Append(f.Points)).SelectMany(p => p), p => Assert.True(printable.Contains(p)));
        Assert.All(page.Lines.SelectMany(l => l.Points), p => Assert.True(printable.Contains(p)));
        Assert.All(page.Texts, t => Assert.All(TextOutline.Of(t).Corners, p => Assert.True(printable.Contains(p), t.Text)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Words_stand_clear_of_each_other_and_of_the_cut_line(string name)
    {
        Page page = StrainPages.Of(name);
        Assert.Empty(
            from i in Enumerable.Range(0, page.Texts.Length)
            from j in Enumerable.Range(0, i)
            where TextOutline.Of(page.Texts[i]).Overlaps(TextOutline.Of(page.Texts[j]))
            select $"{page.Texts[i].Text} on {page.Texts[j].Text}");
        PageLine cut = Assert.Single(page.Lines, l => l.Pen == Pen.Wide);
        Assert.All(page.Texts, t => Assert.All(
            StrainSamples.Pieces(cut.Points, true),
            piece => Assert.False(TextOutline.Of(t).Overlaps(Wide(piece.Item1, piece.Item2)), t.Text)));

        // A piece of the line with half its width to either side.
        static TextOutline Wide(Vec2 a, Vec2 b)
        {
            Vec2 side = 0.35 * (b - a).Unit.Left;
            return new TextOutline([a - side, b - side, b + side, a + side]);
        }
    }

    [Theory]
    [InlineData("dome")]
    [InlineData("saddle")]
    [InlineData("many peaks")]
    public void Colours_cover_the_blank_once(string name)
    {
        Page page = StrainPages.Of(name);
        ImmutableArray<Vec2> cut = page.Lines.Single(l => l.Pen == Pen.Wide).Points;
        Box map = Box.Around(cut);
        double Coloured(IEnumerable<PageFill> fills) => fills.SelectMany(f => f.More.Append(f.Points)).Where(l => l.All(map.Grow(1).Contains)).Sum(Area);
        // The dome's blank has 200 of the 203 mm of its cut line, and 96 sides.
        double blank = name == "dome" ? Area(cut) * Math.Pow(200.0 / 203, 2) : Area(cut);
        Assert.InRange(Coloured(page.Fills) / blank, 0.998, 1.002);
    }

    [Fact]
    public void Rim_of_a_dome_is_the_colour_of_shrink_and_its_middle_that_of_stretch()
    {
        Page page = StrainPages.Of("dome");
        Vec2 middle = Box.Around(page.Lines.Single(l => l.Pen == Pen.Wide).Points).Centre;
        Assert.Contains(page.Fills, f => f.Colour is { } c && c.Red > c.Blue && f.More.Append(f.Points).Any(l => Holds(l, middle)));
        Assert.Contains(page.Fills, f => f.Colour is { } c && c.Blue > c.Red && f.More.Append(f.Points).Any(l => Holds(l, middle + new Vec2(0.3, 69))));
    }

    [Fact]
    public void Page_turns_with_the_shape_unless_the_job_says_how()
    {
        Assert.True(StrainPages.Of("saddle").Width < StrainPages.Of("saddle").Height);
        Assert.True(StrainPages.Of("many peaks").Width > StrainPages.Of("many peaks").Height);
        Assert.True(StrainPages.Of("saddle landscape").Width > StrainPages.Of("saddle landscape").Height);
    }

    [Fact]
    public void Table_numbers_places_that_the_map_shows()
    {
        string[] texts = [.. StrainPages.Of("saddle").Texts.Select(t => t.Text)];
        foreach (string number in new[] { "1", "2", "3", "4", "5", "6" }) Assert.Equal(2, texts.Count(t => t == number));
        Assert.Contains("130 mm from the front edge along line 8", texts);
        Assert.All(new[] { "FRONT", "RIGHT", "REAR", "LEFT" }, edge => Assert.Contains(edge, texts));
    }

    [Fact]
    public void Ticks_lie_along_the_strain_and_are_as_long_as_it_is_large()
    {
        (SheetMesh mesh, StrainMap map) = StrainSamples.Dome();
        ImmutableArray<StrainTick> ticks = StrainTicks.Of(mesh, map, [.. Enumerable.Range(0, 120).Select(i => 203 * Vec2.FromAngle(i * Math.PI / 60))]);
        double[] perStrain = [.. ticks.Select(t => (t.To - t.From).Length / t.Size)];
        Assert.Equal(perStrain.Min(), perStrain.Max(), 6);
        Assert.All(ticks, t => Assert.True(t.From.Length < 203 && t.To.Length < 203));
        StrainTick[] rim = [.. ticks.Where(t => t.Kind == StrainKind.Shrink && (0.5 * (t.From + t.To)).Length > 120)];
        Assert.InRange(rim.Length, 50, 150);
        Assert.All(rim, t => Assert.InRange(Math.Abs((t.To - t.From).Unit.Dot((t.From + t.To).Unit)), 0, 0.05));
        Assert.InRange(ticks.Select(t => Math.Round((0.5 * (t.From + t.To)).X, 6)).Distinct().Count(), 12, 18);
    }

    private static double Area(ImmutableArray<Vec2> loop) => 0.5 * loop.Select((p, i) => p.Cross(loop[(i + 1) % loop.Length])).Sum();

    private static bool Holds(ImmutableArray<Vec2> loop, Vec2 p) => new SurfaceUnroll.Patterns.CutOutline(loop).Depth(p) > 0;
}
