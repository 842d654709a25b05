using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Files.JobFiles;
using SurfaceUnroll.Units;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Curves.Readings;

public class ReadingTests
{
    private static readonly string[] Doubts = ["reading-slip", "reading-off", "reading-sides", "taped-unlike"];

    private static Notice[] Said(CurveSpec spec, LengthUnit units = LengthUnit.Millimetre) => [.. MeasuredCurve.Build(spec, "curves.test", units).Notices.Where(n => Doubts.Contains(n.Code))];

    // Readings to half a millimetre, as with a rule.
    private static PointsSpec Read(Func<double, Vec2> shape, int count, bool mirror = false, double step = 0.5) =>
        Points(Fit.Smooth, mirror, [.. Enumerable.Range(0, count).Select(i => shape(i / (count - 1.0))).Select(p => (Math.Round(p.X / step) * step, Math.Round(p.Y / step) * step))]);

    private static Vec2 Arch(double t) => new(-120 * Math.Cos(Math.PI * t), 120 * Math.Sin(Math.PI * t));

    // Clean shapes of many kinds: flat and tight places, uneven steps, a wing's section (thickness of the NACA four-digit series, a published formula) with its blunt nose.
    public static TheoryData<string, double> Clean => new()
    {
        { "arch", 1 }, { "hoop", 1 }, { "ellipse", 1 }, { "hyperellipse", 1 }, { "wing", 1 }, { "wave", 1 }, { "uneven", 1 }, { "hull", 1 }, { "line", 1 },
    };

    private static Vec2 Shape(string name, double t) => name switch
    {
        "arch" => Arch(t),
        "hoop" => t < 0.3 ? new Vec2(-120, 600 * t) : t > 0.7 ? new Vec2(120, 600 * (1 - t)) : new Vec2(-120 * Math.Cos(Math.PI * (t - 0.3) / 0.4), 180 + 120 * Math.Sin(Math.PI * (t - 0.3) / 0.4)),
        "ellipse" => new Vec2(-200 * Math.Cos(Math.PI * t), 60 * Math.Sin(Math.PI * t)),
        "hyperellipse" => new Vec2(-200 * Math.Sign(Math.Cos(Math.PI * t)) * Math.Pow(Math.Abs(Math.Cos(Math.PI * t)), 0.5), 100 * Math.Pow(Math.Sin(Math.PI * t), 0.5)),
        "wing" => new Vec2(400 * t, 5 * 0.12 * 400 * (0.2969 * Math.Sqrt(t) - 0.126 * t - 0.3516 * t * t + 0.2843 * t * t * t - 0.1015 * t * t * t * t)),
        "wave" => new Vec2(400 * t, 40 * Math.Sin(7 * t)),
        "uneven" => Arch(t * t),
        "hull" => new Vec2(150 * (1 - Math.Pow(1 - t, 2)), 200 * t),
        _ => new Vec2(300 * t, 120 * t),
    };

    [Theory]
    [MemberData(nameof(Clean))]
    public void No_reading_of_a_clean_row_is_accused(string name, double scale)
    {
        for (int count = 4; count <= 40; count++)
        {
            Assert.Empty(Said(Read(t => scale * Shape(name, t), count)));
            // At uneven places with an unsteady hand of a millimetre to either side.
            for (int seed = 0; seed < 4; seed++)
            {
                var hand = new Random(1000 * seed + count);
                Assert.Empty(Said(Read(t => Shape(name, t is 0 or 1 ? t : t + 0.8 * (hand.NextDouble() - 0.5) / (count - 1)) + 2 * new Vec2(hand.NextDouble() - 0.5, hand.NextDouble() - 0.5), count)));
            }
            // With the unsteady hand of a millimetre.
            var random = new Random(count);
            Assert.Empty(Said(Read(t => Shape(name, t) + new Vec2(random.NextDouble() - 0.5, random.NextDouble() - 0.5), count)));
        }
    }

    [Fact]
    public void No_reading_of_the_jobs_that_come_with_the_project_is_accused()
    {
        int rows = 0;
        foreach (string name in Fixtures.Good)
        {
            Job job = Fixtures.Read(name).Job!;
            foreach (PointsSpec spec in job.Curves.Select(c => c.Spec).Concat(job.Curves.Select(c => c.Spec).OfType<PlanSideSpec>().Select(p => p.Plan)).OfType<PointsSpec>())
            {
                rows++;
                Assert.Empty(Said(spec, job.Units));
            }
        }
        Assert.True(rows >= 8); // The Series 60 stations among them.
    }

    [Theory]
    [InlineData(4, 10, 1, "looks like")]
    [InlineData(5, 1, 10, "looks like")]
    [InlineData(3, 0.1, 1, "looks like")]
    [InlineData(6, 1, 0.1, "looks like")]
    [InlineData(4, -1, 1, "looks like")]
    [InlineData(7, 1, -1, "looks like")]
    public void Decimal_slip_and_wrong_sign_are_named_with_the_right_value(int point, double across, double up, string says)
    {
        PointsSpec right = Read(Arch, 13);
        Vec2 p = right.Points[point].Place, wrong = new(across * p.X, up * p.Y);
        Notice notice = Assert.Single(Said(right with { Points = right.Points.SetItem(point, new ProfilePoint(wrong, false)) }));
        Assert.Equal("reading-slip", notice.Code);
        Assert.Equal($"curves.test.points[{point}]", notice.Where);
        string value = across != 1 ? $"{wrong.X:0.####} {says} {p.X:0.####}" : $"{wrong.Y:0.####} {says} {p.Y:0.####}";
        Assert.StartsWith($"Point {point + 1}: {value}", notice.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Swapped_digits_and_swapped_values_are_named()
    {
        PointsSpec right = Points(Fit.Smooth, false, (-120, 0), (-116, 31), (-104, 60), (-85, 85), (-60, 104), (-31, 116), (0, 120), (31, 116), (60, 104), (85, 85), (104, 60), (116, 31), (120, 0));
        Notice digits = Assert.Single(Said(right with { Points = right.Points.SetItem(4, new ProfilePoint(new Vec2(-60, 140), false)) }));
        Assert.Contains("140 looks like 104, two digits swapped", digits.Message, StringComparison.Ordinal);
        PointsSpec flat = Read(t => Shape("ellipse", t), 13);
        Vec2 p = flat.Points[8].Place;
        Notice values = Assert.Single(Said(flat with { Points = flat.Points.SetItem(8, new ProfilePoint(new Vec2(p.Y, p.X), false)) }));
        Assert.Contains($"[{p.Y}, {p.X}] looks like [{p.X}, {p.Y}], both values swapped", values.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_wrong_readings_are_both_found()
    {
        PointsSpec right = Read(Arch, 21);
        PointsSpec wrong = right with { Points = right.Points.SetItem(5, Tenfold(right, 5)).SetItem(14, Tenfold(right, 14)) };
        Assert.Equal(["curves.test.points[5]", "curves.test.points[14]"], Said(wrong).Select(n => n.Where));
    }

    [Fact]
    public void Wrong_reading_of_a_mirrored_half_is_named_once()
    {
        PointsSpec half = Read(t => new Vec2(120 * Math.Sin(0.5 * Math.PI * t), 120 * Math.Cos(0.5 * Math.PI * t)), 8, mirror: true);
        Notice notice = Assert.Single(Said(half with { Points = half.Points.SetItem(3, Tenfold(half, 3)) }));
        Assert.Equal("curves.test.points[3]", notice.Where);
    }

    [Fact]
    public void Reading_that_no_slip_explains_is_named_alone()
    {
        PointsSpec right = Read(Arch, 25);
        Vec2 p = right.Points[9].Place;
        Assert.Equal("reading-off", Assert.Single(Said(right with { Points = right.Points.SetItem(9, new ProfilePoint(p + new Vec2(3, 37), false)) })).Code);
    }

    // DATCOM sample inputs, example 4 (US government work): an area of 12.33 stands against 11.32 in its mirror. The other areas of the row are not at hand, and are those of an ellipse.
    [Fact]
    public void Outlier_of_DATCOM_example_4_is_found_against_its_mirror()
    {
        double[] stations = [0, 1, 2, 3, 4, 5, 6, 7, 8], areas = [0, 6, 9, 11.32, 12.4, 12.33, 9, 6, 0];
        PointsSpec row = Points(Fit.Smooth, false, [.. stations.Zip(areas)]) with { Symmetric = true };
        Notice notice = Assert.Single(Said(row), n => n.Code == "reading-sides");
        Assert.Contains("Points 4 and 6", notice.Message, StringComparison.Ordinal);
        Assert.Contains("[3, 11.32] and [5, 12.33]", notice.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Sides_of_a_symmetric_part_that_agree_to_a_millimetre_are_not_accused()
    {
        var random = new Random(2);
        Assert.Empty(Said(Read(t => Arch(t) + new Vec2(random.NextDouble() - 0.5, random.NextDouble() - 0.5), 13) with { Symmetric = true }));
        PointsSpec right = Read(Arch, 13);
        Notice[] said = Said(right with { Symmetric = true, Points = right.Points.SetItem(3, new ProfilePoint(right.Points[3].Place + new Vec2(0, 5), false)) });
        Assert.Contains("Points 4 and 10", Assert.Single(said, n => n.Code == "reading-sides").Message, StringComparison.Ordinal);
    }

    // The example of docs/job-file.md.
    [Theory]
    [InlineData(2, 104, 1105, "1105 looks like 110.5")]
    [InlineData(2, 1040, 110.5, "1040 looks like 104")]
    [InlineData(2, 10.4, 110.5, "10.4 looks like 104")]
    [InlineData(1, 6.2, 158, "6.2 looks like 62")]
    [InlineData(1, 62, 1580, "1580 looks like 158")]
    [InlineData(1, 158, 62, "[158, 62] looks like [62, 158], both values swapped")]
    public void Slip_in_few_points_of_a_mirrored_half_is_told_before_whatever_is_the_matter_with_the_curve(int point, double across, double up, string words)
    {
        PointsSpec half = Points(Fit.Smooth, true, (0, 175), (62, 158), (104, 110.5), (120, 40), (120, 0));
        Assert.Empty(Said(half));
        Notice[] told = [.. MeasuredCurve.Build(half with { Points = half.Points.SetItem(point, new ProfilePoint(new Vec2(across, up), false)) }, "curves.test").Notices.Where(n => n.Severity != Severity.Note)];
        Assert.Equal(("reading-slip", $"curves.test.points[{point}]"), (told[0].Code, told[0].Where));
        Assert.StartsWith($"Point {point + 1}: {words}.", told[0].Message, StringComparison.Ordinal);
        Assert.DoesNotContain(told.Skip(1), n => Doubts.Contains(n.Code));
    }

    [Theory]
    [InlineData(3, 85, 123.5, "85 looks like -85")]
    [InlineData(5, -31, 16.9, "16.9 looks like 169")]
    [InlineData(7, 31, 1690, "1690 looks like 169")]
    [InlineData(3, 123.5, -85, "[123.5, -85] looks like [-85, 123.5], both values swapped")]
    [InlineData(12, 1240, 0, "1240 looks like 124")]
    [InlineData(12, 12.4, 0, "12.4 looks like 124")]
    public void Gross_slip_is_named_at_its_point_and_at_an_end(int point, double across, double up, string words)
    {
        PointsSpec right = Points(Fit.Smooth, false, (-124, 0), (-120, 45.5), (-108, 87.5), (-85, 123.5), (-55, 152), (-31, 169), (0, 175), (31, 169), (60, 151.5), (85, 123.5), (108, 87.5), (120, 45.5), (124, 0));
        Assert.Empty(Said(right));
        Notice notice = Assert.Single(Said(right with { Points = right.Points.SetItem(point, new ProfilePoint(new Vec2(across, up), false)) }));
        Assert.Equal($"curves.test.points[{point}]", notice.Where);
        Assert.StartsWith($"Point {point + 1}: {words}.", notice.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Swapped_digits_of_27_mm_are_named_in_six_points_of_a_mirrored_half()
    {
        Notice notice = Assert.Single(Said(Points(Fit.Smooth, true, (0, 175), (62, 185), (104, 110.5), (115, 78), (120, 40), (120, 0))));
        Assert.StartsWith("Point 2: 185 looks like 158, two digits swapped.", notice.Message, StringComparison.Ordinal);
    }

    // Pitch 30 to 45 mm.
    [Fact]
    public void Reading_10_mm_off_a_half_ellipse_is_named_and_no_wrong_coordinate_is_blamed()
    {
        PointsSpec right = Read(t => new Vec2(-120 * Math.Cos(Math.PI * t), 175 * Math.Sin(Math.PI * t)), 13);
        Assert.Empty(Said(right));
        for (int i = 4; i <= 8; i++)
        {
            Vec2 outward = new(-Math.Cos(Math.PI * i / 12) / 120, Math.Sin(Math.PI * i / 12) / 175);
            foreach (double off in new[] { -10, 10 })
            {
                Vec2 exact = right.Points[i].Place + off / outward.Length * outward, wrong = new(Math.Round(exact.X), Math.Round(exact.Y));
                Notice notice = Assert.Single(Said(right with { Points = right.Points.SetItem(i, new ProfilePoint(wrong, false)) }));
                Assert.Equal(("reading-off", $"curves.test.points[{i}]"), (notice.Code, notice.Where));
            }
        }
    }

    // Places of their own on both sides, readings to half a millimetre; and off by up to a millimetre besides.
    [Theory]
    [InlineData(1.0)]
    [InlineData(0.7)]
    [InlineData(0.5)]
    [InlineData(0.0)]
    public void Sides_read_at_places_of_their_own_are_not_accused(double exponent)
    {
        for (int seed = 0; seed < 40; seed++)
        {
            var random = new Random(seed);
            int count = 9 + seed % 17;
            double[] places = [0, .. Enumerable.Range(1, count - 2).Select(i => (i + 0.8 * (random.NextDouble() - 0.5)) / (count - 1)), 1];
            double hand = seed % 2;
            (double, double)[] read = [.. places.Select(t => Super(exponent, t) + hand * new Vec2(random.NextDouble() - 0.5, random.NextDouble() - 0.5)).Select(p => (Math.Round(2 * p.X) / 2, Math.Round(2 * p.Y) / 2))];
            Assert.Empty(Said(Points(Fit.Smooth, false, read) with { Symmetric = true }));
        }
    }

    // Half of a superellipse; 0: a half pipe on legs.
    private static Vec2 Super(double exponent, double t) => exponent == 0 ? Shape("hoop", t)
        : new Vec2(-120 * Math.Sign(Math.Cos(Math.PI * t)) * Math.Pow(Math.Abs(Math.Cos(Math.PI * t)), exponent), 175 * Math.Pow(Math.Max(0, Math.Sin(Math.PI * t)), exponent));

    [Fact]
    public void Points_of_one_ellipse_are_each_others_mirror_image_wherever_they_were_read()
    {
        PointsSpec read = Points(Fit.Smooth, false, (-120, 0), (-116, 45.5), (-104, 87.5), (-85, 123.5), (-31, 169), (0, 175), (31, 169), (60, 151.5), (104, 87.5), (116, 45.5), (120, 0)) with { Symmetric = true };
        Assert.Empty(Said(read));
        // 8 mm farther out.
        Notice notice = Assert.Single(Said(read with { Points = read.Points.SetItem(3, new ProfilePoint(new Vec2(-91.5, 129), false)) }), n => n.Code == "reading-sides");
        Assert.Contains("Point 4, [-91.5, 129], stands", notice.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Side_that_is_5_mm_farther_out_is_found_among_readings_at_places_of_their_own()
    {
        for (int seed = 0; seed < 40; seed++)
        {
            var random = new Random(seed);
            double[] places = [0, .. Enumerable.Range(1, 23).Select(i => (i + 0.8 * (random.NextDouble() - 0.5)) / 24), 1];
            int wrong = 3 + random.Next(7);
            (double, double)[] read = [.. places.Select((t, i) => (i == wrong ? 1 + 5 / Super(1, t).Length : 1) * Super(1, t)).Select(p => (Math.Round(2 * p.X) / 2, Math.Round(2 * p.Y) / 2))];
            Notice[] said = [.. Said(Points(Fit.Smooth, false, read) with { Symmetric = true }).Where(n => n.Code == "reading-sides")];
            string words = Assert.Single(said).Message;
            Assert.Contains($"oint{(words.StartsWith("Points", StringComparison.Ordinal) ? "s" : "")} {wrong + 1}", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Tape_is_held_against_the_curve()
    {
        // 55 + 120π + 55 = 487.0 along, 240 wide.
        RunSpec run = Run(Line(55), Arc(120, 180), Line(55));
        Assert.Empty(Said(run with { Taped = new TapedSizes(487, 240, 175, 240) }));
        Notice slip = Assert.Single(Said(run with { Taped = new TapedSizes(478, 240, null, null) }));
        Assert.Equal("curves.test.taped.girth", slip.Where);
        Assert.Contains("478 looks like 487, two digits swapped", slip.Message, StringComparison.Ordinal);
        Assert.Contains("10 mm apart", Assert.Single(Said(run with { Taped = new TapedSizes(null, 250, null, null) })).Message, StringComparison.Ordinal);
        // However the curve stands.
        Assert.Empty(Said((run with { At = At(new Vec3(5, 6, 7), 30, 40, 50) }) with { Taped = new TapedSizes(487, 240, 175, 240) }));
    }

    private static ProfilePoint Tenfold(PointsSpec spec, int index) => new(new Vec2(spec.Points[index].Place.X, 10 * spec.Points[index].Place.Y), false);
}
