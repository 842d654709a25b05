using System.Globalization;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Benchmarks.Uncertainty;

/// <summary>Twenty jobs with errors: demo jobs whose readings are all given one, and made-up lofts and plates of several sizes and errors.</summary>
internal static class ErrorCases
{
    /// <summary>Name and job.</summary>
    public static IEnumerable<(string Name, Job Job)> All =>
    [
        ("read-with-errors", Demo("read-with-errors", null)),
        ("trike-tail-cover", Demo("trike-tail-cover", 0.5)),
        ("half-cone-shroud", Demo("half-cone-shroud", 0.5)),
        ("square-to-round", Demo("square-to-round", 0.5)),
        ("elbow", Demo("elbow", 0.3)),
        ("drawn-cowl", Demo("drawn-cowl", 0.5)),
        ("bench-hood", Demo("bench-hood", 0.5)),
        ("trike-full-cover", Demo("trike-full-cover", 0.5)),
        .. Enumerable.Range(0, 6).Select(i => ($"made-up loft {Number(i + 1)}", Loft(i))),
        .. Enumerable.Range(0, 4).Select(i => ($"made-up plate {Number(i + 1)}", Plate(i))),
        ("made-up bent plate", Bent()),
        ("made-up crowned sheet", Crowned()),
    ];

    /// <summary>A job as if it had been read without errors.</summary>
    public static Job Exact(Job job) => job with
    {
        Curves = [.. job.Curves.Select(c => c with { Spec = c.Spec with { Errors = ReadingErrors.None } })],
        Panels = [.. job.Panels.Select(p => p.Bent is { } bent ? p with { Bent = bent with { Errors = ReadingErrors.None } } : p)],
    };

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);

    private static Job Demo(string name, double? error)
    {
        string folder = Path.Combine(Repository.Root, "fixtures", "jobs");
        Job job = JobFile.ReadIn(File.ReadAllText(Path.Combine(folder, name + ".json")), folder).Job ?? throw new InvalidOperationException(name);
        if (error is not { } each) return job;
        return job with
        {
            Curves = [.. job.Curves.Select(c => c with { Spec = c.Spec with { Errors = Each(each) } })],
            Panels = [.. job.Panels.Select(p => p.Bent is { } bent ? p with { Bent = bent with { Errors = Each(each) } } : p)],
        };
    }

    private static ReadingErrors Each(double error) => ReadingErrors.None with { Each = error };

    private static Job Job(IEnumerable<(string Name, CurveSpec Spec)> curves, PanelSpec panel) => new(
        "Made up", LengthUnit.Millimetre, new SheetStock("mild steel", 0.8), MeasuredFace.Outside, [.. curves.Select(c => new NamedCurve(c.Name, c.Spec))], [panel], PaperSpec.Default);

    // An arch and a hoop that leans away from it, from 200 to 900 mm wide, read with 0.3 to 1.8 mm.
    private static Job Loft(int i)
    {
        double half = 100 + 70 * i, error = 0.3 * (i + 1);
        var arch = new RunSpec([new LineStep(0.4 * half), new ArcStep(half, Math.PI), new LineStep(0.4 * half)], 0, null, Placement.None with { Lean = 0.1 * i }) { Errors = Each(error) };
        (double X, double Y)[] right = [(0, 1.2 * half), (0.5 * half, 1.1 * half), (0.85 * half, 0.8 * half), (half, 0.35 * half), (half, 0)];
        var hoop = new PointsSpec([.. right.Select(p => new ProfilePoint(new Vec2((1 + 0.1 * i) * p.X, p.Y), false))], true, Fit.Smooth, new Placement(new Vec3(1.5 * half, 0, 0), 0, 0.3, 0)) { Errors = Each(error) };
        return Job([("arch", arch), ("hoop", hoop)], new PanelSpec("cover", ["arch", "hoop"], i % 2 == 0 ? ElementMatching.BendOnly : ElementMatching.Even));
    }

    // Plates inside arcs over chords, and through points, closed by straight lines.
    private static Job Plate(int i)
    {
        double size = 150 + 100 * i;
        CurveSpec rim = i % 2 == 0
            ? new ChordSpec(2 * size, 0.5 * size, Placement.None)
            : new PointsSpec([.. Enumerable.Range(0, 7).Select(k => new ProfilePoint(size * (1 + 0.1 * Math.Sin(9 * k)) * Vec2.FromAngle(Math.PI - k * Math.PI / 6), k == 3))], false, Fit.Smooth, Placement.None);
        return Job([("rim", rim with { Errors = Each(0.4 + 0.4 * i) })], new PanelSpec("plate", [], ElementMatching.BendOnly) { Flat = new FlatSpec(["rim"], null) });
    }

    private static Job Bent()
    {
        var side = new SidePoints([new(new(0, 0), false, null), new(new(120, 10), true, 2), new(new(240, 90), false, null), new(new(330, 95), false, null)], Fit.Smooth);
        return Job([], new PanelSpec("plate", [], ElementMatching.BendOnly) { Bent = new BentSpec([], side, 2, Placement.None) { Width = 400, Errors = Each(0.6) } });
    }

    private static Job Crowned()
    {
        static ChordSpec Rib(double x, double chord, double rise) => new(chord, rise, Placement.None with { Origin = new Vec3(x, 0, 0) }) { Errors = Each(0.5) };
        return Job([("a", Rib(0, 300, 60)), ("b", Rib(200, 330, 80)), ("c", Rib(400, 300, 70))], new PanelSpec("roof", ["a", "b", "c"], ElementMatching.BendOnly));
    }
}
