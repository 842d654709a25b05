using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Curves.Sections;

/// <summary>Planes through scans of shapes whose sections are known in closed form; the scatter is normal noise from a fixed seed, along the true normal.</summary>
public class SectionTests
{
    private const double Noise = 0.2;

    // The mean square of the error of a smoothing spline is noise² · (parameters in use) / (points): a ninth, for a curve that takes up every ninth of its points. At
    // free ends, where there are neighbours on one side only, a point's own error is left. A facet of 2 mm on a radius of 60 mm lies inside the surface by up to 0.008 mm.
    private const double InTheMean = Noise / 3, AtMost = Noise;

    private static SectionSpec Cut(TriangleMesh mesh, Placement plane, int pick = 1, double noise = Noise) => new(new MeshSource("scan.stl", mesh), plane) { Noise = noise, Pick = pick };

    [Theory]
    [InlineData(0)]
    [InlineData(25)]
    public void Half_cylinder_is_cut_in_half_an_ellipse(double lean)
    {
        TriangleMesh scan = Scan((u, v) => (new Vec3(-150 + 300 * u, -100 * Math.Cos(Math.PI * v), 100 * Math.Sin(Math.PI * v)), new Vec3(0, -Math.Cos(Math.PI * v), Math.Sin(Math.PI * v))), 150, 157);
        SpaceCurve curve = Curve(Cut(scan, At(lean: lean)));
        Compare(curve, p => Math.Sqrt(p.Y * p.Y + p.Z * p.Z) - 100);
        Assert.True(curve.Start.Point.Y < -99 && curve.End.Point.Y > 99);
        // It stands in the plane: x·cos(lean) = z·sin(lean).
        Assert.All(curve.Samples(), s => Assert.Equal(0, s.Point.X * Math.Cos(lean * Degree) - s.Point.Z * Math.Sin(lean * Degree), 1e-9));
        // Half an ellipse of half axes 100 and 100/cos(lean), ends at the noise of a reading each.
        Assert.Equal(HalfEllipse(100, 100 / Math.Cos(lean * Degree)), curve.Length, 4 * Noise);
    }

    [Fact]
    public void Cone_is_cut_in_a_closed_ellipse_that_begins_at_its_lowest_place()
    {
        // Axis x, radius 40 at x = 0 and 80 at x = 200.
        double slope = 40.0 / 200;
        TriangleMesh scan = Scan((u, v) =>
        {
            double r = 40 + 40 * u, a = 2 * Math.PI * v;
            return (new Vec3(200 * u, r * Math.Cos(a), r * Math.Sin(a)), new Vec3(-slope, Math.Cos(a), Math.Sin(a)).Unit);
        }, 100, 190, closed: true);
        SpaceCurve curve = Curve(Cut(scan, At(new Vec3(100, 0, 0), lean: 20)));
        Compare(curve, p => (Math.Sqrt(p.Y * p.Y + p.Z * p.Z) - 40 - slope * p.X) / Math.Sqrt(1 + slope * slope));
        Near(curve.Start.Point, curve.End.Point, 1e-9);
        Assert.True(curve.Start.Tangent.Dot(curve.End.Tangent) > 0.999999);
        Assert.InRange(curve.Start.Point.Y, -3, 3); // Lowest of places 0.8 mm apart, where the curve is level to noise.
        Assert.True(curve.AtLength(curve.Length / 4).Point.Y < 0); // Up on the left.
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, -1)]
    public void Torus_is_cut_in_two_circles_of_which_one_is_chosen(int pick, int side)
    {
        // Axis x, 120 mm to the middle of a tube of 50 mm; the plane z–x would cut two circles, a plane square to the axis two rings round each other.
        TriangleMesh scan = Scan((u, v) =>
        {
            (double a, double b) = (2 * Math.PI * u, 2 * Math.PI * v);
            Vec3 outward = new(0, Math.Cos(a), Math.Sin(a)), normal = Math.Cos(b) * outward + new Vec3(Math.Sin(b), 0, 0);
            return (120 * outward + 50 * normal, normal);
        }, 370, 157, closed: true, closedU: true);
        SpaceCurve ring = Curve(Cut(scan, At(new Vec3(30, 0, 0)), pick));
        // At x = 30 the tube is 40 wide to either side: rings of radius 160 and 80.
        Compare(ring, p => (new Vec3(0, p.Y, p.Z).Length - 120 - side * 40) * 0.8);
        Assert.Equal(2 * Math.PI * (120 + side * 40), ring.Length, 2.0);
    }

    // Triangles so wide that whole groups of places are few, as where a scan was thinned: the curve ends where the section does, and is no longer.
    [Theory]
    [InlineData(100)]
    [InlineData(160)]
    [InlineData(300)]
    public void Open_section_ends_where_the_scan_does(double aft)
    {
        TriangleMesh mesh = MeshFile.Read("scanned-bonnet.obj", File.ReadAllBytes(Path.Combine(Repository.Root, "fixtures", "jobs", "scanned-bonnet.obj"))).Mesh!;
        var plane = new Vec3(aft, 0, 0);
        SectionLine line = MeshSection.Of(mesh, plane, new Vec3(1, 0, 0), 1)[0];
        SpaceCurve curve = Curve(Cut(mesh, At(plane), noise: 0.1));
        Vec3[] ends = [.. new[] { line.Places[0], line.Places[^1] }.OrderBy(p => p.Y)];
        Near(ends[0], curve.Start.Point, 0.5);
        Near(ends[1], curve.End.Point, 0.5);
        // The curve is smoother than the line of facets, whose chords are shorter than their arcs by less than a thousandth.
        Assert.InRange(curve.Length, line.Length - 0.5, line.Length * 1.001);
    }

    [Fact]
    public void Spikes_are_passed_over_and_counted()
    {
        TriangleMesh clean = Scan((u, v) => (new Vec3(-20 + 40 * u, -100 * Math.Cos(Math.PI * v), 100 * Math.Sin(Math.PI * v)), new Vec3(0, -Math.Cos(Math.PI * v), Math.Sin(Math.PI * v))), 20, 157);
        var random = new Random(5);
        TriangleMesh scan = clean with { Places = [.. clean.Places.Select((p, i) => i % 97 == 50 ? p + (3 + random.NextDouble()) * new Vec3(0, p.Y, p.Z).Unit : p)] };
        CurveReading reading = MeasuredCurve.Build(Cut(scan, At()), "curves.test");
        // Where a spike of 3 mm stood, the curve bridges the 8 mm to its neighbours on both sides: a tenth of it is left at most.
        Compare(reading.Curve!, p => Math.Sqrt(p.Y * p.Y + p.Z * p.Z) - 100, most: 0.4);
        Assert.Contains("like spikes", reading.Notices[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pieces_across_a_gap_of_the_scan_are_joined()
    {
        TriangleMesh whole = Scan((u, v) => (new Vec3(-20 + 40 * u, -100 * Math.Cos(Math.PI * v), 100 * Math.Sin(Math.PI * v)), new Vec3(0, -Math.Cos(Math.PI * v), Math.Sin(Math.PI * v))), 20, 157);
        // A strip 2 mm wide is missing at the crown.
        TriangleMesh torn = whole with { Faces = [.. whole.Faces.Where(f => Math.Abs((whole.Places[f.A].Y + whole.Places[f.B].Y + whole.Places[f.C].Y) / 3) > 1)] };
        Assert.Equal(0.5 * Math.PI * 100, Curve(Cut(torn, At())).Length, 3.0);
        Assert.Equal(Math.PI * 100, Curve(Cut(torn, At()) with { Join = 4.5 }).Length, 1.0);
    }

    [Fact]
    public void Piece_beyond_a_hole_of_the_scan_is_warned_of_with_the_join_that_closes_it()
    {
        TriangleMesh whole = Scan((u, v) => (new Vec3(-20 + 40 * u, -100 * Math.Cos(Math.PI * v), 100 * Math.Sin(Math.PI * v)), new Vec3(0, -Math.Cos(Math.PI * v), Math.Sin(Math.PI * v))), 20, 157);
        // A strip about 25 mm wide is missing to the right of the crown.
        TriangleMesh torn = whole with { Faces = [.. whole.Faces.Where(f => Math.Abs((whole.Places[f.A].Y + whole.Places[f.B].Y + whole.Places[f.C].Y) / 3 - 45) > 12)] };
        Notice[] notices = [.. MeasuredCurve.Build(Cut(torn, At()), "curves.test").Notices];
        Notice warning = Assert.Single(notices, n => n.Code == "section-left-out");
        Assert.Equal((Severity.Warning, "curves.test.section"), (warning.Severity, warning.Where));
        Assert.Contains("follows number 1 and not number 2", warning.Message, StringComparison.Ordinal);
        double join = double.Parse(Regex.Match(warning.Mend!, "\"join\": ([0-9]+)").Groups[1].Value, CultureInfo.InvariantCulture);
        CurveReading joined = MeasuredCurve.Build(Cut(torn, At()) with { Join = join }, "curves.test");
        Assert.Equal(Math.PI * 100, joined.Curve!.Length, 1.5);
        Assert.DoesNotContain(joined.Notices, n => n.Code == "section-left-out");
    }

    [Fact]
    public void Noise_far_above_that_of_the_scan_is_warned_of_where_the_curve_leaves_it()
    {
        // Legs of 55 mm, so that there is a shape to lose.
        Vec3 Hoop(double v) => v < 0.1 ? new Vec3(0, -100, 550 * v) : v > 0.9 ? new Vec3(0, 100, 550 * (1 - v)) : new Vec3(0, -100 * Math.Cos(Math.PI * (v - 0.1) / 0.8), 55 + 100 * Math.Sin(Math.PI * (v - 0.1) / 0.8));
        TriangleMesh scan = Scan((u, v) => (new Vec3(-20 + 40 * u, Hoop(v).Y, Hoop(v).Z), new Vec3(0, v < 0.5 ? -1 : 1, 0)), 20, 300);
        Assert.Contains(MeasuredCurve.Build(Cut(scan, At(), noise: 10), "curves.test").Notices, n => n.Code == "section-leaves-scan" && n.Mend!.Contains("smaller \"noise\"", StringComparison.Ordinal));
        Assert.Contains(MeasuredCurve.Build(Cut(scan, At()), "curves.test").Notices, n => n.Code == "section-taken");
    }

    [Fact]
    public void Plane_that_would_cut_the_scan_in_inches_says_so()
    {
        TriangleMesh scan = Scan((u, v) => (new Vec3(4 * u, 10 * v, 0), new Vec3(0, 0, 1)), 20, 50, noise: 0);
        Assert.Contains("\"meshUnits\": \"in\"", Fault(Cut(scan, At(new Vec3(50, 0, 0)))).Mend, StringComparison.Ordinal);
        Assert.DoesNotContain("meshUnits", Fault(Cut(scan, At(new Vec3(500, 0, 0)))).Mend, StringComparison.Ordinal);
        Assert.Contains("\"meshUnits\": \"mm\"", Fault(Cut(scan with { Places = [.. scan.Places.Select(p => 25.4 * (p + new Vec3(2, 0, 0)))] }, At(new Vec3(4, 0, 0)))).Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheet_on_a_scan_that_bends_too_tightly_points_at_its_noise()
    {
        TriangleMesh scan = Scan((u, v) => (new Vec3(-20 + 40 * u, 200 * v - 100, Math.Sin(100 * v)), new Vec3(0, 0, 1)), 8, 400, noise: 0);
        NamedCurve Named(string name, double x) => new(name, Cut(scan, At(new Vec3(x, 0, 0)), noise: 0.01));
        Job job = Samples.HalfCylinder().Job;
        Development made = Developer.Develop(job with { Measured = MeasuredFace.Outside, Sheet = job.Sheet with { Thickness = 12 }, Curves = [Named("front", -10), Named("rear", 10)], Panels = [job.Panels[0] with { Loft = ["front", "rear"] }] });
        Notice error = Assert.Single(made.Notices, n => n.Severity == Severity.Error);
        Assert.Equal("bend-tighter-than-sheet", error.Code);
        Assert.StartsWith("If the scan of “front” and “rear” is rougher than its \"noise\" says", error.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Plane_beside_the_scan_and_a_piece_that_is_not_there_are_faults()
    {
        TriangleMesh scan = Scan((u, v) => (new Vec3(40 * u, 100 * v, 0), new Vec3(0, 0, 1)), 20, 50);
        Assert.Equal("section-empty", Fault(Cut(scan, At(new Vec3(100, 0, 0)))).Code);
        Notice pick = Fault(Cut(scan, At(new Vec3(20, 0, 0)), pick: 2));
        Assert.Equal("section-pick", pick.Code);
        Assert.EndsWith(" mm long, so there is no number 2.", pick.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(",,", pick.Message, StringComparison.Ordinal);
        Assert.Equal("section-too-short", Fault(Cut(scan, At(new Vec3(20, 0, 0)), noise: 60)).Code);
    }

    [Fact]
    public void Plane_through_vertices_cuts_one_line()
    {
        // Vertices lie on x = 20 exactly; without scatter.
        TriangleMesh scan = Scan((u, v) => (new Vec3(40 * u, 100 * v, 10 * v * v), new Vec3(0, 0, 1)), 20, 50, noise: 0);
        SectionLine line = Assert.Single(MeshSection.Of(scan, new Vec3(20, 0, 0), new Vec3(1, 0, 0), 0));
        Assert.Equal(51, line.Places.Length);
        Assert.All(line.Places, p => Assert.Equal(20, p.X, 1e-12));
    }

    [Fact]
    public void Curve_of_a_clean_scan_is_few_cubics()
    {
        TriangleMesh scan = Scan((u, v) => (new Vec3(-20 + 40 * u, -100 * Math.Cos(Math.PI * v), 100 * Math.Sin(Math.PI * v)), new Vec3(0, -Math.Cos(Math.PI * v), Math.Sin(Math.PI * v))), 20, 157, noise: 0);
        SpaceCurve curve = Curve(Cut(scan, At(), noise: 0.05));
        Assert.InRange(curve.Pieces.Length, 8, 60);
        Assert.All(curve.Samples(), s => Assert.Equal(100, s.Point.Length, 0.06)); // The smoothing may take all of its 0.05, a facet 0.005.
    }

    private static void Compare(SpaceCurve curve, Func<Vec3, double> error, double most = AtMost)
    {
        double[] errors = [.. Enumerable.Range(0, 201).Select(i => error(curve.AtLength(i * curve.Length / 200).Point))];
        double mean = Math.Sqrt(errors.Average(e => e * e)), worst = errors.Max(Math.Abs);
        Assert.True(mean <= InTheMean && worst <= most, $"{mean:0.0000} in the mean, {worst:0.0000} at most, {errors.Average():0.0000} on one side");
    }

    private static double HalfEllipse(double a, double b)
    {
        const int n = 2000;
        return Math.PI / n * Enumerable.Range(0, n).Sum(i => Math.Sqrt(Math.Pow(a * Math.Sin(Math.PI * (i + 0.5) / n), 2) + Math.Pow(b * Math.Cos(Math.PI * (i + 0.5) / n), 2)));
    }

    // A grid over (u, v) in [0, 1]², every place moved along its normal; diagonals change their way so that edges cross planes at uneven places.
    private static TriangleMesh Scan(Func<double, double, (Vec3 Place, Vec3 Normal)> shape, int nu, int nv, bool closed = false, bool closedU = false, double noise = Noise)
    {
        var random = new Random(11);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        int rows = closedU ? nu : nu + 1, columns = closed ? nv : nv + 1;
        var places = ImmutableArray.CreateBuilder<Vec3>();
        for (int i = 0; i < rows; i++)
        {
            for (int j = 0; j < columns; j++)
            {
                (Vec3 p, Vec3 n) = shape((double)i / nu, (double)j / nv);
                places.Add(p + noise * Gauss() * n);
            }
        }
        int At(int i, int j) => i % rows * columns + j % columns;
        var faces = ImmutableArray.CreateBuilder<(int, int, int)>();
        for (int i = 0; i < nu; i++)
        {
            for (int j = 0; j < nv; j++)
            {
                (int a, int b, int c, int d) = (At(i, j), At(i + 1, j), At(i + 1, j + 1), At(i, j + 1));
                if (random.Next(2) == 0) faces.AddRange((a, b, c), (a, c, d));
                else faces.AddRange((a, b, d), (b, c, d));
            }
        }
        return new TriangleMesh(places.ToImmutable(), faces.ToImmutable());
    }
}
