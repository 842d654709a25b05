using System.Collections.Immutable;
using SurfaceUnroll.Curves.Fairing;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Curves;

/// <summary>Curves through measured points, in their own axes: profiles as (0, across, up), points in space as they are.</summary>
internal static class PointCurve
{
    /// <summary>A profile.</summary>
    public static OwnCurve InPlane(PointsSpec spec, CurveFaults faults) => Through(
        new PointRow(
            [.. spec.Points.Select(p => new Vec3(0, p.Place.X, p.Place.Y))], [.. spec.Points.Select(p => p.Corner)],
            spec.Fit, spec.Mirror, "points")
        { Within = spec.Within },
        faults);

    /// <summary>Points in space.</summary>
    public static OwnCurve InSpace(SpaceSpec spec, CurveFaults faults) =>
        Through(new PointRow(spec.Points, [.. spec.Points.Select(_ => false)], spec.Fit, false, "xyz") { Within = spec.Within }, faults);

    private static OwnCurve Through(PointRow row, CurveFaults faults)
    {
        ImmutableArray<Notice> errors = [.. PointChecks.Faults(row, faults)];
        if (errors.Length > 0) return new OwnCurve([], false, errors);
        row = row.Snapped();
        ImmutableArray<CurvePiece> spans = row.Fit == Fit.Straight ? Straight(row.Places) : Smooth(row);
        ImmutableArray<Notice> notices = [.. Fairness(row, spans, faults), .. PointChecks.ShapeFaults(row, spans, faults)];
        return new OwnCurve(spans, row.Mirror, notices);
    }

    // Which reading the fairest curve leaves by the most.
    private static IEnumerable<Notice> Fairness(PointRow row, ImmutableArray<CurvePiece> spans, CurveFaults faults)
    {
        if (row.Within is not { } within || row.Fit == Fit.Straight) yield break;
        (double most, int index) = row.Places.Select((p, i) => (FairRow.Move(spans, i, p), i)).MaxBy(x => x.Item1);
        yield return faults.Faired(row.Key, within, most, index, row.Places[index], row.IsPlanar);
    }

    private static ImmutableArray<CurvePiece> Straight(ImmutableArray<Vec3> places) =>
        [.. places.Skip(1).Select((p, i) => new LinePiece(places[i], p))];

    // One piece per span, always: span i joins point i to point i + 1.
    private static ImmutableArray<CurvePiece> Smooth(PointRow row)
    {
        int last = row.Places.Length - 1;
        bool loop = row.IsClosed && !row.Mirror && !row.Corners[0] && !row.Corners[last];
        if (!loop) return Between(row, [0, .. InnerCorners(row), last]);
        int[] corners = [.. InnerCorners(row)];
        if (corners.Length == 0) return FairRow.Closed(row) ?? CubicSpline.Periodic(row.Places.AsSpan());

        // Begin the loop at its first corner, so that it is smooth across the place where the points happen to begin; then turn it back.
        int first = corners[0];
        PointRow turned = row.BeginningAt(first);
        ImmutableArray<CurvePiece> spans = Between(turned, [0, .. corners.Skip(1).Select(c => c - first), last]);
        return [.. spans.Skip(last - first), .. spans.Take(last - first)];
    }

    private static IEnumerable<int> InnerCorners(PointRow row) =>
        Enumerable.Range(1, row.Places.Length - 2).Where(i => row.Corners[i]);

    private static ImmutableArray<CurvePiece> Between(PointRow row, ImmutableArray<int> breaks)
    {
        var spans = ImmutableArray.CreateBuilder<CurvePiece>(row.Places.Length - 1);
        int last = row.Places.Length - 1;
        for (int i = 0; i + 1 < breaks.Length; i++)
        {
            (int from, int to) = (breaks[i], breaks[i + 1]);
            CurveEnd start = row.Mirror && from == 0 && !row.Corners[0] ? CurveEnd.Mirrored : CurveEnd.Free;
            CurveEnd end = row.Mirror && to == last && !row.Corners[last] && row.Places[last].Y == 0 ? CurveEnd.Mirrored : CurveEnd.Free;
            ImmutableArray<Vec3> part = row.Places[from..(to + 1)];
            bool square = start == CurveEnd.Free || part[0].Z == part[^1].Z;
            spans.AddRange(square && end == CurveEnd.Free && OnOneLine(part) ? Straight(part) : FairRow.Open(part, start, end, row.Within) ?? CubicSpline.Open(part.AsSpan(), start, end));
        }
        return spans.ToImmutable();
    }

    private static bool OnOneLine(ImmutableArray<Vec3> places)
    {
        Vec3 span = places[^1] - places[0], along = span.Unit;
        return span.Length > 0 && places.All(p => along.Cross(p - places[0]).Length <= Tolerance.Straightness * span.Length);
    }
}

/// <summary>A row of measured points in their own axes.</summary>
/// <param name="Places">mm.</param>
/// <param name="Corners">As many; a smooth curve is broken there.</param>
/// <param name="Fit">Smooth or straight.</param>
/// <param name="Mirror">From the centreline out to the right.</param>
/// <param name="Key">Key of the points in the job file; <c>points</c> are flat.</param>
internal sealed record PointRow(ImmutableArray<Vec3> Places, ImmutableArray<bool> Corners, Fit Fit, bool Mirror, string Key)
{
    /// <summary>How far the fairest curve may leave each place, mm; null: it goes through them.</summary>
    public double? Within { get; init; }

    public bool IsPlanar => Key == "points";

    /// <summary>Largest distance of a point from the first, mm: what tolerances are measured by.</summary>
    public double Size => Places.Max(p => (p - Places[0]).Length);

    /// <summary>The last point is the first.</summary>
    public bool IsClosed => Places[0] == Places[^1];

    /// <summary>The closed row begun at another of its points.</summary>
    public PointRow BeginningAt(int index) => this with
    {
        Places = [.. Places[index..], .. Places[1..(index + 1)]],
        Corners = [.. Corners[index..], .. Corners[1..(index + 1)]],
    };

    /// <summary>Ends that all but meet each other, or the centreline of a mirrored row, put exactly there.</summary>
    public PointRow Snapped()
    {
        double near = Tolerance.Coincidence * Size;
        ImmutableArray<Vec3> places = Places;
        if (Mirror)
        {
            places = places.SetItem(0, places[0] with { Y = 0 });
            if (Math.Abs(places[^1].Y) <= Tolerance.Centreline(Size)) places = places.SetItem(places.Length - 1, places[^1] with { Y = 0 });
        }
        else if ((places[^1] - places[0]).Length <= near)
        {
            places = places.SetItem(places.Length - 1, places[0]);
        }
        return this with { Places = places };
    }
}
