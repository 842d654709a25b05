using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What can be wrong with the bends of a piece that can be made.</summary>
/// <param name="job">Sheet and units.</param>
/// <param name="work">The piece.</param>
internal sealed class BendNotices(Job job, PanelInWork work)
{
    // Flat metal beside a bend, and between two, in thicknesses; between two also no less than so many mm (common practice, no source).
    private const double Beside = 3, Between = 2, LeastBetween = 3;

    // Inside radius in thicknesses above which no brake leaves a bend (common practice, no source).
    private const double RolledRatio = 20;

    private readonly PanelDevelopment _panel = work.Panel;

    private readonly double _thickness = job.Sheet.Thickness;

    /// <summary>A warning where the bend that the shop measured shows more than a bend can; null if not.</summary>
    public static Notice? OfOwnBend(Job job)
    {
        if (job.Sheet.Bending.Own is not { } own || job.Sheet.Thickness <= 0) return null;
        double k = BendAllowance.Shown(own, job.Sheet.Thickness);
        if (k <= BendAllowance.MiddleK + 1e-6) return null;
        double least = BendAllowance.Deduction(own.Radius, job.Sheet.Thickness, BendAllowance.MiddleK, own.Angle);
        return new Notice(
            "own-bend-k", Severity.Warning, "sheet.ownBend",
            $"The shop's own bend shows K {Number(k)}: the fibre that keeps its length would lie past the middle of the sheet, on the stretched side. With its radius and angle the deduction is {ShopLength.Print(least, job.Units, 2)} at K 0.5, and {ShopLength.Print(own.Deduction, job.Units, 2)} was measured.",
            "Measure both outside lengths, the inside radius and the thickness again; a bend that came out rounder than its tool reads like this.");
    }

    /// <summary>Bends with little flat to the edge; each with its width.</summary>
    public IEnumerable<(double Distance, Notice Notice)> NearEdge()
    {
        // Once for the runs of one bend.
        foreach (IGrouping<int, BendLine> runs in _panel.Bends.GroupBy(b => b.Number))
        {
            (BendLine bend, double flange) = (runs.First(), runs.Min(Flange));
            if (flange >= Beside * _thickness) continue;
            yield return (flange, Warning(
                "edge-near-bend",
                $"Beside bend {BendWords.Label(bend)} of “{_panel.Spec.Name}” only {Size(flange)} of flat is left to the edge, less than {Beside:0} thicknesses: a brake can hardly hold it.",
                "Leave the flange wider and trim it after bending, or bend it with the hammer over a former."));
        }
    }

    /// <summary>Bends with little flat between them; each pair once, with its distance. Lips along edges meet at corners and run over bends, and are none.</summary>
    public IEnumerable<(double Distance, Notice Notice)> NearEachOther(ImmutableArray<BendZone> zones)
    {
        if (_thickness <= 0) yield break;
        double within = Math.Max(Between * _thickness, LeastBetween);
        foreach ((int i, int j, double distance) in NearPairs.Of([.. zones.Select(z => z.Area)], within))
        {
            (BendZone a, BendZone b) = (zones[i], zones[j]);
            bool across = a.Bend.Lip is null && b.Bend.Lip is null;
            if (a.Bend.Number == b.Bend.Number || !(across || a.RoundHole || b.RoundHole)) continue;
            yield return (distance, Warning(
                "bends-near",
                $"Between bends {BendWords.Label(a.Bend)} and {BendWords.Label(b.Bend)} of “{_panel.Spec.Name}” {(distance > 0 ? $"only {Size(distance)} of flat is left" : "no flat is left")}, less than {Size(within)}: a brake cannot hold it.",
                "Move them apart, give them smaller radii, or make both in one tool."));
        }
    }

    /// <summary>Radii that the sheet or the brake does not go with.</summary>
    public IEnumerable<Notice> Radii()
    {
        if (_thickness <= 0) yield break;
        if (Those(b => BendPlanner.IsTooSharp(b, job.Sheet)) is { } sharp)
        {
            yield return Warning(
                "bend-may-crack", $"{sharp.Words}, less than {Size(job.Sheet.MinimumRadius)}, the smallest for {job.Sheet.Metal.Name} of this thickness: it may crack there on the outside.",
                "Bend to a larger radius, across the rolling direction, and try it on a scrap.");
        }
        if (Those(b => b.InsideRadius > RolledRatio * _thickness) is { } wide)
        {
            yield return Warning(
                "bend-is-rolled", $"{wide.Words}: more than {RolledRatio:0} thicknesses. That is rolled, or made in many small steps, not bent at one line.",
                "Give it as an arc, { \"arc\": radius, \"turn\": degrees }, or as smooth points, so that the lines to roll along are drawn; work a wide lip over a former.");
        }
    }

    // Those bends, and the radius of the worst, in words; null if there is none.
    private (ImmutableArray<BendLine> Bends, string Words)? Those(Func<BendLine, bool> which)
    {
        ImmutableArray<BendLine> bends = [.. _panel.Bends.Where(which).DistinctBy(b => b.Number)];
        if (bends.IsEmpty) return null;
        string labels = string.Join(", ", bends.Select(BendWords.Label));
        string[] radii = [.. bends.Select(b => b.InsideRadius).Distinct().Order().Select(r => ShopLength.Print(r, job.Units, 2))];
        string radius = radii.Length == 1 ? $"an inside radius of {radii[0]}" : $"inside radii of {radii[0]} to {radii[^1]}";
        return (bends, bends.Length == 1 ? $"Bend {labels} of “{_panel.Spec.Name}” has {radius}" : $"Bends {labels} of “{_panel.Spec.Name}” have {radius}");
    }

    // Flat metal beside a bend: of a lip up to its free edge, else the shortest way from the middle of a tangent line, square to it and off the bend, to the cut line.
    private double Flange(BendLine bend)
    {
        if (bend.Lip is { } edge) return _panel.Allowances.First(a => a.Edge == edge).Width - (bend.Length.Allowance - bend.Length.Setback);
        if (bend.Tangents.Length < 2) return double.PositiveInfinity;
        Vec2 Middle(IReadOnlyList<Vec2> line) => line.Count == 2 ? Vec2.Lerp(line[0], line[1], 0.5) : line[line.Count / 2];
        Vec2 a = Middle(bend.Tangents[0]), b = Middle(bend.Tangents[1]), way = (b - a).Unit;
        return way == Vec2.Zero ? double.PositiveInfinity : Math.Min(Way(b, way), Way(a, -way));

        double Way(Vec2 from, Vec2 along)
        {
            double nearest = double.PositiveInfinity;
            for (int i = 0; i < _panel.Cut.Length; i++)
            {
                Vec2 p = _panel.Cut[i], side = _panel.Cut[(i + 1) % _panel.Cut.Length] - p;
                double cross = along.Cross(side);
                if (Math.Abs(cross) < 1e-12) continue;
                double s = (p - from).Cross(side) / cross, u = (p - from).Cross(along) / cross;
                if (s > 0 && u is >= 0 and <= 1) nearest = Math.Min(nearest, s);
            }
            return nearest;
        }
    }

    private Notice Warning(string code, string message, string mend) => new(code, Severity.Warning, work.Where, message, mend);

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private string Size(double mm) => ShopLength.Print(mm, job.Units, 1);
}
