using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace SurfaceUnroll.Geometry;

/// <summary>Finds which of many regions lie near each other, without measuring each against each.</summary>
internal static class NearPairs
{
    /// <summary>Pairs nearer to each other than a distance, mm, each once, by their indices, the smaller first.</summary>
    public static IEnumerable<(int First, int Second, double Distance)> Of(IReadOnlyList<NetTopologySuite.Geometries.Geometry> regions, double within)
    {
        var tree = new STRtree<int>();
        for (int i = 0; i < regions.Count; i++) tree.Insert(regions[i].EnvelopeInternal, i);
        for (int i = 0; i < regions.Count; i++)
        {
            Envelope box = regions[i].EnvelopeInternal.Copy();
            box.ExpandBy(within);
            foreach (int j in tree.Query(box).Where(j => j > i).Order())
            {
                double distance = regions[i].Distance(regions[j]);
                if (distance < within) yield return (i, j, distance);
            }
        }
    }
}
