using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Checks that every panel has a name of its own and that its files can be called by it.</summary>
internal sealed class PanelNames(FaultList faults)
{
    private const int LongestFileName = 80;

    // NAME-preview.svg is written beside NAME.svg, and NAME-moved-edge.pdf beside NAME.pdf.
    private static readonly ImmutableArray<string> Endings = ["-preview", "-moved-edge"];

    // nested-1.dxf, nested-1.svg and so on are written for the sheets of the stock.
    private const string NestedSheet = "nested-";

    private readonly Dictionary<string, (string Name, int Line)> _taken = [];

    /// <summary>Checks one more name.</summary>
    /// <param name="name">Of the panel.</param>
    /// <param name="pieces">Names of the pieces that it may be split into; none if it stays whole.</param>
    /// <param name="path">Path of the name.</param>
    /// <param name="place">Where it stands.</param>
    public void Add(string name, IEnumerable<string> pieces, string path, TextPlace place)
    {
        string file = Slug.Of(name);
        if (file.Length == 0)
        {
            faults.Add("panel-name", path, place, $"The panel name \"{name}\" has neither letters nor digits, and its files are called by it.", "Give it a name such as \"cover\".");
            return;
        }
        if (file.Length > LongestFileName)
            faults.Add("panel-name", path, place, $"The panel name is too long for a file name: {Measures.Count(file.Length)} characters of at most {Measures.Count(LongestFileName)}.", "Shorten it.");
        if (IsReserved(file))
            faults.Add("panel-name", path, place, $"Windows keeps the name \"{file}\" for itself, so no file can be called by it.", $"Add a word to it, such as \"{name} panel\".");
        if (OfWholeJob(file) is { } other)
            faults.Add("panel-name", path, place, $"The files of \"{name}\" would be called like {other}.", $"Add a word to it, such as \"{name} panel\".");
        if (!_taken.TryAdd(file, (name, place.Line))) Collides(name, path, place, file);
        else if (Beside(file) is { } beside) Collides(name, path, place, beside);
        else if (pieces.FirstOrDefault(piece => !_taken.TryAdd(Slug.Of(piece), (piece, place.Line))) is { } twice) Collides(twice, path, place, Slug.Of(twice));
    }

    /// <summary>Names of the pieces of a split panel.</summary>
    /// <param name="panel">Name of the panel.</param>
    /// <param name="count">Pieces in all.</param>
    public static IEnumerable<string> Pieces(string panel, int count) => count < 2 ? [] : Enumerable.Range(1, count).Select(k => $"{panel} {Measures.Count(k)} of {Measures.Count(count)}");

    /// <summary>True if there is a panel of this name; a fault if not.</summary>
    public static bool Has(string name, ImmutableArray<string> panels, string path, JsonTree at, FaultList faults) =>
        faults.Knows(name, panels, "panel", path, at, "Give the panels names.");

    // Another panel whose files are called like one that is written beside those of this, or the other way round.
    private string? Beside(string file) => Endings
        .SelectMany(ending => new[] { file + ending, file.EndsWith(ending, StringComparison.Ordinal) ? file[..^ending.Length] : "" })
        .FirstOrDefault(_taken.ContainsKey);

    private void Collides(string name, string path, TextPlace place, string file)
    {
        (string other, int line) = _taken[file];
        string what = name == other ? $"The name \"{name}\" is taken by the panel in line {Measures.Count(line)}."
            : $"The files of \"{name}\" would be called like those of \"{other}\" in line {Measures.Count(line)}.";
        faults.Add("panel-name-twice", path, place, what, "Give each panel a name of its own, that no piece of a split panel has (\"cover 1 of 2\"); in file names only letters and digits count.");
    }

    // What is written under a name for the whole job; null if nothing.
    private static string? OfWholeJob(string file) => file switch
    {
        "shop-sheet" => "the sheet for the wall of the shop",
        "all-pieces" => "the print of all pieces together",
        _ when file == "nesting" || IsNestedSheet(file) => "those of the sheets that the pieces are nested on",
        _ => null,
    };

    private static bool IsNestedSheet(string file) => file.StartsWith(NestedSheet, StringComparison.Ordinal) && file.Length > NestedSheet.Length && file.AsSpan(NestedSheet.Length).IndexOfAnyExceptInRange('0', '9') < 0;

    private static bool IsReserved(string file) =>
        file is "con" or "prn" or "aux" or "nul" || (file.Length == 4 && char.IsAsciiDigit(file[3]) && (file[..3] is "com" or "lpt"));
}
