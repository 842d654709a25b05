using System.Collections.Immutable;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>A list of points in the text of a job, and what comes of moving one of them or adding one to the curve.</summary>
/// <param name="Text">The job.</param>
/// <param name="Path">Of the list.</param>
/// <param name="Axes">What its numbers are, such as across and up.</param>
public sealed record PointList(JobText Text, string Path, ImmutableArray<string> Axes)
{
    private const double InchStep = ShopLength.MillimetresPerInch / 32;

    /// <summary>The job is in inches.</summary>
    public bool Inches => Text.Inches();

    /// <summary>What dragged places are rounded to, mm: a tenth, or 1/32 inch.</summary>
    public double Step => Inches ? InchStep : 0.1;

    /// <summary>The left half is the mirror image: the first point stays on the centreline.</summary>
    public bool Mirror { get; init; }

    /// <summary>The first axis only ever grows, as in a side view.</summary>
    public bool Rising { get; init; }

    private LengthUnit Units => Text.Units();

    /// <summary>How many points there are.</summary>
    public int Count => Text.Find(Path)?.Count ?? 0;

    /// <summary>The numbers of each point, mm; NaN where one cannot be read.</summary>
    public ImmutableArray<ImmutableArray<double>> Places() => [.. Enumerable.Range(0, Count).Select(Place)];

    /// <summary>Path of one number.</summary>
    public string Number(int item, int axis) => JobPath.Item(JobPath.Item(Path, item), axis);

    /// <summary>A length as the job has it, rounded to the step.</summary>
    public string Shown(double mm) => ShopLength.PrintNumber(Rounded(mm), Units);

    /// <summary>A point as the job has it.</summary>
    public string Written(IEnumerable<double> place) => $"[{string.Join(", ", place.Select(mm => JobPath.Typed(Shown(mm))))}]";

    /// <summary>The change that moves a point in one of the planes; numbers that stay within half a step keep what was measured.</summary>
    public JobEdit Moved(int item, int right, int up, Vec2 to)
    {
        ImmutableArray<double> was = Place(item);
        (double x, double y) = (to.X, to.Y);
        if (Mirror && right == 0) x = item == 0 ? 0 : Math.Max(0, x);
        if (Rising && right == 0)
        {
            if (item > 0 && Place(item - 1)[0] is var before && double.IsFinite(before)) x = Math.Max(x, before + Step);
            if (item + 1 < Count && Place(item + 1)[0] is var after && double.IsFinite(after)) x = Math.Min(x, after - Step);
        }
        return JobEdit.All([.. Changed(item, right, was, x), .. Changed(item, up, was, y)]);
    }

    /// <summary>The change that adds a point to the curve.</summary>
    /// <param name="near">Where the curve was touched.</param>
    /// <param name="right">Axis to the right.</param>
    /// <param name="up">Axis up the page.</param>
    /// <param name="curve">Places along the curve, in the axes of the list.</param>
    /// <returns>Null if the curve does not lie there.</returns>
    public JobEdit? Added(Vec2 near, int right, int up, ImmutableArray<ImmutableArray<double>> curve)
    {
        if (Mirror && right == 0) near = near with { X = Math.Abs(near.X) };
        if (Nearest(curve, near, right, up) is not var (segment, share)) return null;
        double[] place = [.. Axes.Select((_, k) => curve[segment][k] + share * (curve[segment + 1][k] - curve[segment][k]))];
        // The points stand along the curve in their order: all those at or before the place come before the new one.
        int index = 0, from = 0;
        foreach (ImmutableArray<double> point in Places())
        {
            if (point.Any(double.IsNaN)) return null;
            from = Enumerable.Range(from, curve.Length - from).MinBy(i => Distance(curve[i], point));
            if (from > segment) break;
            index++;
        }
        return JobEdit.Insert(Path, Math.Clamp(index, 1, Math.Max(1, Count - 1)), Written(place));
    }

    /// <summary>A point to go on with behind one of the list: half way to the next, or as far again.</summary>
    public JobEdit Following(int item)
    {
        ImmutableArray<ImmutableArray<double>> all = Places();
        ImmutableArray<double> here = item >= 0 && item < all.Length ? all[item] : [];
        double[] next = here.IsEmpty || here.Any(double.IsNaN) ? new double[Axes.Length]
            : item + 1 < all.Length && !all[item + 1].Any(double.IsNaN) ? [.. here.Select((v, k) => (v + all[item + 1][k]) / 2)]
            : item > 0 && !all[item - 1].Any(double.IsNaN) ? [.. here.Select((v, k) => 2 * v - all[item - 1][k])]
            : [.. here.Select((v, k) => k == 0 ? v + (Inches ? ShopLength.MillimetresPerInch : 20) : v)];
        return JobEdit.Insert(Path, item + 1, Written(next));
    }

    private ImmutableArray<double> Place(int item) =>
        [.. Axes.Select((_, k) => Text.Find(Number(item, k)) is { } v && ShopLength.Parse(v.Shown, Units) is { IsLength: true } read ? read.Millimetres : double.NaN)];

    private IEnumerable<JobEdit> Changed(int item, int axis, ImmutableArray<double> was, double to) =>
        Math.Abs(to - was[axis]) <= Step / 2 || Text.Find(Number(item, axis)) is null ? [] : [JobEdit.Type(Number(item, axis), Shown(to))];

    private double Rounded(double mm) => Math.Round(mm / Step) * Step;

    private static double Distance(ImmutableArray<double> a, ImmutableArray<double> b) => a.Zip(b, (x, y) => (x - y) * (x - y)).Sum();

    private static (int Segment, double Share)? Nearest(ImmutableArray<ImmutableArray<double>> curve, Vec2 near, int right, int up)
    {
        ((int, double)? best, double least) = (null, double.MaxValue);
        for (int i = 0; i + 1 < curve.Length; i++)
        {
            Vec2 a = new(curve[i][right], curve[i][up]), along = new Vec2(curve[i + 1][right], curve[i + 1][up]) - a;
            double share = along.Length > 0 ? Math.Clamp((near - a).Dot(along) / along.Dot(along), 0, 1) : 0, miss = (near - (a + share * along)).Length;
            if (miss < least) (best, least) = ((i, share), miss);
        }
        return best;
    }
}
