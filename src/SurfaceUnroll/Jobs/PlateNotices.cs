using NetTopologySuite.Geometries;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What can be wrong with holes and bends of a piece that can be made.</summary>
internal static class PlateNotices
{
    // Metal between a hole or an edge and the nearest tangent line of a bend, and between a hole and the cut line, in thicknesses (common practice, no source).
    private const double HoleToBend = 2, EdgeToBend = 3, HoleToEdge = 2;

    /// <summary>Warnings about one piece.</summary>
    public static IEnumerable<Notice> Of(Job job, PanelInWork work)
    {
        PanelDevelopment panel = work.Panel;
        double t = job.Sheet.Thickness;
        (BendLine Bend, Polygon Zone)[] bends = [.. panel.Bends.Select(b => (b, Zone(b))).Where(b => b.Item2 is not null).Select(b => (b.b, b.Item2!))];
        var outline = Polygons.Of(panel.Cut);
        foreach (BlankOpening opening in panel.Openings)
        {
            var hole = Polygons.Of(opening.Flat);
            foreach ((BendLine bend, Polygon zone) in bends.Where(b => b.Bend.Lip != opening.Name))
            {
                double distance = hole.Distance(zone);
                if (distance >= HoleToBend * t) continue;
                yield return new Notice(
                    "hole-near-bend", Severity.Warning, work.Where,
                    $"“{opening.Name}” of “{panel.Spec.Name}” {(distance > 0 ? $"lies {Size(job, distance)} from bend {BendWords.Label(bend)}, less than {HoleToBend:0} thicknesses" : $"lies in bend {BendWords.Label(bend)}")}: it will be drawn out of shape.",
                    "Move it, or drill it after bending.");
            }
            double rim = outline.ExteriorRing.Distance(hole);
            if (rim < HoleToEdge * t)
            {
                yield return new Notice(
                    "hole-near-edge", Severity.Warning, work.Where, $"“{opening.Name}” of “{panel.Spec.Name}” leaves {Size(job, rim)} of metal to the cut line, less than {HoleToEdge:0} thicknesses.", "Move it inward, or make it smaller.");
            }
        }
        foreach ((BendLine bend, Polygon _) in bends)
        {
            double flange = Flange(panel, bend);
            if (flange >= EdgeToBend * t) continue;
            yield return new Notice(
                "edge-near-bend", Severity.Warning, work.Where,
                $"Beside bend {BendWords.Label(bend)} of “{panel.Spec.Name}” only {Size(job, flange)} of flat is left to the edge, less than {EdgeToBend:0} thicknesses: a brake can hardly hold it.",
                "Leave the flange wider and trim it after bending, or bend it with the hammer over a former.");
        }
    }

    // Between the two tangent lines.
    private static Polygon? Zone(BendLine bend)
    {
        if (bend.Tangents.Length < 2) return null;
        Vec2[] shape = [.. bend.Tangents[0], .. bend.Tangents[1].Reverse()];
        return Polygons.Simple(shape);
    }

    // Flat metal beside a bend: of a lip up to its free edge, else the shortest way from the middle of a tangent line, square to it and off the bend, to the cut line.
    private static double Flange(PanelDevelopment panel, BendLine bend)
    {
        if (bend.Lip is { } edge) return panel.Allowances.First(a => a.Edge == edge).Width - (bend.Length.Allowance - bend.Length.Setback);
        if (bend.Tangents.Length < 2) return double.PositiveInfinity;
        Vec2 Middle(IReadOnlyList<Vec2> line) => line.Count == 2 ? Vec2.Lerp(line[0], line[1], 0.5) : line[line.Count / 2];
        Vec2 a = Middle(bend.Tangents[0]), b = Middle(bend.Tangents[1]), way = (b - a).Unit;
        return way == Vec2.Zero ? double.PositiveInfinity : Math.Min(Way(b, way), Way(a, -way));

        double Way(Vec2 from, Vec2 along)
        {
            double nearest = double.PositiveInfinity;
            for (int i = 0; i < panel.Cut.Length; i++)
            {
                Vec2 p = panel.Cut[i], side = panel.Cut[(i + 1) % panel.Cut.Length] - p;
                double cross = along.Cross(side);
                if (Math.Abs(cross) < 1e-12) continue;
                double s = (p - from).Cross(side) / cross, u = (p - from).Cross(along) / cross;
                if (s > 0 && u is >= 0 and <= 1) nearest = Math.Min(nearest, s);
            }
            return nearest;
        }
    }

    private static string Size(Job job, double mm) => ShopLength.Print(mm, job.Units, 1);
}
