using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Curves.Drawn;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Which of the lines of a drawing are the curve.</summary>
/// <param name="Layer">Only those of this layer or group; null for all.</param>
/// <param name="Path">Only those with this id; null for all.</param>
/// <param name="Pick">Which curve of those, from 1 for the longest; null where there must be one.</param>
/// <param name="Join">Ends no farther apart than this meet, mm.</param>
internal sealed record DrawingChoice(string? Layer, string? Path, int? Pick, double Join)
{
    private const int MostNamed = 6;

    // Ends this many tolerances apart, or a millimetre, were hardly meant to lie apart.
    private const double NearMisses = 20;

    /// <summary>The one curve that is meant; null with faults where it cannot be told.</summary>
    /// <param name="drawing">What was read.</param>
    /// <param name="show">A length for messages.</param>
    /// <param name="faults">Where faults go.</param>
    /// <param name="twice">How many lines lay on others and were left out.</param>
    public StrandChain? Find(DrawingReading drawing, Func<double, string> show, FileFaults faults, out int twice)
    {
        twice = 0;
        ImmutableArray<DrawnStrand> strands = drawing.Strands;
        if (strands.IsEmpty)
        {
            string others = drawing.PassedOver.IsEmpty ? "" : $" It has {string.Join(", ", drawing.PassedOver.Select(p => $"{Count(p.Count)} {p.Kind}"))}, which are not read.";
            faults.Add("drawing-empty", 0, $"There is no line, arc or spline in the drawing.{others}", "Draw the curve with lines, arcs, polylines or splines; explode what is made of other things.");
            return null;
        }
        if (Layer is not null) strands = Named(strands, s => s.Layers, Layer, "drawing-layer", "layer", faults);
        if (Path is not null && strands.Length > 0) strands = Named(strands, s => s.Id.Length > 0 ? (string[])[s.Id] : [], Path, "drawing-path", "path", faults);
        if (strands.IsEmpty) return null;
        ChainReading chains = StrandChains.Of([.. strands.Select(s => s.Pieces)], Join);
        twice = chains.Twice.Length;
        if (chains.Chains.IsEmpty)
        {
            faults.Add("drawing-empty", strands[0].Line, $"The lines are all shorter than {show(Join)}.", "Check the unit of the drawing (\"fileUnits\"), or give a smaller \"join\".");
            return null;
        }
        StrandChain[] ordered = [.. chains.Chains.OrderByDescending(c => c.Length)];
        if (Pick is { } pick)
        {
            if (pick <= ordered.Length) return ordered[pick - 1];
            faults.Add("drawing-pick", 0, $"There are {Count(ordered.Length)} curves, so there is no number {Count(pick)}.", "Choose one of them, 1 for the longest.");
            return null;
        }
        if (chains.Forks.Length > 0) Fork(chains.Forks[0], strands, show, faults);
        else if (ordered.Length > 1 && NearMiss(ordered) is var (gap, a, b, place) && gap <= Math.Max(1, NearMisses * Join)) Gap(gap, strands[a], strands[b], place, show, faults);
        else if (ordered.Length > 1) Several(ordered, strands, show, faults);
        return faults.Any ? null : ordered[0];
    }

    private static ImmutableArray<DrawnStrand> Named(ImmutableArray<DrawnStrand> strands, Func<DrawnStrand, IEnumerable<string>> names, string name, string code, string what, FileFaults faults)
    {
        ImmutableArray<DrawnStrand> found = [.. strands.Where(s => names(s).Contains(name, StringComparer.OrdinalIgnoreCase))];
        if (found.Length > 0) return found;
        string[] known = [.. strands.SelectMany(names).Distinct().Order(StringComparer.Ordinal)];
        string mend = NearestWord.To(name, known) is { } near ? $"Did you mean \"{near}\"?"
            : known.Length == 0 ? $"No line of the drawing has a {what}: leave it out." : $"There are: {string.Join(", ", known.Take(4 * MostNamed))}.";
        faults.Add(code, 0, $"There is no line with the {what} \"{name}\".", mend);
        return [];
    }

    private static void Fork((Vec3 Place, ImmutableArray<int> Strands) fork, ImmutableArray<DrawnStrand> strands, Func<double, string> show, FileFaults faults) => faults.Add(
        "drawing-fork", strands[fork.Strands.Min()].Line,
        $"{Count(fork.Strands.Length)} lines meet at {At(fork.Place, show)}, so it cannot be told which way the curve goes on (lines {string.Join(", ", fork.Strands.Select(s => strands[s].Line).Order().Select(Count))} of the file).",
        "Put the curve on a layer of its own and name it with \"layer\".");

    private static void Gap(double gap, DrawnStrand a, DrawnStrand b, Vec3 place, Func<double, string> show, FileFaults faults) => faults.Add(
        "drawing-gap", Math.Min(a.Line, b.Line),
        $"The {a.Kind} of line {Count(a.Line)} and the {b.Kind} of line {Count(b.Line)} end {show(gap)} from each other at {At(place, show)}.",
        $"If they are one curve, draw them together or give a \"join\" of more than {show(gap)}; if not, name one with \"layer\" or \"path\", or choose one with \"pick\".");

    private static void Several(StrandChain[] chains, ImmutableArray<DrawnStrand> strands, Func<double, string> show, FileFaults faults)
    {
        string[] layers = [.. chains.SelectMany(c => c.Strands).SelectMany(s => strands[s].Layers).Distinct().Order(StringComparer.Ordinal)];
        string[] ids = [.. chains.SelectMany(c => c.Strands).Select(s => strands[s].Id).Where(id => id.Length > 0).Distinct().Order(StringComparer.Ordinal)];
        string Name(StrandChain c)
        {
            DrawnStrand first = strands[c.Strands[0]];
            string where = first.Id.Length > 0 ? $"path \"{first.Id}\"" : first.Layers.Length > 0 ? $"layer \"{first.Layers[^1]}\"" : "";
            return $"{(where.Length > 0 ? where + ", " : "")}line {Count(first.Line)}, {show(c.Length)} long";
        }
        string mend = (layers.Length > 1, ids.Length > 1) switch
        {
            (true, _) => $"Name one with \"layer\" ({string.Join(", ", layers.Take(4 * MostNamed))}), or choose one with \"pick\", 1 for the longest.",
            (_, true) => $"Name one with \"path\" ({string.Join(", ", ids.Take(4 * MostNamed))}), or choose one with \"pick\", 1 for the longest.",
            _ => "Choose one with \"pick\", 1 for the longest, or put the curve on a layer of its own and name it with \"layer\".",
        };
        faults.Add("drawing-several", 0,
            $"The drawing has {Count(chains.Length)} curves: {string.Join("; ", chains.Take(MostNamed).Select(Name))}{(chains.Length > MostNamed ? "; …" : "")}.", mend);
    }

    // The two ends of different curves, or of one that is open, that lie nearest to each other.
    private static (double Gap, int A, int B, Vec3 Place) NearMiss(StrandChain[] chains)
    {
        (Vec3 Place, int Strand, int Chain)[] ends = [.. chains.SelectMany((c, i) => c.IsClosed
            ? Array.Empty<(Vec3, int, int)>()
            : [(c.Pieces[0].At(0).Point, c.Strands[0], i), (c.Pieces[^1].At(1).Point, c.Strands[^1], i)]).Take(400)];
        (double, int, int, Vec3) nearest = (double.PositiveInfinity, 0, 0, default);
        for (int i = 0; i < ends.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double gap = (ends[i].Place - ends[j].Place).Length;
                if (ends[i].Chain != ends[j].Chain && gap < nearest.Item1) nearest = (gap, ends[j].Strand, ends[i].Strand, ends[j].Place);
            }
        }
        return nearest;
    }

    private static string At(Vec3 p, Func<double, string> show) => $"across {show(p.Y)}, up {show(p.Z)}";

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}
