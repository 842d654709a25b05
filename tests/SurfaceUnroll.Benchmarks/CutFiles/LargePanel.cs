using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Benchmarks.CutFiles;

/// <summary>A sheet of 3 m by 1.2 m, rolled to a radius of 2.5 m, with wavy edges and four openings, whose outline has 5,000 points.</summary>
internal static class LargePanel
{
    private const int Points = 5000;
    private const double Half = 1500, Depth = 1200, Radius = 2500;

    /// <summary>The panel.</summary>
    /// <param name="corners">With two straight sides between its wavy edges; otherwise one wavy line without a corner, within them.</param>
    public static Development Develop(bool corners)
    {
        JobReading read = JobFile.Read(Text());
        Job job = read.Job ?? throw new InvalidOperationException(string.Join("; ", read.Faults.Select(f => f.Message)));
        Development development = Developer.Develop(job);
        PanelDevelopment panel = development.Panels.Single();
        return development with { Panels = [panel with { Cut = corners ? Outline(panel) : Loop(panel) }] };
    }

    // How far an edge swings out, forward, at a distance from the middle, mm.
    private static double Wave(double s) => 45 * Math.Sin(s / 120) + 12 * Math.Cos(s / 37);

    // Both wavy edges as densely as they are asked for; the sides are straight.
    private static ImmutableArray<Vec2> Outline(PanelDevelopment panel)
    {
        double middle = 0.5 * (panel.Edges[0].Flat[0].X + panel.Edges[0].Flat[^1].X), rear = panel.Edges[2].Flat[0].Y - Wave(-Half), front = panel.Edges[0].Flat[0].Y - Wave(-Half);
        Vec2 On(double foot, int i, int way)
        {
            double s = way * (2 * Half * i / (Points / 2 - 1) - Half);
            return new Vec2(middle + s, foot + Wave(s));
        }
        return [.. Enumerable.Range(0, Points / 2).Select(i => On(rear, i, 1)), .. Enumerable.Range(0, Points / 2).Select(i => On(front, i, -1))];
    }

    // An oval of the same size, its edge as wavy: arcs may begin anywhere round it.
    private static ImmutableArray<Vec2> Loop(PanelDevelopment panel)
    {
        Vec2 centre = Box.Around(panel.Cut).Centre;
        return [.. Enumerable.Range(0, Points).Select(i => i * Math.Tau / Points).Select(t => centre + (1 + 0.03 * Math.Sin(24 * t) + 0.01 * Math.Cos(60 * t)) * new Vec2(Half * Math.Cos(t), 0.5 * Depth * Math.Sin(t)))];
    }

    private static string Text() => $$"""
        {
          "job": "Large panel", "units": "mm", "sheet": { "material": "mild steel", "thickness": 1 }, "measured": "middle",
          "curves": { "front": { "xyz": [{{Curve(0)}}], "fit": "smooth" }, "rear": { "xyz": [{{Curve(Depth)}}], "fit": "smooth" } },
          "panels": [ {
            "name": "roof", "loft": ["front", "rear"],
            "openings": [
              { "name": "hatch", "rectangle": [600, 400], "corner": 60, "at": { "origin": [600, -700, 0], "turn": 90, "lean": 90 } },
              { "name": "vent", "round": 220, "at": { "origin": [500, 500, 0], "lean": 90 } },
              { "name": "cable", "round": 60, "at": { "origin": [800, 900, 0], "lean": 90 } },
              { "name": "grip", "slot": [160, 40], "at": { "origin": [900, 100, 0], "lean": 90 } }
            ]
          } ]
        }
        """;

    // Every 10 mm, so that the spline follows the wave.
    private static string Curve(double aft) => string.Join(", ", Enumerable.Range(0, 301).Select(i => (10 * i - Half)).Select(s => string.Create(
        CultureInfo.InvariantCulture, $"[{aft - Wave(s):F4}, {Radius * Math.Sin(s / Radius):F4}, {Radius * Math.Cos(s / Radius) - Radius:F4}]")));
}
