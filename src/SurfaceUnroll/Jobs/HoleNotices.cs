using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Distance;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What can be wrong with the holes of a piece that can be made.</summary>
/// <param name="job">Sheet and units.</param>
/// <param name="work">The piece.</param>
internal sealed class HoleNotices(Job job, PanelInWork work)
{
    // Metal between a hole and the nearest tangent line of a bend, the cut line, or another hole, in thicknesses (common practice, no source).
    private const double ToBend = 2, ToEdge = 2, ToHole = 2;

    private readonly PanelDevelopment _panel = work.Panel;

    private readonly double _thickness = job.Sheet.Thickness;

    private readonly ImmutableArray<(string Name, Polygon Region)> _holes = [.. work.Panel.Openings.Select(o => (o.Name, Polygons.Of(o.Flat)))];

    /// <summary>Holes that bends draw out of shape, but for the bend of a hole's own lip; each with its distance.</summary>
    public IEnumerable<(double Distance, Notice Notice)> NearBends(ImmutableArray<BendZone> zones)
    {
        double within = ToBend * _thickness;
        foreach ((string name, Polygon hole) in _holes)
        {
            Envelope near = hole.EnvelopeInternal.Copy();
            near.ExpandBy(within);
            foreach (BendZone zone in zones.Where(z => z.Bend.Lip != name && z.Area.EnvelopeInternal.Intersects(near)))
            {
                double distance = hole.Distance(zone.Area);
                if (distance >= within) continue;
                string bend = BendWords.Label(zone.Bend);
                yield return (distance, Warning(
                    "hole-near-bend",
                    $"“{name}” of “{_panel.Spec.Name}” {(distance > 0 ? $"lies {Size(distance)} from bend {bend}, less than {ToBend:0} thicknesses" : $"lies in bend {bend}")}: it will be drawn out of shape.",
                    "Move it, or drill it after bending."));
            }
        }
    }

    /// <summary>Holes that leave little metal to the cut line; each with its distance.</summary>
    public IEnumerable<(double Distance, Notice Notice)> NearEdge()
    {
        if (_holes.IsEmpty) yield break;
        var outline = new IndexedFacetDistance(Polygons.Of(_panel.Cut).ExteriorRing);
        foreach (BlankOpening opening in _panel.Openings)
        {
            (string name, double rim) = (opening.Name, outline.Distance(Polygons.Of(opening.Cut)));
            if (rim >= ToEdge * _thickness) continue;
            yield return (rim, Warning("hole-near-edge", $"“{name}” of “{_panel.Spec.Name}” leaves {Size(rim)} of metal to the cut line, less than {ToEdge:0} thicknesses.", "Move it inward, or make it smaller."));
        }
    }

    /// <summary>Holes that leave little metal between them; each pair once, with its distance.</summary>
    public IEnumerable<(double Distance, Notice Notice)> NearEachOther() =>
        NearPairs.Of([.. _panel.Openings.Select(o => Polygons.Of(o.Cut))], ToHole * _thickness).Select(pair => (pair.Distance, Warning(
            "holes-near",
            $"“{_holes[pair.First].Name}” and “{_holes[pair.Second].Name}” of “{_panel.Spec.Name}” leave {Size(pair.Distance)} of metal between them, less than {ToHole:0} thicknesses.",
            "Move them apart, make them smaller, or make them one opening.")));

    private Notice Warning(string code, string message, string mend) => new(code, Severity.Warning, work.Where, message, mend);

    private string Size(double mm) => ShopLength.Print(mm, job.Units, 1);
}
