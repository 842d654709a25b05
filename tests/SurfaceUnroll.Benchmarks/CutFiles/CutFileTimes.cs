using System.Diagnostics;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Dxf;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;

namespace SurfaceUnroll.Benchmarks.CutFiles;

/// <summary>What the PDF and the DXF of a large panel take, step by step, warm. Goal: no more than half a second together.</summary>
internal static class CutFileTimes
{
    private const int Warm = 3, Runs = 11;

    public static int Run()
    {
        foreach (bool corners in new[] { true, false }) Run(corners ? "four corners" : "no corner", LargePanel.Develop(corners));
        return 0;
    }

    private static void Run(string outline, Development development)
    {
        (PanelDevelopment panel, Job job) = (development.Panels[0], development.Job);
        var times = new Dictionary<string, List<double>>();
        var facts = "";
        for (int run = 0; run < Warm + Runs; run++)
        {
            bool counts = run >= Warm;
            T Timed<T>(string step, Func<T> work)
            {
                var clock = Stopwatch.StartNew();
                T result = work();
                if (!times.TryGetValue(step, out List<double>? list)) times[step] = list = [];
                if (counts) list.Add(clock.Elapsed.TotalMilliseconds);
                return result;
            }
            (facts, _) = Timed("together", () =>
            {
                // As PatternFiles does it.
                Drawing drawing = Timed("drawing", () => PatternDrawing.Of(panel, job, development.Joints));
                TilePlan plan = Timed("tile search", () => TileLayout.Plan(drawing, job.Paper));
                byte[] pdf = Timed("PDF", () => PatternPdf.Write(panel, job, plan, null, development.Joints));
                Drawing cut = Timed("arc fit", () => CutFitting.Of(drawing, job.Cutting));
                byte[] dxf = Timed("DXF", () => DxfPattern.Write(cut, job.Cutting));
                return (string.Create(CultureInfo.InvariantCulture, $"{outline}: {panel.Cut.Length} points, {plan.Printed.Count()} sheets, {CutFitting.Segments(cut)} segments, PDF {pdf.Length / 1024} KiB, DXF {dxf.Length / 1024} KiB"), true);
            });
        }
        Console.WriteLine(facts);
        foreach ((string step, List<double> list) in times.OrderBy(t => t.Key == "together"))
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{step,-12} {list.Order().ElementAt(Runs / 2),7:F1} ms   ({list.Min():F1} to {list.Max():F1})"));
    }
}
