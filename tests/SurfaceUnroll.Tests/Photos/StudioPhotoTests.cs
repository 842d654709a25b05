using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Tests.Photos;

/// <summary>Photos of a known scene by a known camera; see <see cref="StudioTrial"/> for the errors that they have.</summary>
public class StudioPhotoTests
{
    private const int Photos = 200;

    [Fact]
    public void Stated_errors_cover_the_true_ones_in_95_of_100_photos()
    {
        TrialError[][] errors = new TrialError[Photos][];
        Parallel.For(0, Photos, i =>
        {
            var trial = new StudioTrial(i + 1, 560);
            errors[i] = trial.Errors(trial.Sheet(), i % 2 == 0 ? trial.Marks() : trial.Taped());
        });
        // Of 200 photos: 95 % give or take the 3 % that the promise allows, which is two standard errors of a count of 200.
        for (int reference = 0; reference < 2; reference++)
        {
            double covered = 100.0 * errors.Count(e => e[reference].True <= e[reference].Stated) / Photos;
            Assert.InRange(covered, 92, 98);
        }
        // And not by being large: a millimetre over 300 would cover all.
        Assert.InRange(errors.Average(e => e[0].Stated), 0.05, 0.3);
    }

    /// <summary>Picks of an edge add so little at twelve megapixels, 0.005 mm, that the reference can be counted without drawing a picture: so many more photos can.</summary>
    [Fact]
    public void At_twelve_megapixels_stated_errors_of_marks_cover_the_true_ones_in_95_of_100_photos()
    {
        const int photos = 600, width = 4000, height = 3000;
        var blank = new GreyPhoto(width, height, [.. new ushort[width * height]]);
        TrialError[][] errors = new TrialError[photos][];
        Parallel.For(0, photos, i =>
        {
            var trial = new StudioTrial(20_000 + i, width, drawn: false);
            var edge = new PickedEdge([[.. Enumerable.Range(0, 201).Select(k => trial.Camera.Sees(new Vec2(1.5 * k, Studio.Edge(1.5 * k))))]], [], true);
            errors[i] = [.. new PhotoReference[] { trial.Marks(), trial.Taped() }.Select(reference =>
            {
                TracedCurve curve = PhotoTracing.Curve(blank, PhotoTracing.Scale(blank, reference).Scale!, edge, new TraceFrame(false, true));
                return new TrialError(curve.Error, StudioTrial.TrueError([.. curve.Points.Select(p => p.Place)]));
            })];
        });
        // The promise is 95 % ± 3 %; the standard error of a count of 600 is 0.9 %.
        for (int reference = 0; reference < 2; reference++) Assert.InRange(100.0 * errors.Count(e => e[reference].True <= e[reference].Stated) / photos, 92, 98);
    }

    [Fact]
    public void At_twelve_megapixels_300_mm_are_traced_within_half_a_millimetre()
    {
        var trial = new StudioTrial(12, 4000);
        foreach (TrialError error in trial.Errors(trial.Sheet(), trial.Marks(), trial.Taped()))
        {
            Assert.InRange(error.True, 0, 0.5);
            Assert.InRange(error.Stated, 0.05, 0.8);
        }
    }

    [Fact]
    public void A_sheet_tells_the_bow_of_the_lens()
    {
        var trial = new StudioTrial(3, 800);
        GreyPhoto photo = PhotoFile.Read(trial.Jpeg).Photo!;
        PhotoScale scale = PhotoTracing.Scale(photo, trial.Sheet()).Scale!;
        Assert.True(scale.BowIsKnown);
        double spread = Math.Sqrt(scale.ErrorFactor[8].Sum(v => v * v));
        Assert.InRange(scale.Camera.Bow, trial.Camera.Bow - 4 * spread, trial.Camera.Bow + 4 * spread);
        Assert.True(spread < 0.1 * HandErrors.Bow);
        Assert.Equal(["corner 1", "corner 2", "corner 3", "corner 4", "bottom side", "right side", "top side", "left side"], scale.Residuals.Select(r => r.Name));
        Assert.Equal([false, false, false, false, true, true, true, true], scale.Residuals.Select(r => r.Counts));
        Assert.InRange(scale.Scatter, 0.001, 0.1);
        Assert.All(scale.Residuals.TakeLast(4), r => Assert.True(r.Off.X < 0.1, $"{r.Name} {r.Off.X}"));
    }

    [Fact]
    public void A_sheet_whose_sides_do_not_show_counts_by_its_taps_and_states_more()
    {
        var trial = new StudioTrial(3, 800);
        GreyPhoto photo = PhotoFile.Read(trial.Jpeg).Photo!;
        PhotoScale followed = PhotoTracing.Scale(photo, trial.Sheet()).Scale!;
        // The same taps on a photo without a sheet: only the plate is left in it.
        byte[] bare = Studio.Jpeg(Studio.Pixels(trial.Camera, 3, new Vec2(-1, -1), 0.01), 800, 600, 90);
        GreyPhoto without = PhotoFile.Read(bare).Photo!;
        (PhotoScale? scale, var findings) = PhotoTracing.Scale(without, trial.Sheet());
        Assert.Contains(findings, f => f.Code == "photo-sheet-side" && f.Severity == Severity.Warning);
        PickedEdge edge = EdgePicking.Of(without, trial.Edge()).Edge!;
        double tapped = PhotoTracing.Curve(without, scale!, edge, default).Error, good = PhotoTracing.Curve(photo, followed, EdgePicking.Of(photo, trial.Edge()).Edge!, default).Error;
        Assert.True(tapped > 2 * good, $"{tapped} against {good}");
        Assert.False(scale!.BowIsKnown);
    }

    [Fact]
    public void Without_errors_a_photo_is_traced_to_a_fraction_of_a_pixel()
    {
        StudioCamera camera = StudioCamera.Over(Studio.Scene, 800, 600, 0.5, 1, 0.1, 0.015, default);
        GreyPhoto photo = PhotoFile.Read(Studio.Png(Studio.Pixels(camera, 1, new Vec2(Studio.SheetWidth, Studio.SheetHeight), 0), 800, 600)).Photo!;
        Vec2[] corners = [new(0, 0), new(297, 0), new(297, 210), new(0, 210)];
        var sheet = new SheetReference(297, 210, [.. corners.Select(camera.Sees)], 0.01);
        var edge = new PhotoEdge([.. Enumerable.Range(0, 4).Select(i => new EdgeTap(camera.Sees(new Vec2(100 * i, Studio.Edge(100 * i))), false))], EdgeKind.Edge);
        TracedCurve curve = PhotoTracing.Trace(photo, sheet, edge, default).Curve!;
        // A tenth of a pixel, and the 0.02 mm to which points stand for the curve.
        double pixel = 1 / curve.Scale.Camera.PixelsPerMillimetre(new Vec2(400, 300)).Least;
        Assert.InRange(StudioTrial.TrueError([.. curve.Points.Select(p => p.Place)]), 0, 0.1 * pixel + 0.02);
        Assert.InRange(curve.Points.Length, 5, 40);
        // In the axes of the sheet it stands where it is.
        Assert.All(curve.Points, p => Assert.Equal(Studio.Edge(p.Place.X), p.Place.Y, 0.25));
    }
}
