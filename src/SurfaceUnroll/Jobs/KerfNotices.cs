using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Patterns.CutPaths;

namespace SurfaceUnroll.Jobs;

/// <summary>Where a cut of the job's width is too wide to follow the finished line.</summary>
internal static class KerfNotices
{
    // Metal that is left beyond the finished line by less (mm) is within what fits; so is what half a kerf leaves in any inner corner of 60° and more.
    private const double LeastBeyond = 0.3;

    /// <summary>One notice for each cut line of a piece that cannot be followed.</summary>
    public static IEnumerable<Notice> Of(Job job, PanelDevelopment panel, string where)
    {
        double half = 0.5 * job.Cutting.Kerf;
        if (half == 0) yield break;
        IEnumerable<(string Name, ImmutableArray<Vec2> Loop, bool Inner)> lines =
        [
            .. panel.Openings.Select(o => ($"“{o.Name}” of “{panel.Spec.Name}”", o.Cut, true)),
            .. panel.InnerCuts.Select(loop => ($"A gap in “{panel.Spec.Name}”", loop, true)),
            ($"The outline of “{panel.Spec.Name}”", panel.Cut, false),
        ];
        foreach ((string name, ImmutableArray<Vec2> loop, bool inner) in lines)
        {
            ImmutableArray<ImmutableArray<Vec2>> moved = KerfOffset.Of(loop, inner, half);
            if (moved.IsEmpty) yield return Warning(where, $"{name} is nowhere wider than the kerf of {Mm(job.Cutting.Kerf)}: it is left out of the cut lines.", "Drill it, make it wider, or cut with a narrower kerf.");
            else if (KerfOffset.Missed(loop, moved, half) is var (place, beyond) && beyond > Math.Max(half, LeastBeyond))
            {
                yield return Warning(where,
                    string.Create(CultureInfo.InvariantCulture, $"{name} has a place too narrow for the kerf of {Mm(job.Cutting.Kerf)}: at ({place.X:0.#}, {place.Y:0.#}) of the blank the cut stays {Mm(beyond)} short of the finished line."),
                    "Finish it by hand, make it wider, or cut with a narrower kerf.");
            }
        }
    }

    private static Notice Warning(string where, string message, string mend) => new("kerf-closes-opening", Severity.Warning, where, message, mend);

    private static string Mm(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.##} mm");
}
