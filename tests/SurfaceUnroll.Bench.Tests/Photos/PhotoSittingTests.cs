using SurfaceUnroll.Bench.Stops.Measuring.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Bench.Tests.Photos;

public class PhotoSittingTests
{
    private static PhotoSitting Tapped(PhotoSitting sitting, params (double X, double Y)[] taps) => taps.Aggregate(sitting, (s, t) => s.Tapped(new Vec2(t.X, t.Y)));

    private static readonly PhotoSitting Sheet = Tapped(new PhotoSitting(), (100, 500), (700, 510), (650, 90), (140, 80));

    [Fact]
    public void Four_corners_are_asked_for_then_the_edge()
    {
        Assert.Equal("Tap the sheet's lower left corner.", new PhotoSitting().Asks);
        Assert.Equal("Tap the sheet's upper left corner.", Tapped(new PhotoSitting(), (1, 1), (2, 2), (3, 3)).Asks);
        Assert.True(Sheet.OnEdge);
        Assert.Equal("Tap where the edge begins.", Sheet.Asks);
        SheetReference read = (SheetReference)Sheet.Understood(LengthUnit.Millimetre).Reference!;
        Assert.Equal((297, 210), (read.Width, read.Height));
        Assert.NotNull((Sheet with { Sheet = "A44" }).Understood(LengthUnit.Millimetre).Problem);
    }

    [Fact]
    public void A_tap_on_the_edge_goes_between_its_neighbours_or_on_from_the_nearer_end()
    {
        PhotoSitting sitting = Tapped(Sheet, (100, 50), (300, 50), (200, 40), (400, 60), (60, 60));
        Assert.Equal([60, 100, 200, 300, 400], sitting.Edge.Select(t => t.At.X));
        Assert.Equal(["A", "B", "C", "D", "1", "2", "3", "4", "5"], sitting.Handles.Select(h => h.Id));
        Assert.Equal(new Vec2(210, 45), sitting.Moved(6, new Vec2(210, 45)).Edge[2].At);
        Assert.Equal([60, 200, 300, 400], sitting.Without(5).Edge.Select(t => t.At.X));
        Assert.True(sitting.Cornered(2, true).Handles[6].Corner);
        // A page that lags behind may speak of a point that is gone.
        Assert.Same(sitting, sitting.Moved(9, default));
        Assert.Same(sitting, sitting.Without(-1));
    }

    [Fact]
    public void A_corner_that_is_taken_out_is_asked_for_again()
    {
        PhotoSitting sitting = Sheet.Without(3);
        Assert.False(sitting.OnEdge);
        Assert.Equal((null, null), sitting.Understood(LengthUnit.Millimetre));
        Assert.Equal("Tap the sheet's upper left corner.", sitting.Asks);
    }

    [Fact]
    public void A_mark_between_others_is_asked_for_again_and_the_others_keep_their_names()
    {
        PhotoSitting taped = Tapped(new PhotoSitting { Measure = PhotoMeasure.Taped }, (100, 500), (700, 510), (650, 90), (140, 80));
        PhotoSitting without = taped.Without(1);
        Assert.Equal(["A", "C", "D"], without.Handles.Select(h => h.Id));
        Assert.StartsWith("Tap mark B", without.Asks, StringComparison.Ordinal);
        PhotoSitting again = without.Tapped(new Vec2(705, 505));
        Assert.Equal([100, 705, 650, 140], again.Reference.Select(p => p.X));
        Assert.True(again.OnEdge);
        Assert.Equal("Tap the sheet's lower right corner.", Sheet.Without(1).Asks);
        // With two of them out it begins anew.
        Assert.Empty(without.Without(0).Reference);
    }

    [Fact]
    public void Distances_are_asked_for_one_by_one_and_read_as_the_shop_says_them()
    {
        PhotoSitting taped = Tapped(new PhotoSitting { Measure = PhotoMeasure.Taped }, (100, 500), (700, 510), (650, 90), (140, 80));
        Assert.Equal("How far is it from A to B?", taped.Understood(LengthUnit.Inch).Problem);
        taped = taped with { Distances = ["11 3/4", "8", "11 3/4", "8", "360.5 mm", "14.2"] };
        MarkReference marks = (MarkReference)taped.Understood(LengthUnit.Inch).Reference!;
        Assert.Equal([298.45, 203.2, 298.45, 203.2, 360.5, 360.68], marks.Distances.Select(d => Math.Round(d.Length, 6)));
        Assert.Equal("How far is it from B to D?", (taped with { Distances = taped.Distances.SetItem(5, "-3") }).Understood(LengthUnit.Inch).Problem);
    }

    [Fact]
    public void Marks_with_places_may_be_more_than_four()
    {
        PhotoSitting placed = Tapped(new PhotoSitting { Measure = PhotoMeasure.Placed }, (100, 500), (700, 510), (650, 90), (140, 80), (300, 300));
        Assert.Equal(5, placed.Reference.Length);
        Assert.Equal("Where is mark A?", placed.Understood(LengthUnit.Millimetre).Problem);
        placed = placed with { Places = [("0", "0"), ("300", "0"), ("300", "200"), ("0", "200"), ("100", "100")] };
        Assert.Equal(new Vec2(100, 100), ((MarkReference)placed.Understood(LengthUnit.Millimetre).Reference!).Marks[4].Place);
        Assert.Equal([("300", "0"), ("300", "200"), ("0", "200"), ("100", "100")], placed.Without(0).Places.AsEnumerable());
    }

    [Fact]
    public void The_curve_is_written_in_the_units_of_the_job_and_keeps_its_place()
    {
        ProfilePoint[] points = [new(new Vec2(-150.123, -0.001), false), new(new Vec2(0, 60.5), true), new(new Vec2(150, 0), false)];
        Assert.Equal("{ \"points\": [ [-150.12, 0], [0, 60.5, \"corner\"], [150, 0] ], \"error\": \"0.07 mm\", \"at\": {\"lean\": 25} }", PhotoSitting.Written([.. points], 0.13, LengthUnit.Millimetre, "{\"lean\": 25}"));
        Assert.Equal("{ \"points\": [ [-5.9104, 0], [0, 2.3819, \"corner\"], [5.9055, 0] ], \"error\": \"0.07 mm\" }", PhotoSitting.Written([.. points], 0.13, LengthUnit.Inch, null));
    }
}
