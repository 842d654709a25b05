using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>How large an opening is on the blank: one that was let through aslant is longer there than the tool that is asked for.</summary>
public static class OpeningExtents
{
    // A hole this much out of shape still takes the bolt or the saw of its size: drills and hole saws cut no truer (common practice), mm.
    private const double SameSize = 0.3;

    /// <summary>What the openings of a group measure on the blank, in words; null where that is what was asked for, or where a curve was.</summary>
    /// <param name="alike">At least one, all of one size.</param>
    /// <param name="panel">The piece that they are in.</param>
    /// <param name="job">For what was asked for, and units.</param>
    public static string? OnBlank(IReadOnlyCollection<BlankOpening> alike, PanelDevelopment panel, Job job)
    {
        OpeningShape? shape = Asked(alike.First().Name, panel, job)?.Shape;
        if (shape is null || Sides(shape) is not { } asked) return null;
        (double Short, double Long)[] found = [.. alike.Select(o => Of(o.Flat))];
        double shorter = Math.Min(asked.Width, asked.Height), longer = Math.Max(asked.Width, asked.Height);
        if (found.All(f => Math.Abs(f.Short - shorter) <= SameSize && Math.Abs(f.Long - longer) <= SameSize)) return null;
        (string first, string second) = (Range(found.Select(f => f.Short), job.Units), Range(found.Select(f => f.Long), job.Units));
        if (asked.Width > asked.Height) (first, second) = (second, first);
        return $"{(shape is RoundShape && found.Any(f => f.Long - f.Short > SameSize) ? "oval " : "")}on the blank, {first} × {second}{(job.Units == LengthUnit.Inch ? "\"" : " mm")}";
    }

    /// <summary>Width of a closed line where it is narrowest, and its length square to that, mm.</summary>
    public static (double Short, double Long) Of(ImmutableArray<Vec2> loop)
    {
        (double Short, double Long) best = (double.PositiveInfinity, 0);
        // The narrowest strip that holds a polygon has a side along one of its edges, or one of its hull's, which chords of a round edge come close to.
        for (int i = 0; i < loop.Length; i++)
        {
            Vec2 along = (loop[(i + 1) % loop.Length] - loop[i]).Unit, across = along.Left;
            if (along == Vec2.Zero) continue;
            double width = loop.Max(across.Dot) - loop.Min(across.Dot);
            if (width < best.Short) best = (width, loop.Max(along.Dot) - loop.Min(along.Dot));
        }
        // The side along which a polygon is narrowest may be the longer one all the same: of a square, or nearly.
        return best.Short <= best.Long ? best : (best.Long, best.Short);
    }

    private static OpeningSpec? Asked(string name, PanelDevelopment panel, Job job)
    {
        string source = panel.Piece?.Panel ?? panel.Spec.Name;
        IEnumerable<OpeningSpec> all =
            [.. panel.Spec.Openings, .. job.Panels.Where(p => p.Name == source).SelectMany(p => p.Openings), .. job.Openings.Where(o => o.Through.Contains(source))];
        return all.FirstOrDefault(o => o.Name == name)
            ?? all.FirstOrDefault(o => o.Pattern is not null && name.StartsWith(o.Name + " ", StringComparison.Ordinal) && name[(o.Name.Length + 1)..].All(char.IsAsciiDigit));
    }

    private static (double Width, double Height)? Sides(OpeningShape shape) => shape switch
    {
        RoundShape round => (round.Diameter, round.Diameter),
        SlotShape slot => (slot.Length, slot.Width),
        RectangleShape box => (box.Width, box.Height),
        _ => null,
    };

    private static string Range(IEnumerable<double> sizes, LengthUnit units)
    {
        (double least, double most) = (sizes.Min(), sizes.Max());
        return most - least > SameSize ? $"{Show(least, units)}–{Show(most, units)}" : Show(0.5 * (least + most), units);
    }

    private static string Show(double mm, LengthUnit units) =>
        units == LengthUnit.Inch ? ShopLength.PrintNumber(mm, units) : Math.Round(mm, 1, MidpointRounding.AwayFromZero).ToString("0.0", CultureInfo.InvariantCulture);
}
