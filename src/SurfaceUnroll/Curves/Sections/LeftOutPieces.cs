using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Curves.Sections;

/// <summary>What a plane cuts of a scan and a curve does not follow.</summary>
internal static class LeftOutPieces
{
    // Of the whole section.
    private const double Large = 0.1;

    /// <summary>A warning where large open pieces are left out, as a hole of the scan makes them. Rings go on nowhere, and who picks another piece than the longest knows of them.</summary>
    public static IEnumerable<Notice> Of(SectionSpec spec, ImmutableArray<SectionLine> lines, CurveFaults faults)
    {
        int taken = spec.Pick - 1;
        if (taken != 0 || lines[taken].IsClosed) yield break;
        double whole = lines.Where(l => !l.IsClosed).Sum(l => l.Length);
        int[] large = [.. Enumerable.Range(0, lines.Length).Where(i => !lines[i].IsClosed && lines[i].Length > Large * whole)];
        if (large.Length < 2) yield break;
        double gap = large.Where(i => i != taken).Max(i => large.Where(k => k != i).Min(k => Apart(lines[i], lines[k])));
        yield return faults.SectionLeavesOut([.. large.Where(i => i != taken).Select(i => (i + 1, lines[i].Length))], gap, spec.Pick);
    }

    /// <summary>The unit, <c>in</c> or <c>mm</c>, in which a plane would cut a scan that it does not cut; null if it would in neither.</summary>
    public static string? CutIn(TriangleMesh mesh, Frame frame)
    {
        double plane = frame.Origin.Dot(frame.X), least = double.PositiveInfinity, most = double.NegativeInfinity;
        foreach (Vec3 p in mesh.Places)
        {
            double height = p.Dot(frame.X);
            (least, most) = (Math.Min(least, height), Math.Max(most, height));
        }
        bool Cuts(double by) => by * least < plane && plane < by * most;
        return Cuts(ShopLength.MillimetresPerInch) ? "in" : Cuts(1 / ShopLength.MillimetresPerInch) ? "mm" : null;
    }

    // Between the ends that are nearest to each other, mm.
    private static double Apart(SectionLine a, SectionLine b) => new[] { a.Places[0], a.Places[^1] }.Min(p => new[] { b.Places[0], b.Places[^1] }.Min(q => (p - q).Length));
}
