using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads what was measured on finished pieces.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="pieces">Names of all panels and pieces.</param>
/// <param name="edges">Names of their edges.</param>
internal sealed class BuiltReader(Measures measures, ImmutableArray<string> pieces, EdgeNames edges)
{
    private const string Example = "{ \"panel\": \"cover\", \"blank\": { \"a-c\": 480.5 }, \"part\": { \"a-c\": 239 }, \"edges\": { \"front\": 486 } }";

    // A tape reads to this, mm (common practice, no source).
    private const double Tape = 0.5;

    private const double MostError = 50;

    private static readonly (string Key, BuiltKind Kind)[] Kinds = [("blank", BuiltKind.Blank), ("part", BuiltKind.Part), ("sheet", BuiltKind.Sheet), ("edges", BuiltKind.Edge)];

    private readonly FaultList _faults = measures.Faults;

    /// <summary>What was measured: a list of pieces, or a single one.</summary>
    public ImmutableArray<BuiltSpec> Read(JobBlock job)
    {
        if (job.Find("built") is not { } tree) return [];
        if (tree is JsonObject) return [.. Piece(tree, "built")];
        return measures.List(tree, "built", $"[ {Example} ]") is not { } list ? [] : [.. list.Items.SelectMany((item, i) => Piece(item, $"built[{Measures.Count(i)}]"))];
    }

    private IEnumerable<BuiltSpec> Piece(JsonTree tree, string path)
    {
        if (JobBlock.Of(tree, path, _faults, Example) is not { } block) yield break;
        block.CheckKeys(["panel", "blank", "part", "sheet", "edges", "error"]);
        string? panel = block.Need("panel", "Name the panel, or the piece of a split one, that was measured.") is { } name ? measures.Text(name, block.PathOf("panel")) : null;
        bool known = panel is not null && PanelNames.Has(panel, pieces, block.PathOf("panel"), block.Find("panel")!, _faults);
        double error = block.Find("error") is { } own ? measures.Length(own, block.PathOf("error"), Allowed.Positive) : Tape;
        if (error > MostError) _faults.Add("error-range", block.PathOf("error"), block.Find("error")!.Place, $"A standard error of {measures.Show(error)} is past what can be used here, {measures.Show(MostError)}.", "Write by how much the tape is off as a rule.");
        BuiltReading[] readings = [.. Kinds.SelectMany(k => Readings(block, k.Key, k.Kind, known ? panel : null))];
        if (!Kinds.Any(k => block.Has(k.Key)))
            _faults.Add("built-nothing", path, block.Tree.Place, "Nothing was measured on this piece.", $"Write it like {Example}; the letters stand on the pattern.");
        if (panel is not null) yield return new BuiltSpec(panel, [.. readings], error, path);
    }

    private IEnumerable<BuiltReading> Readings(JobBlock piece, string key, BuiltKind kind, string? panel)
    {
        string example = kind == BuiltKind.Edge ? "{ \"front\": 486 }" : "{ \"a-c\": 480.5 }";
        if (piece.Find(key) is not { } tree || JobBlock.Of(tree, piece.PathOf(key), _faults, example) is not { } block) yield break;
        foreach (JsonMember member in block.Tree.Members)
        {
            string path = block.PathOf(member.Key);
            double length = measures.Length(member.Value, path, Allowed.Positive);
            if (kind == BuiltKind.Edge)
            {
                if (panel is not null) edges.Has(new EdgeName(panel, member.Key), path, member.Value);
                yield return new BuiltReading(path, kind, member.Key, "", length);
                continue;
            }
            string[] letters = member.Key.Split(['-', '–', ' '], StringSplitOptions.RemoveEmptyEntries);
            if (letters is [{ Length: 1 } from, { Length: 1 } to] && from != to && char.IsAsciiLetter(from[0]) && char.IsAsciiLetter(to[0]))
                yield return new BuiltReading(path, kind, from.ToLowerInvariant(), to.ToLowerInvariant(), length);
            else
                _faults.Add("built-pair", path, member.Place, $"\"{member.Key}\" does not name two lettered places.", "Write both letters as they stand on the pattern, such as \"a-c\".");
        }
    }
}
