using System.Collections.Immutable;
using System.Globalization;

namespace SurfaceUnroll.Jobs;

/// <summary>What can be wrong with holes and bends of a piece that can be made.</summary>
internal static class PlateNotices
{
    // So many of one kind are told of a piece, the worst first; the others are counted.
    private const int Most = 5;

    /// <summary>Warnings about one piece; with those of the first piece of a job also what its sheet calls for.</summary>
    public static IEnumerable<Notice> Of(Job job, PanelInWork work)
    {
        ImmutableArray<BendZone> zones = BendZone.Of(work.Panel);
        (HoleNotices holes, BendNotices bends) = (new HoleNotices(job, work), new BendNotices(job, work));
        Notice?[] sheet = IsFirst(job, work) ? [BendNotices.OfOwnBend(job)] : [];
        return
        [
            .. sheet.OfType<Notice>(),
            .. Worst(work, holes.NearBends(zones)),
            .. Worst(work, holes.NearEdge()),
            .. Worst(work, holes.NearEachOther()),
            .. Worst(work, bends.NearEdge()),
            .. Worst(work, bends.NearEachOther(zones)),
            .. bends.Radii(),
        ];
    }

    private static bool IsFirst(Job job, PanelInWork work) => ReferenceEquals(work.Source, job.Panels[0]) && work.Panel.Piece is null or { Number: 1 };

    private static Notice[] Worst(PanelInWork work, IEnumerable<(double Distance, Notice Notice)> found)
    {
        // Distances that are equal but for rounding stay in the order of the job.
        Notice[] notices = [.. found.OrderBy(f => Math.Round(f.Distance, 4)).Select(f => f.Notice)];
        if (notices.Length <= Most) return notices;
        string more = (notices.Length - Most).ToString(CultureInfo.InvariantCulture);
        return [.. notices[..Most], notices[Most] with { Message = $"And {more} more like it on “{work.Panel.Spec.Name}”, none worse." }];
    }
}
