using System.Collections.Immutable;
using SkiaSharp;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Tests.Files.Photos;

public class TracePictureTests
{
    private static readonly GreyPhoto Blank = new(400, 300, [.. new ushort[400 * 300]]);

    private static MarkReference Marks(params string[] names)
    {
        Vec2[] taps = [new(60, 250), new(340, 250), new(340, 50), new(60, 50)];
        return new([.. taps.Select((t, i) => new PhotoMark(names[i], t, new Vec2(t.X, -t.Y)))], [], 0.3);
    }

    private static SKBitmap Drawn(PhotoReference reference)
    {
        PhotoEdge edge = new([new(new Vec2(100, 150), false), new(new Vec2(300, 150), false)], null);
        PhotoTrace trace = PhotoTracing.Trace(Blank, reference, edge, default);
        Assert.DoesNotContain(trace.Findings, f => f.Severity == Severity.Error);
        return SKBitmap.Decode(TracePicture.Write(Blank, trace.Curve!, reference));
    }

    // Pixels that are not of the black photo, beside a ring.
    private static int Ink(SKBitmap picture, SKRectI box) =>
        Enumerable.Range(box.Left, box.Width).Sum(x => Enumerable.Range(box.Top, box.Height).Count(y => picture.GetPixel(x, y).Blue > 128));

    [Fact]
    public void Marks_have_their_names_beside_them()
    {
        using SKBitmap named = Drawn(Marks("A", "B", "C", "D")), other = Drawn(Marks("I", "B", "C", "D"));
        var first = new SKRectI(20, 215, 50, 242);
        Assert.InRange(Ink(other, first), 20, Ink(named, first) - 20);
        Assert.InRange(Ink(named, new SKRectI(350, 15, 380, 42)), 40, 600);
    }

    [Fact]
    public void Corners_of_a_sheet_have_their_numbers()
    {
        ImmutableArray<Vec2> corners = Marks("A", "B", "C", "D").Taps;
        using SKBitmap picture = Drawn(new SheetReference(297, 212, corners, 0.2));
        foreach (SKRectI beside in (SKRectI[])[new(28, 215, 50, 242), new(350, 215, 372, 242), new(350, 15, 372, 42), new(28, 15, 50, 42)]) Assert.InRange(Ink(picture, beside), 20, 500);
    }
}
