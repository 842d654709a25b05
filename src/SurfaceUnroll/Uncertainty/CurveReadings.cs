using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Uncertainty;

/// <summary>The single numbers that make up a measured curve: those that someone read off a tape, a gauge or a rule.</summary>
/// <remarks>What follows from how a curve is meant to stand is none: the centreline that a mirrored curve begins on, the seam of a closed one. A placement counts where it has an
/// error of its own.</remarks>
internal static class CurveReadings
{
    // A place this near to the centreline of a mirrored curve stands on it, mm; a last point this near to the first closes the curve.
    private const double Same = 1e-3;

    /// <summary>The readings of a curve, with those that are taken as exact.</summary>
    /// <param name="spec">The curve.</param>
    public static IEnumerable<PartReading<CurveSpec>> Of(CurveSpec spec) => Measures(spec).Concat(Standing(spec));

    private static IEnumerable<PartReading<CurveSpec>> Measures(CurveSpec spec) => spec switch
    {
        PointsSpec points => Points(points),
        SpaceSpec space => Space(space),
        RunSpec run => Run(run),
        ChordSpec chord => Chord(chord),
        PlanSideSpec both => Plan(both).Concat(Side(both)),
        DrawnSpec drawn => DrawnReadings.Of(drawn),
        _ => [],
    };

    private static IEnumerable<PartReading<CurveSpec>> Points(PointsSpec spec)
    {
        int last = spec.Points.Length - 1;
        bool closed = !spec.Mirror && last > 1 && (spec.Points[last].Place - spec.Points[0].Place).Length <= Same;
        for (int i = 0; i <= (closed ? last - 1 : last); i++)
        {
            int[] moved = closed && i == 0 ? [0, last] : [i];
            string part = $"points[{Count(i)}]", words = $"point {Count(i + 1)} of {{0}}";
            double error = spec.Errors.Of(part);
            bool centre = spec.Mirror && (i == 0 || (i == last && Math.Abs(spec.Points[i].Place.X) <= Same));
            if (!centre) yield return new($"{part}[0]", $"{words} (across)", error, false, (curve, by) => Moved((PointsSpec)curve, moved, new Vec2(by, 0)));
            yield return new($"{part}[1]", $"{words} (up)", error, false, (curve, by) => Moved((PointsSpec)curve, moved, new Vec2(0, by)));
        }
    }

    private static PointsSpec Moved(PointsSpec spec, int[] which, Vec2 by)
    {
        ImmutableArray<ProfilePoint>.Builder points = spec.Points.ToBuilder();
        foreach (int i in which) points[i] = points[i] with { Place = points[i].Place + by };
        return spec with { Points = points.ToImmutable() };
    }

    private static IEnumerable<PartReading<CurveSpec>> Space(SpaceSpec spec)
    {
        int last = spec.Points.Length - 1;
        bool closed = last > 1 && (spec.Points[last] - spec.Points[0]).Length <= Same;
        for (int i = 0; i <= (closed ? last - 1 : last); i++)
        {
            int[] moved = closed && i == 0 ? [0, last] : [i];
            string part = $"xyz[{Count(i)}]";
            foreach ((int axis, string name, Vec3 along) in Axes)
            {
                yield return new($"{part}[{Count(axis)}]", $"point {Count(i + 1)} of {{0}} ({name})", spec.Errors.Of(part), false, (curve, by) =>
                {
                    var space = (SpaceSpec)curve;
                    ImmutableArray<Vec3>.Builder points = space.Points.ToBuilder();
                    foreach (int k in moved) points[k] += by * along;
                    return space with { Points = points.ToImmutable() };
                });
            }
        }
    }

    // An arc ends where its length along the radius says: an error along it turns it by that over the radius. The turn of a short arc shows between the straights beside it, over the shorter of them.
    private static IEnumerable<PartReading<CurveSpec>> Run(RunSpec spec)
    {
        for (int i = 0; i < spec.Steps.Length; i++)
        {
            int at = i;
            string part = $"run[{Count(i)}]", words = $"step {Count(i + 1)} of {{0}}";
            double error = spec.Errors.Of(part);
            if (spec.Steps[i] is not ArcStep arc)
            {
                yield return new($"{part}.line", $"{words} (length)", error, false, (curve, by) => Step(curve, at, s => ((LineStep)s) with { Length = ((LineStep)s).Length + by }));
                continue;
            }
            // Once round is a closed curve, and was not read.
            bool round = Math.Abs(arc.Turn) >= Math.Tau * (1 - 1e-9);
            double lever = Math.Max(arc.Radius, Math.Min(Straight(i - 1), Straight(i + 1)));
            double turn = round ? 0 : spec.Errors.Own.TryGetValue($"{part}.turn", out double own) ? own : error / lever;
            yield return new($"{part}.arc", $"{words} (radius)", error, false, (curve, by) => Step(curve, at, s => ((ArcStep)s) with { Radius = ((ArcStep)s).Radius + by }));
            yield return new($"{part}.turn", $"{words} (turn)", turn, true, (curve, by) => Step(curve, at, s => ((ArcStep)s) with { Turn = ((ArcStep)s).Turn + by }));
        }

        // Length of the straight that stands there, mm; 0 if there is none.
        double Straight(int at) => at < 0 || at >= spec.Steps.Length ? 0 : spec.Steps[at] is LineStep line ? line.Length : 0;
    }

    private static RunSpec Step(CurveSpec curve, int at, Func<RunStep, RunStep> change)
    {
        var run = (RunSpec)curve;
        return run with { Steps = run.Steps.SetItem(at, change(run.Steps[at])) };
    }

    private static IEnumerable<PartReading<CurveSpec>> Chord(ChordSpec spec)
    {
        yield return new("chord", "the chord of {0}", spec.Errors.Of("chord"), false, (curve, by) => ((ChordSpec)curve) with { Chord = ((ChordSpec)curve).Chord + by });
        yield return new("rise", "the rise of {0}", spec.Errors.Of("rise"), false, (curve, by) => ((ChordSpec)curve) with { Rise = ((ChordSpec)curve).Rise + by });
    }

    // A plan view that says nothing of its own was read as well as the rest.
    private static IEnumerable<PartReading<CurveSpec>> Plan(PlanSideSpec spec)
    {
        CurveSpec plan = spec.Plan.Errors.Any ? spec.Plan : spec.Plan with { Errors = spec.Errors with { Own = ReadingErrors.None.Own } };
        foreach (PartReading<CurveSpec> reading in Measures(plan))
        {
            yield return new($"plan.{reading.Part}", reading.Words.Replace("{0}", "the plan of {0}", StringComparison.Ordinal), reading.Error, reading.IsAngle,
                (curve, by) => ((PlanSideSpec)curve) with { Plan = reading.Moved(((PlanSideSpec)curve).Plan, by) });
        }
    }

    private static IEnumerable<PartReading<CurveSpec>> Side(PlanSideSpec spec)
    {
        for (int i = 0; i < spec.Side.Length; i++)
        {
            int at = i;
            string part = $"side[{Count(i)}]", words = $"point {Count(i + 1)} of the side of {{0}}";
            double error = spec.Errors.Of(part);
            yield return new($"{part}[0]", $"{words} (aft)", error, false, (curve, by) => ((PlanSideSpec)curve) with { Side = Shifted(((PlanSideSpec)curve).Side, at, new Vec2(by, 0)) });
            yield return new($"{part}[1]", $"{words} (height)", error, false, (curve, by) => ((PlanSideSpec)curve) with { Side = Shifted(((PlanSideSpec)curve).Side, at, new Vec2(0, by)) });
        }
    }

    private static ImmutableArray<Vec2> Shifted(ImmutableArray<Vec2> points, int at, Vec2 by) => points.SetItem(at, points[at] + by);

    // Where the curve stands: only if that was given an error.
    private static IEnumerable<PartReading<CurveSpec>> Standing(CurveSpec spec)
    {
        if (spec.Errors.Own.TryGetValue("at", out double error))
        {
            foreach ((int axis, string name, Vec3 along) in Axes)
                yield return new($"at.origin[{Count(axis)}]", $"where {{0}} stands ({name})", error, false, (curve, by) => curve with { At = curve.At with { Origin = curve.At.Origin + by * along } });
        }
        if (!spec.Errors.Own.TryGetValue("at.angle", out double angle)) yield break;
        yield return new("at.roll", "how {0} stands (roll)", angle, true, (curve, by) => curve with { At = curve.At with { Roll = curve.At.Roll + by } });
        yield return new("at.lean", "how {0} stands (lean)", angle, true, (curve, by) => curve with { At = curve.At with { Lean = curve.At.Lean + by } });
        yield return new("at.turn", "how {0} stands (turn)", angle, true, (curve, by) => curve with { At = curve.At with { Turn = curve.At.Turn + by } });
    }

    private static readonly ImmutableArray<(int Axis, string Name, Vec3 Along)> Axes = [(0, "x", new Vec3(1, 0, 0)), (1, "y", new Vec3(0, 1, 0)), (2, "z", new Vec3(0, 0, 1))];

    internal static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}
