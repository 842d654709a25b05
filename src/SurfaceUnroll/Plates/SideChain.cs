using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Plates;

/// <summary>The side profile of a bent plate, from front to rear; past both ends it goes on straight.</summary>
/// <param name="Spans">At least one; each starts where and as the one before it ends.</param>
internal sealed record SideChain(ImmutableArray<SideSpan> Spans)
{
    /// <summary>Where each span starts on the blank, mm from the front end of the first; one more than there are spans.</summary>
    public ImmutableArray<double> Starts { get; } = Running(Spans);

    /// <summary>Length on the blank, mm.</summary>
    public double Length => Starts[^1];

    /// <summary>True if every part runs aft, so that an aft distance tells the place.</summary>
    public bool RunsAft => Spans.All(s => new[] { s.At(0).Normal.Y, s.At(0.5).Normal.Y, s.At(1).Normal.Y }.Min() > 1e-6);

    /// <summary>Place at a distance along the blank, mm; below 0 and past the length on the straight.</summary>
    public SidePlace At(double along)
    {
        if (along < 0 || along > Length)
        {
            bool front = along < 0;
            SidePlace end = front ? Spans[0].At(0) : Spans[^1].At(1);
            double past = front ? along : along - Length;
            return end with { Face = end.Face - past * end.Normal.Left };
        }
        int i = SpanAt(along);
        double length = Spans[i].Length;
        return Spans[i].At(length > 0 ? Math.Clamp((along - Starts[i]) / length, 0, 1) : 0);
    }

    /// <summary>Distance along the blank at an aft distance, mm, of a chain that <see cref="RunsAft"/>.</summary>
    public double AlongAt(double aft)
    {
        SidePlace front = Spans[0].At(0), rear = Spans[^1].At(1);
        // -normal.Left is the heading.
        if (aft < front.Face.X) return (aft - front.Face.X) / front.Normal.Y;
        if (aft > rear.Face.X) return Length + (aft - rear.Face.X) / rear.Normal.Y;
        int i = 0;
        while (i < Spans.Length - 1 && aft > Spans[i].At(1).Face.X) i++;
        return Starts[i] + Math.Clamp(Spans[i].ShareAt(aft), 0, 1) * Spans[i].Length;
    }

    /// <summary>The same on a wider chain: its flats at the ends run on to hold two aft distances.</summary>
    public SideChain Reaching(double fromAft, double toAft)
    {
        ImmutableArray<SideSpan> spans = Spans;
        SidePlace front = spans[0].At(0), rear = spans[^1].At(1);
        if (fromAft < front.Face.X)
        {
            Vec2 heading = -front.Normal.Left, from = front.Face - (front.Face.X - fromAft) / heading.X * heading;
            spans = spans[0] is FlatSpan flat ? spans.SetItem(0, flat with { From = from }) : spans.Insert(0, new FlatSpan(from, front.Face));
        }
        if (toAft > rear.Face.X)
        {
            Vec2 heading = -rear.Normal.Left, to = rear.Face + (toAft - rear.Face.X) / heading.X * heading;
            spans = spans[^1] is FlatSpan flat ? spans.SetItem(spans.Length - 1, flat with { To = to }) : spans.Add(new FlatSpan(rear.Face, to));
        }
        return new SideChain([.. spans.Select(s => s is FlatSpan f ? new FlatSpan(f.From, f.To) : s)]);
    }

    /// <summary>Distances along the blank between which the plate counts as flat, in order, within two limits, both among them.</summary>
    public ImmutableArray<double> Stations(double from, double to)
    {
        var inside = new SortedSet<double>();
        for (int i = 0; i < Spans.Length; i++)
        {
            int parts = (int)Math.Round(1 / Spans[i].Step);
            for (int k = 0; k <= parts; k++) inside.Add(Starts[i] + Spans[i].Length * k / parts);
        }
        var stations = ImmutableArray.CreateBuilder<double>();
        stations.Add(from);
        foreach (double u in inside.Where(u => u > from && u < to))
            if (u - stations[^1] > Closest && to - u > Closest) stations.Add(u);
        stations.Add(to);
        return stations.ToImmutable();
    }

    // Stations nearer than this, mm, are one.
    private const double Closest = 1e-6;

    private int SpanAt(double along)
    {
        int i = 0;
        while (i < Spans.Length - 1 && along > Starts[i + 1]) i++;
        return i;
    }

    private static ImmutableArray<double> Running(ImmutableArray<SideSpan> spans)
    {
        var starts = ImmutableArray.CreateBuilder<double>(spans.Length + 1);
        starts.Add(0);
        foreach (SideSpan span in spans) starts.Add(starts[^1] + span.Length);
        return starts.ToImmutable();
    }
}
