using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Allowances;

/// <summary>An allowance that is not as wide everywhere: as a shop scribes it, straight along each stretch, and tapered from a wide one to a narrow one.</summary>
internal sealed class VaryingWidth
{
    // Length of a taper, mm; on a short stretch half of it.
    private const double Taper = 30;

    // A place within this of a line stands on it, mm; one within this of a place that is there is none to add.
    private const double Near = 1e-3;

    private readonly ImmutableArray<ImmutableArray<Vec2>> _lines;

    private readonly ImmutableArray<(double At, double Width)> _profile;

    private VaryingWidth(ImmutableArray<ImmutableArray<Vec2>> lines, ImmutableArray<(double, double)> profile) => (_lines, _profile) = (lines, profile);

    /// <summary>Of an allowance; null where it is as wide everywhere.</summary>
    public static VaryingWidth? Of(PanelDevelopment panel, EdgeAllowance allowance) => allowance.Steps.Select(s => s.Width).Distinct().Count() < 2 ? null
        : new VaryingWidth([.. panel.Edges.Where(e => e.Name == allowance.Edge).Select(e => e.Flat)], [.. Profile(allowance.Steps)]);

    /// <summary>Width at a place of the edge, mm.</summary>
    public double At(Vec2 place)
    {
        (double distance, double at) = (double.PositiveInfinity, 0);
        foreach (ImmutableArray<Vec2> line in _lines)
        {
            double walked = 0;
            for (int i = 1; i < line.Length; i++)
            {
                double share = Segment.NearestShare(place, line[i - 1], line[i]), step = (line[i] - line[i - 1]).Length;
                double off = (place - Vec2.Lerp(line[i - 1], line[i], share)).Length;
                if (off < distance) (distance, at) = (off, walked + share * step);
                walked += step;
            }
        }
        return WidthAt(at);
    }

    /// <summary>A run of the edge with places of its own where the width begins or ends to change.</summary>
    public ImmutableArray<Vec2> Parted(ImmutableArray<Vec2> path)
    {
        Vec2[] breaks = [.. _lines.SelectMany(line => _profile.Select(p => Place(line, p.At)))];
        var parted = ImmutableArray.CreateBuilder<Vec2>();
        for (int i = 0; i + 1 < path.Length; i++)
        {
            (Vec2 a, Vec2 b) = (path[i], path[i + 1]);
            parted.Add(a);
            parted.AddRange(breaks.Where(p => Segment.Distance(p, a, b) < Near && (p - a).Length > Near && (p - b).Length > Near).OrderBy(p => (p - a).Length));
        }
        parted.Add(path[^1]);
        return parted.ToImmutable();
    }

    // The taper lies on the narrow side, so that nowhere is less left than was asked for.
    private static IEnumerable<(double At, double Width)> Profile(ImmutableArray<LeaveStep> steps)
    {
        yield return (steps[0].From, steps[0].Width);
        for (int i = 1; i < steps.Length; i++)
        {
            (LeaveStep before, LeaveStep after) = (steps[i - 1], steps[i]);
            LeaveStep narrow = before.Width < after.Width ? before : after;
            double taper = Math.Min(Taper, 0.5 * (narrow.To - narrow.From)), at = after.From;
            yield return (before.Width < after.Width ? at - taper : at, before.Width);
            yield return (before.Width < after.Width ? at : at + taper, after.Width);
        }
        yield return (steps[^1].To, steps[^1].Width);
    }

    private double WidthAt(double at)
    {
        for (int i = 1; i < _profile.Length; i++)
        {
            if (at > _profile[i].At) continue;
            double step = _profile[i].At - _profile[i - 1].At, share = step > 0 ? Math.Clamp((at - _profile[i - 1].At) / step, 0, 1) : 1;
            return _profile[i - 1].Width + share * (_profile[i].Width - _profile[i - 1].Width);
        }
        return _profile[^1].Width;
    }

    private static Vec2 Place(ImmutableArray<Vec2> line, double at)
    {
        for (int i = 1; i < line.Length; i++)
        {
            double step = (line[i] - line[i - 1]).Length;
            if (at <= step && step > 0) return Vec2.Lerp(line[i - 1], line[i], Math.Max(0, at) / step);
            at -= step;
        }
        return line[^1];
    }
}
