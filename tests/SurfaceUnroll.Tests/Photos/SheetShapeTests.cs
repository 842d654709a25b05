using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Tests.Photos;

/// <summary>A sheet of A4 lies in the scene; what is told of it may be something else.</summary>
public class SheetShapeTests
{
    private const int Photos = 40;

    private static readonly GreyPhoto Blank = new(800, 600, [.. new ushort[800 * 600]]);

    // Taps with errors, by a lens that bows and looks beside the middle.
    private static (PhotoScale? Scale, Notice? Shape) Told(double width, double height, double tilt, int seed)
    {
        var draws = new NormalDraws(seed);
        Vec2 Err(double s) => new(s * draws.Next(), s * draws.Next());
        StudioCamera camera = StudioCamera.Over(Studio.Scene, 800, 600, tilt * Math.PI / 180, 0.7 * seed, 0.3 * draws.Next(), 0.02 * draws.Next(), Err(1.6));
        ImmutableArray<Vec2> corners = [.. new Vec2[] { new(0, 0), new(297, 0), new(297, 210), new(0, 210) }.Select(p => camera.Sees(p + Err(HandErrors.Paper)) + Err(0.5))];
        (PhotoScale? scale, ImmutableArray<Notice> findings) = PhotoTracing.Scale(Blank, new SheetReference(width, height, corners, HandErrors.Paper));
        return (scale, findings.SingleOrDefault(f => f.Code == "photo-sheet-shape"));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(35)]
    public void The_right_sheet_is_never_doubted(double tilt)
    {
        for (int seed = 1; seed <= Photos; seed++) Assert.Null(Told(297, 210, tilt, seed).Shape);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(35)]
    public void Sides_that_are_changed_round_are_told(double tilt)
    {
        for (int seed = 1; seed <= Photos; seed++)
        {
            Notice told = Told(210, 297, tilt, seed).Shape!;
            Assert.NotNull(told);
            if (tilt > 10) continue;
            Assert.Equal(Severity.Error, told.Severity);
            Assert.Contains("“297 x 210”", told.Mend, StringComparison.Ordinal);
            // From straight above all lenses say the same.
            if (tilt == 0) Assert.Matches(@"^The sheet in the photo is about 1\.(3[89]|4[0-4]) times as wide as high; the one that was told, 210 by 297 mm, is 1\.41 times as high as wide", told.Message);
        }
    }

    [Theory]
    [InlineData(0, Photos)]
    [InlineData(10, Photos)]
    // Seen far aslant along a side, a longer lens explains a shorter sheet.
    [InlineData(20, Photos * 4 / 5)]
    public void Letter_is_not_A4(double tilt, int least)
    {
        Assert.InRange(Enumerable.Range(1, Photos).Count(seed => Told(279.4, 215.9, tilt, seed).Shape is not null), least, Photos);
        if (tilt == 0) Assert.All(Enumerable.Range(1, Photos), seed => Assert.Null(Told(279.4, 215.9, tilt, seed).Scale));
    }

    [Fact]
    public void Of_a_sheet_of_the_same_shape_nothing_can_be_said() => Assert.Null(Told(210, 148, 5, 1).Shape);
}
