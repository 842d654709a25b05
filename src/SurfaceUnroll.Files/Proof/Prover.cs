using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Xml;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Proof;

/// <summary>How one file of a piece agrees with its print.</summary>
/// <param name="File">Name.</param>
/// <param name="Off">How far its line lies off, mm; NaN where it could not be compared.</param>
/// <param name="Problem">What is wrong; null if nothing.</param>
public sealed record ProvenFile(string File, double Off, string? Problem);

/// <summary>How the files of one piece, or of one sheet with pieces laid out on it, agree.</summary>
/// <param name="Piece">Its name.</param>
/// <param name="Files">PDF, DXF, SVG and OBJ; of a nested sheet DXF and SVG.</param>
public sealed record ProvenPiece(string Piece, ImmutableArray<ProvenFile> Files)
{
    /// <summary>All show one line, at 1:1.</summary>
    public bool Holds => Files.All(f => f.Problem is null);
}

/// <summary>Reads what a folder holds back from disk, with readers that share nothing with the writers, and compares it.</summary>
public static class Prover
{
    /// <summary>How far lines of two files may lie apart, mm.</summary>
    public const double Limit = 0.05;

    private const int Millimetres = 4;

    // Of check bars, mm: the shorter ones on small paper.
    private static readonly ImmutableArray<double> Lengths = [100, 50];

    // Half a kerf round a sharp corner the cut runs on to where its sides meet, or is cut off at so many half kerfs.
    private const double LongestTip = 3;

    /// <summary>Compares all pieces of a folder.</summary>
    /// <param name="folder">Into which a job was developed.</param>
    /// <returns>One for each piece of the report, then for its sheets with pieces laid out on them; or why there is nothing to compare.</returns>
    public static (ImmutableArray<ProvenPiece> Pieces, string? Problem) Of(string folder)
    {
        string path = Path.Combine(folder, "report.json");
        if (!File.Exists(path)) return ([], $"There is no report.json in {folder}.");
        try
        {
            using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(path));
            double kerf = report.RootElement.TryGetProperty("cutting", out JsonElement cutting) ? cutting.GetProperty("kerf").GetDouble() : 0;
            return ([.. report.RootElement.GetProperty("panels").EnumerateArray().Select(p => Piece(folder, p, kerf)), .. LaidProver.Of(folder, report.RootElement)], null);
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return ([], $"The report.json in {folder} cannot be read.");
        }
    }

    private static ProvenPiece Piece(string folder, JsonElement panel, double kerf)
    {
        string name = panel.GetProperty("name").GetString()!, file = Path.Combine(folder, Slug.Of(name));
        LineSet? print = null;
        ProvenFile pdf = Proven(file + ".pdf", path =>
        {
            (LineSet cut, string? problem) = Printed(path, panel.GetProperty("paper"), Lines(panel, "cut", "cut"));
            print = cut.IsEmpty ? null : cut;
            // Against the lines of the report, which place it in the frame of the others.
            return (print is null ? double.NaN : Apart(print, Lines(panel, "cut", "cut")), problem);
        });
        ProvenFile Against(string path, Func<string, (LineSet Lines, string? Problem)> read, double apart) => Proven(path, p =>
        {
            (LineSet lines, string? problem) = read(File.ReadAllText(p));
            if (lines.IsEmpty) return (double.NaN, "has no cut line");
            return (print is null ? double.NaN : Apart(lines, print, apart), problem);
        });
        return new ProvenPiece(name,
        [
            pdf,
            Against(file + ".dxf", text => DxfCut.Read(text, "CUT") is var (lines, unit) ? (lines, unit is null or Millimetres ? null : "is not in millimetres") : default, 0.5 * kerf),
            Against(file + ".svg", text => SvgCut.Read(text, "cut") is var (lines, unit) ? (lines, Math.Abs(unit - 1) < 1e-6 ? null : string.Create(CultureInfo.InvariantCulture, $"is not at 1:1: a unit is {unit:0.####} mm")) : default, 0.5 * kerf),
            // The formed sheet has no allowances: its rim is the finished edge.
            Proven(file + ".obj", path => (Apart(ObjRim.Read(File.ReadAllText(path)), Lines(panel, panel.TryGetProperty("net", out _) ? "net" : "cut", "flat")), null)),
        ]);
    }

    internal static ProvenFile Proven(string path, Func<string, (double Off, string? Problem)> compare)
    {
        string name = Path.GetFileName(path);
        if (!File.Exists(path)) return new ProvenFile(name, double.NaN, "is not there");
        try
        {
            (double off, string? problem) = compare(path);
            return new ProvenFile(name, off, problem ?? (off > Limit ? "shows another line" : double.IsNaN(off) ? "has nothing to be compared with" : null));
        }
        catch (Exception e) when (e is FormatException or XmlException or IOException or UnauthorizedAccessException or InvalidOperationException or ArgumentException)
        {
            return new ProvenFile(name, double.NaN, e is FormatException ? e.Message : "cannot be read");
        }
    }

    // The taped print, turned back as it was turned for the paper, and laid over the cut line of the report by the corner of its box.
    internal static (LineSet Cut, string? Problem) Printed(string path, JsonElement paper, LineSet meant)
    {
        double turn = -paper.GetProperty("turnDeg").GetDouble() * Math.PI / 180;
        bool level = paper.GetProperty("landscape").GetBoolean();
        Func<Vec2, Vec2> place = paper.TryGetProperty("printer", out JsonElement printer) ? ComesOut(printer, level) : p => p;
        ImmutableArray<PrintedSheet> pages = PrintedSheet.Read(File.ReadAllBytes(path), place);
        (LineSet cut, string? problem) = TapedCut.Of(pages);
        if (cut.IsEmpty) return (cut, problem);
        Vec2 shift = meant.Bounds.Min - cut.Placed(p => p.Rotate(turn)).Bounds.Min;
        return (cut.Placed(p => p.Rotate(turn) + shift), problem ?? Bars(pages));
    }

    // Where a place of a page comes out of the printer that it was made for.
    private static Func<Vec2, Vec2> ComesOut(JsonElement printer, bool level)
    {
        double across = printer.GetProperty("across").GetDouble(), along = printer.GetProperty("along").GetDouble(), skew = printer.GetProperty("skewDeg").GetDouble() * Math.PI / 180;
        Vec2 Upright(Vec2 p) => new(across * p.X + along * Math.Sin(skew) * p.Y, along * Math.Cos(skew) * p.Y);
        // A level page is fed with its left side ahead or behind: both come to the same.
        return p => level ? -Upright(p.Left).Left : Upright(p);
    }

    // Bars of 100 or of 50 mm, both ways, on every tile.
    private static string? Bars(ImmutableArray<PrintedSheet> pages)
    {
        foreach (PrintedSheet tile in pages.Where(p => p.IsTile))
        {
            Vec2[] lines = [.. tile.LinesOf(PrintedSheet.Narrow).Where(path => path.Length == 2).Select(path => path[1] - path[0])];
            bool True(double length, Func<Vec2, double> off) => lines.Any(d => Math.Abs(d.Length - length) < Limit && Math.Abs(off(d)) < Limit);
            if (!Lengths.Any(length => True(length, d => d.X) && True(length, d => d.Y))) return "has a sheet whose check bars are not true";
        }
        return null;
    }

    // Closed lines of the report: the outline, and of openings and inner cuts.
    internal static LineSet Lines(JsonElement panel, string outline, string opening)
    {
        IEnumerable<JsonElement> List(string key) => panel.TryGetProperty(key, out JsonElement list) ? list.EnumerateArray() : [];
        return new LineSet(
        [
            Closed(panel.GetProperty(outline)), .. List("openings").Select(o => Closed(o.GetProperty(opening))),
            .. outline == "cut" ? List("innerCuts").Select(Closed) : [],
        ]);

        static ImmutableArray<Vec2> Closed(JsonElement list)
        {
            ImmutableArray<Vec2> path = [.. list.EnumerateArray().Select(p => new Vec2(p[0].GetDouble(), p[1].GetDouble()))];
            return path.Add(path[0]);
        }
    }

    // How far lines lie off others from which they should keep a distance, mm.
    internal static double Apart(LineSet lines, LineSet others, double apart = 0)
    {
        (double least, double greatest) = lines.DistancesTo(others, apart > 0 ? others.Corners(LongestTip * apart + Limit) : _ => false);
        double back = others.DistancesTo(lines, _ => false).Greatest;
        // Back, the cut may lie farther off where it cannot reach into an inner corner.
        return Math.Max(Math.Max(greatest - apart, apart - least), back - LongestTip * apart);
    }
}
