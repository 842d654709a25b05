using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Stops.FittingUp;

/// <summary>What the text of a job says of its pieces and their edges, also while something in it cannot be read.</summary>
public static class FitText
{
    private static readonly string[] Kinds = ["loft", "flat", "bent", "mesh"];

    private static readonly string[] FourSides = ["front", "right", "rear", "left"];

    // Of a long pattern of holes the first few are enough to choose from: the others can be typed in the file.
    private const int MostOfPattern = 12;

    /// <summary>Names of the curves, in the order of the job.</summary>
    public static ImmutableArray<string> Curves(JobText text) => text.Find("curves") is { Kind: JobValueKind.Block } curves ? curves.Keys : [];

    /// <summary>Names of the pieces; of those without a name an empty one.</summary>
    public static ImmutableArray<string> Panels(JobText text) => [.. text.Inside("panels").Select(p => text.Shown(p.Under("name")))];

    /// <summary>What a piece is made of: loft, flat, bent or mesh; empty if that is not said.</summary>
    public static string Kind(JobText text, string panel) => Kinds.FirstOrDefault(k => text.Find(JobPath.Under(panel, k)) is not null) ?? "";

    /// <summary>The edges that can be joined, as PANEL/EDGE.</summary>
    /// <param name="text">The job.</param>
    /// <param name="development">Its last development, which knows the straight lines that close a plate; null if there is none.</param>
    public static ImmutableArray<string> Edges(JobText text, Development? development)
    {
        ImmutableArray<JobValue> shared = text.Inside("openings");
        var edges = new List<string>();
        foreach (JobValue panel in text.Inside("panels"))
        {
            if (text.Shown(panel.Under("name")) is not { Length: > 0 } name) continue;
            string[] own =
            [
                .. Sides(text, panel.Path), .. Named(text, panel.Under("holes"), "hole"), .. Named(text, panel.Under("openings"), "opening"), .. Named(text, panel.Under("trims"), "trim"),
                .. shared.Select((o, i) => (o, i)).Where(s => text.Inside(s.o.Under("through")).Any(t => t.Shown == name)).SelectMany(s => OfPattern(text, s.o.Path, Name(text, s.o.Path, "shared opening", s.i))),
                .. (development?.Panels.FirstOrDefault(p => p.Spec.Name == name)?.Edges ?? []).Select(e => e.Name).Where(n => n.StartsWith("chord", StringComparison.Ordinal)),
            ];
            edges.AddRange(Pieces(text, panel.Path, name).SelectMany(piece => own.Distinct().Select(edge => $"{piece}/{edge}")));
        }
        return [.. edges.Distinct()];
    }

    /// <summary>What a hole, opening or trim is called: its name, or its kind and its number.</summary>
    public static string Name(JobText text, string path, string kind, int index) =>
        text.Shown(JobPath.Under(path, "name")) is { Length: > 0 } name ? name : $"{kind} {(index + 1).ToString(CultureInfo.InvariantCulture)}";

    /// <summary>A name that none of these is yet: the word, or the word with a number.</summary>
    public static string Free(IEnumerable<string> taken, string word)
    {
        HashSet<string> all = [.. taken];
        return Enumerable.Range(1, all.Count + 1).Select(i => i == 1 ? word : $"{word} {i.ToString(CultureInfo.InvariantCulture)}").First(n => !all.Contains(n));
    }

    private static IEnumerable<string> Sides(JobText text, string panel) => Kind(text, panel) switch
    {
        "mesh" => ["rim"],
        "flat" => CurvesAt(text, JobPath.Under(panel, "flat")),
        "bent" when text.Find(JobPath.Under(panel, "bent.width")) is null => CurvesAt(text, JobPath.Under(panel, "bent.plan")),
        _ => FourSides,
    };

    // One name, or a list of them; a curve that is measured in place is the outline.
    private static IEnumerable<string> CurvesAt(JobText text, string path) => text.Find(path) switch
    {
        { Kind: JobValueKind.Text } one => [one.Shown],
        { Kind: JobValueKind.List } => text.Inside(path).Select(v => v.Shown),
        { Kind: JobValueKind.Block } => ["outline"],
        _ => [],
    };

    private static IEnumerable<string> Named(JobText text, string list, string kind) => text.Inside(list).SelectMany((v, i) => OfPattern(text, v.Path, Name(text, v.Path, kind, i)));

    // Each of a pattern has its number behind the name.
    private static IEnumerable<string> OfPattern(JobText text, string path, string name)
    {
        string pattern = JobPath.Under(path, "pattern");
        if (text.Find(pattern) is null) return [name];
        int Count(string key) => int.TryParse(text.Shown(JobPath.Under(pattern, key)), NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 1;
        int all = text.Find(JobPath.Under(pattern, "ring")) is not null ? Count("ring") : Math.Min(Count("across"), 1000) * Math.Min(Count("up"), 1000);
        return Enumerable.Range(1, Math.Min(all, MostOfPattern)).Select(k => $"{name} {k.ToString(CultureInfo.InvariantCulture)}");
    }

    private static IEnumerable<string> Pieces(JobText text, string panel, string name) =>
        int.TryParse(text.Shown(JobPath.Under(panel, "pieces")), NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count is >= 2 and <= 6
            ? Enumerable.Range(1, count).Select(k => string.Create(CultureInfo.InvariantCulture, $"{name} {k} of {count}"))
            : [name];
}
