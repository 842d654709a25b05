using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Uncertainty;

/// <summary>The readings of a bent plate: its width, and its side where that is measured for the plate alone. Radii and angles of sharp bends are what it is to be, and no readings.</summary>
internal static class PlateReadings
{
    /// <summary>The readings of a bent plate, with those that are taken as exact.</summary>
    /// <param name="spec">The plate.</param>
    public static IEnumerable<PartReading<BentSpec>> Of(BentSpec spec)
    {
        double error = spec.Errors.Each;
        if (spec.Width is not null) yield return new("width", "the width of {0}", error, false, (plate, by) => plate with { Width = plate.Width + by });
        foreach (PartReading<BentSpec> reading in spec.Side switch { SidePoints points => Points(points, error), SideRun run => Run(run, error), _ => [] }) yield return reading;
    }

    private static IEnumerable<PartReading<BentSpec>> Points(SidePoints side, double error)
    {
        for (int i = 0; i < side.Points.Length; i++)
        {
            int at = i;
            string words = $"point {CurveReadings.Count(i + 1)} of the side of {{0}}";
            yield return new($"side[{CurveReadings.Count(i)}][0]", $"{words} (aft)", error, false, (plate, by) => Moved(plate, at, new Vec2(by, 0)));
            yield return new($"side[{CurveReadings.Count(i)}][1]", $"{words} (height)", error, false, (plate, by) => Moved(plate, at, new Vec2(0, by)));
        }
    }

    private static BentSpec Moved(BentSpec plate, int at, Vec2 by)
    {
        var side = (SidePoints)plate.Side;
        return plate with { Side = side with { Points = side.Points.SetItem(at, side.Points[at] with { Place = side.Points[at].Place + by }) } };
    }

    private static IEnumerable<PartReading<BentSpec>> Run(SideRun side, double error)
    {
        for (int i = 0; i < side.Steps.Length; i++)
        {
            int at = i;
            string part = $"side.run[{CurveReadings.Count(i)}]", words = $"step {CurveReadings.Count(i + 1)} of the side of {{0}}";
            if (side.Steps[i] is SideLine) yield return new($"{part}.line", $"{words} (length)", error, false, (plate, by) => Step(plate, at, s => ((SideLine)s) with { Length = ((SideLine)s).Length + by }));
            if (side.Steps[i] is not SideArc arc) continue;
            yield return new($"{part}.arc", $"{words} (radius)", error, false, (plate, by) => Step(plate, at, s => ((SideArc)s) with { Radius = ((SideArc)s).Radius + by }));
            yield return new($"{part}.turn", $"{words} (turn)", error / arc.Radius, true, (plate, by) => Step(plate, at, s => ((SideArc)s) with { Turn = ((SideArc)s).Turn + by }));
        }
    }

    private static BentSpec Step(BentSpec plate, int at, Func<SideStep, SideStep> change)
    {
        var run = (SideRun)plate.Side;
        return plate with { Side = run with { Steps = run.Steps.SetItem(at, change(run.Steps[at])) } };
    }
}
