using System.Globalization;
using System.Text.Json;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Proof;

/// <summary>Compares the files on which several pieces are laid out with those of the single pieces: each is there, turned and moved, and neither mirrored nor scaled.</summary>
internal static class LaidProver
{
    private const string Stale = "is not of this job: an earlier run left it here";

    private static readonly string[] Endings = [".dxf", ".svg"];

    /// <summary>Sheets with nested pieces, and the run of paper with all pieces, as far as the folder has them.</summary>
    /// <param name="folder">Into which a job was developed.</param>
    /// <param name="report">Of the job.</param>
    public static IEnumerable<ProvenPiece> Of(string folder, JsonElement report)
    {
        JsonElement[] sheets = [.. Found(report, "nest") is { } nest ? nest.GetProperty("sheets").EnumerateArray() : Enumerable.Empty<JsonElement>()];
        foreach (int number in NestedFiles(folder))
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"nested-{number}"), file = Path.Combine(folder, name);
            yield return new ProvenPiece(name,
            [
                .. Endings.Where(ending => File.Exists(file + ending)).Select(ending => Prover.Proven(file + ending, path =>
                    number < 1 || number > sheets.Length ? (double.NaN, Stale)
                        // As they are cut: with the kerf, like the files of the single pieces, each of one kind.
                        : (Prover.Apart(Cuts(path), Laid(sheets[number - 1], piece => Cuts(Path.Combine(folder, Slug.Of(piece) + ending)))), null))),
            ]);
        }
        string run = Path.Combine(folder, "all-pieces.pdf");
        if (!File.Exists(run)) yield break;
        yield return new ProvenPiece("all pieces",
        [
            Prover.Proven(run, path =>
            {
                if (Found(report, "together") is not { } together) return (double.NaN, Stale);
                JsonElement[] panels = [.. report.GetProperty("panels").EnumerateArray()];
                LineSet meant = Laid(together, piece => Prover.Lines(panels.First(p => p.GetProperty("name").GetString() == piece), "cut", "cut"));
                (LineSet cut, string? problem) = Prover.Printed(path, together.GetProperty("paper"), meant);
                return (cut.IsEmpty ? double.NaN : Prover.Apart(cut, meant), problem);
            }),
        ]);
    }

    private static JsonElement? Found(JsonElement report, string key) => report.TryGetProperty(key, out JsonElement found) && found.ValueKind == JsonValueKind.Object ? found : null;

    private static IEnumerable<int> NestedFiles(string folder) => Directory.EnumerateFiles(folder, "nested-*").Where(f => Path.GetExtension(f) is ".dxf" or ".svg")
        .Select(f => int.TryParse(Path.GetFileNameWithoutExtension(f)["nested-".Length..], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : -1)
        .Where(number => number >= 0).Distinct().Order();

    private static LineSet Cuts(string path) =>
        path.EndsWith(".dxf", StringComparison.Ordinal) ? DxfCut.Read(File.ReadAllText(path), "CUT").Lines : SvgCut.Read(File.ReadAllText(path), "cut").Lines;

    // The lines of every piece, turned and moved as the report says.
    private static LineSet Laid(JsonElement sheet, Func<string, LineSet> lines) => new(
    [
        .. from piece in sheet.GetProperty("pieces").EnumerateArray()
           let turn = piece.GetProperty("turnDeg").GetDouble() * Math.PI / 180
           let move = new Vec2(piece.GetProperty("move")[0].GetDouble(), piece.GetProperty("move")[1].GetDouble())
           from path in lines(piece.GetProperty("name").GetString()!).Placed(p => p.Rotate(turn) + move).Paths
           select path,
    ]);
}
