using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Uncertainty;

namespace SurfaceUnroll.Tests.Uncertainty;

public class DrawnReadingTests
{
    private static DrawnSpec Hoop(bool mirror = false)
    {
        ImmutableArray<CurvePiece> pieces =
        [
            new LinePiece(new Vec3(0, mirror ? 0 : -60, 50), new Vec3(0, 60, 50)),
            new ArcPiece(new Vec3(0, 60, 0), new Vec3(0, 0, 1), new Vec3(0, 1, 0), 50, 0, 0.5 * Math.PI),
            new LinePiece(new Vec3(0, 110, 0), new Vec3(0, 110, -80)),
        ];
        return new DrawnSpec("hoop.dxf", pieces, mirror, Placement.None) { Errors = ErrorJobs.All(0.5) };
    }

    [Fact]
    public void Chance_hills_add_up_to_the_same_error_everywhere()
    {
        DrawnSpec hoop = Hoop();
        var curve = new SpaceCurve(hoop.Pieces);
        PartReading<CurveSpec>[] readings = [.. DrawnReadings.Of(hoop)];
        Assert.All(readings, r => Assert.Equal(0.5, r.Error));
        for (int i = 0; i <= 50; i++)
        {
            Vec3 place = curve.AtLength(curve.Length * i / 50).Point;
            (int piece, double t) = curve.Locate(curve.Length * i / 50);
            double squares = readings.Sum(r => (((DrawnSpec)r.Moved(hoop, 1)).Pieces[piece].At(t).Point - place) is var move ? move.Dot(move) : 0);
            Assert.Equal(1, squares, 1e-9);
        }
    }

    [Fact]
    public void Moved_line_is_as_smooth_as_the_drawn_one()
    {
        var moved = (DrawnSpec)DrawnReadings.Of(Hoop()).ElementAt(1).Moved(Hoop(), 2);
        for (int i = 0; i + 1 < moved.Pieces.Length; i++)
        {
            Assert.Equal(0, (moved.Pieces[i].At(1).Point - moved.Pieces[i + 1].At(0).Point).Length, 1e-12);
            // Below this the matching takes two tangents for one.
            Assert.InRange(moved.Pieces[i].At(1).D1.AngleTo(moved.Pieces[i + 1].At(0).D1), 0, 1e-9);
        }
        // Derivatives against central differences, whose error is of the order of the squared step.
        const double h = 1e-4;
        foreach (CurvePiece piece in moved.Pieces)
        {
            foreach (double t in new[] { 0.2, 0.5, 0.8 })
            {
                CurveSample before = piece.At(t - h), at = piece.At(t), after = piece.At(t + h);
                Assert.Equal(0, ((after.Point - before.Point) / (2 * h) - at.D1).Length, 1e-3);
                Assert.Equal(0, ((after.D1 - before.D1) / (2 * h) - at.D2).Length, 1e-2);
            }
        }
    }

    [Fact]
    public void Mirrored_line_stays_on_its_centreline()
    {
        DrawnSpec hoop = Hoop(mirror: true);
        foreach (PartReading<CurveSpec> reading in DrawnReadings.Of(hoop))
        {
            var moved = (DrawnSpec)reading.Moved(hoop, 1);
            Assert.Equal(0, moved.Pieces[0].At(0).Point.Y, 1e-12);
            Assert.NotNull(MeasuredCurve.Build(moved, "curves.hoop").Curve);
        }
    }

    // With a line that is off like a ripple a strip here and there folds over on the blank; where the edges lie is known all the same.
    [Fact]
    public void A_half_pipe_to_a_drawn_line_of_the_same_size_has_a_band()
    {
        ReadingErrors error = ErrorJobs.All(0.5);
        ImmutableArray<CurvePiece> pieces =
        [
            new LinePiece(new Vec3(0, -120, 0), new Vec3(0, -120, 55)),
            new ArcPiece(new Vec3(0, 0, 55), new Vec3(0, -1, 0), new Vec3(0, 0, 1), 120, 0, Math.PI),
            new LinePiece(new Vec3(0, 120, 55), new Vec3(0, 120, 0)),
        ];
        var front = new RunSpec([new LineStep(55), new ArcStep(120, Math.PI), new LineStep(55)], 0, null, Placement.None) { Errors = error };
        var rear = new DrawnSpec("arch.dxf", pieces, false, Placement.None with { Origin = new Vec3(300, 0, 0) }) { Errors = error };
        BlankError band = ErrorJobs.Develop(ErrorJobs.Job([("front", front), ("rear", rear)], new PanelSpec("cover", ["front", "rear"], ElementMatching.BendOnly)));
        Assert.Equal(0, band.Failed);
        Assert.InRange(band.Largest, 0.5, 4);
    }
}
