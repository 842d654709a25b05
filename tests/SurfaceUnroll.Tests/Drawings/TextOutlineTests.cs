using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Drawings;

public class TextOutlineTests
{
    [Theory]
    // Advances in the hmtx table of Inter Regular over the cap height in its OS/2 table, in thousandths.
    [InlineData("H", 1018)]
    [InlineData("ill", 326 + 326 + 326)]
    [InlineData("é", 1130)] // Its own is 801: anything beyond ASCII is taken for wide.
    public void Width_follows_the_face(string text, double thousandths) =>
        Assert.Equal(2.5e-3 * thousandths, PageTextWidth.Of(text, 2.5), 1e-12);

    [Fact]
    public void Text_too_long_for_its_room_ends_in_an_ellipsis_and_fits()
    {
        const string text = "Delivery trike tail cover with a long name";
        string fitted = PageTextWidth.Fit(text, 2.4, 40);
        Assert.EndsWith("…", fitted, StringComparison.Ordinal);
        Assert.StartsWith("Delivery trike", fitted, StringComparison.Ordinal);
        Assert.InRange(PageTextWidth.Of(fitted, 2.4), 30, 40);
        Assert.Equal(text, PageTextWidth.Fit(text, 2.4, 200));
    }

    [Fact]
    public void Upright_text_fills_an_upright_rectangle()
    {
        var text = new Lettering(Role.Note, "FRONT", new Vec2(10, 20), 2, Math.PI / 2, Anchor.Middle);
        Box box = TextOutline.Of(text).Bounds;
        double width = PageTextWidth.Of("FRONT", 2);
        // Letters rise to the left of a line that is written upward; descenders, three tenths of the height, lie to its right.
        Assert.Equal(10 - 2, box.Min.X, 1e-9);
        Assert.Equal(10 + 0.6, box.Max.X, 1e-9);
        Assert.Equal(20 - width / 2, box.Min.Y, 1e-9);
        Assert.Equal(20 + width / 2, box.Max.Y, 1e-9);
    }

    [Fact]
    public void Slanting_texts_side_by_side_do_not_overlap_though_their_boxes_do()
    {
        const double angle = 0.7;
        var one = new Lettering(Role.Note, "ELEMENT", Vec2.Zero, 2, angle);
        Lettering beside = one with { At = 2.7 * Vec2.FromAngle(angle).Left };
        Lettering through = one with { At = 2.5 * Vec2.FromAngle(angle).Left };
        Assert.False(TextOutline.Of(one).Overlaps(TextOutline.Of(beside)));
        Assert.True(TextOutline.Of(one).Overlaps(TextOutline.Of(through)));
    }
}
