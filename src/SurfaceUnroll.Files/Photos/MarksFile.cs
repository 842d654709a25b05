using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.Photos;

/// <summary>What came of reading marks: them, or what keeps them from being used.</summary>
public sealed record MarksReading(MarkReference? Marks, ImmutableArray<Notice> Faults);

/// <summary>Reads marks and what was measured between them from text in columns: <c>name, x, y</c> is a tap in pixels; <c>name, x, y, across, up</c> a tap and the place of the mark;
/// <c>name, name, distance</c> what the tape said.</summary>
public static class MarksFile
{
    private const string Mend = "Write \"A, 812, 455\" for a tap, \"A, 812, 455, 0, 250\" for a tap and the place of the mark, \"A, B, 250\" for a distance.";

    private static readonly char[] Separators = [';', '\t', ','];

    /// <summary>Reads marks.</summary>
    /// <param name="bytes">The file; empty rows, rows that begin with # and a row of headings are passed over.</param>
    /// <param name="units">What plain lengths are in.</param>
    /// <param name="spread">Standard error of what was measured, mm.</param>
    public static MarksReading Read(byte[] bytes, LengthUnit units, double spread)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        (string[] Fields, int Line)[] rows = [.. Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n')
            .Select((text, i) => (Text: text.Trim(), Line: i + 1)).Where(r => r.Text.Length > 0 && r.Text[0] != '#').Select(r => (Fields(r.Text), r.Line))];
        var faults = ImmutableArray.CreateBuilder<Notice>();
        var marks = new List<PhotoMark>();
        var taped = new List<(string From, string To, double Length, int Line)>();
        foreach ((string[] fields, int line) in rows)
        {
            void Fault(string message, string mend) => faults.Add(new Notice("photo-marks-broken", Severity.Error, string.Create(CultureInfo.InvariantCulture, $"line {line}"), message, mend));
            double?[] pixels = [.. fields.Skip(1).Take(2).Select(Pixels)];
            // Marks that are called by numbers: once both have their taps, such a row is a distance.
            bool between = fields.Length == 3 && marks.Any(m => m.Name == fields[0]) && rows.Any(r => r.Fields[0] == fields[1]);
            if (fields.Length is 3 or 5 && !between && pixels.All(p => p is not null))
            {
                Vec2? place = fields.Length == 5 ? Place(fields[3], fields[4]) : null;
                if (fields.Length == 5 && place is null) Fault($"“{fields[3]}, {fields[4]}” is no place of a mark.", Mend);
                else if (fields[0].Length == 0) Fault("The mark has no name.", Mend);
                else if (marks.Any(m => m.Name == fields[0])) Fault($"There are two marks called {fields[0]}.", "Give each a name of its own.");
                else marks.Add(new PhotoMark(fields[0], new Vec2(pixels[0]!.Value, pixels[1]!.Value), place));
            }
            else if (fields.Length == 3 && Length(fields[2]) is { } length && length > 0) taped.Add((fields[0], fields[1], length, line));
            else if (marks.Count + taped.Count > 0 || fields.Skip(1).Any(f => Length(f) is not null)) Fault($"“{string.Join(", ", fields)}” is neither a tap nor a distance.", Mend);
        }
        var distances = ImmutableArray.CreateBuilder<TapedDistance>();
        foreach ((string from, string to, double length, int line) in taped)
        {
            int[] ends = [.. new[] { from, to }.Select(name => marks.FindIndex(m => m.Name == name))];
            string? absent = ends[0] < 0 ? from : ends[1] < 0 ? to : null;
            if (absent is not null) faults.Add(new Notice("photo-marks-broken", Severity.Error, string.Create(CultureInfo.InvariantCulture, $"line {line}"), $"There is no mark called {absent}.", $"The marks are {string.Join(", ", marks.Select(m => m.Name))}."));
            else if (ends[0] == ends[1]) faults.Add(new Notice("photo-marks-broken", Severity.Error, string.Create(CultureInfo.InvariantCulture, $"line {line}"), $"A distance from {from} to itself.", "Name two marks."));
            else distances.Add(new TapedDistance(ends[0], ends[1], length));
        }
        if (marks.Count == 0 && faults.Count == 0) faults.Add(new Notice("photo-marks-broken", Severity.Error, "line 1", "There are no marks in the file.", Mend));
        return faults.Count > 0 ? new MarksReading(null, faults.ToImmutable()) : new MarksReading(new MarkReference([.. marks], distances.ToImmutable(), spread), []);

        double? Length(string text) => ShopLength.Parse(text, units) is { IsLength: true } reading ? reading.Millimetres : null;
        Vec2? Place(string across, string up) => Length(across) is { } x && Length(up) is { } y ? new Vec2(x, y) : null;
    }

    private static string[] Fields(string row)
    {
        char between = Separators.FirstOrDefault(row.Contains, ' ');
        return [.. row.Split(between, between == ' ' ? StringSplitOptions.RemoveEmptyEntries : StringSplitOptions.None).Select(f => f.Trim().Trim('"').Trim())];
    }

    private static double? Pixels(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && Math.Abs(value) < 1e6 ? value : null;
}
