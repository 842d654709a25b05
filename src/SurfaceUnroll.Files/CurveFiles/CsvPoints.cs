using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>One point of a CSV file.</summary>
/// <param name="Values">Two or three, in units of the file.</param>
/// <param name="Corner">The word “corner” stands in its row.</param>
/// <param name="Line">From 1.</param>
internal readonly record struct CsvPoint(ImmutableArray<double> Values, bool Corner, int Line);

/// <summary>What came of reading a CSV file.</summary>
/// <param name="Points">In the order of the file, all of two values or all of three.</param>
/// <param name="Faults">What keeps it from being used.</param>
internal sealed record CsvReading(ImmutableArray<CsvPoint> Points, ImmutableArray<FileFault> Faults)
{
    /// <summary>It was traced on a photo.</summary>
    public bool Traced { get; init; }
}

/// <summary>Reads points from text in columns: between them semicolons, tabs, commas or spaces, or what a first row such as <c>sep=;</c> says; a decimal comma where it cannot be one
/// between columns, or in quotes; lengths with units; a row of names first or not; empty rows and rows that begin with # are passed over.</summary>
internal sealed partial class CsvPoints
{
    /// <summary>Most points of a curve. A spline through more has more pieces than any part has shape.</summary>
    public const int MostPoints = 5000;

    private readonly FileFaults _faults = new();
    private readonly (string[] Fields, int Line)[] _rows;
    private readonly bool _commas, _traced;
    private readonly double _unit;

    private CsvPoints(string text, double unit)
    {
        _unit = unit;
        string[] lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        _traced = TracedCsv.IsOne(lines[0]);
        (string Text, int Line)[] rows = [.. lines.Select((row, i) => (row.Trim('\r', '\n', ' '), i + 1)).Where(r => r.Item1.Trim().Length > 0 && r.Item1.TrimStart()[0] != '#')];
        char? said = rows.Length > 0 && Separator().Match(rows[0].Text) is { Success: true } match ? match.Groups[1].Value[0] : null;
        if (said is not null) rows = rows[1..];
        char between = said ?? (rows.Any(r => r.Text.Contains(';', StringComparison.Ordinal)) ? ';'
            : rows.Any(r => r.Text.Contains('\t', StringComparison.Ordinal)) ? '\t'
            : rows.Any(r => r.Text.Contains(',', StringComparison.Ordinal)) && !rows.Any(r => SpacesAndCommas().IsMatch(r.Text)) ? ','
            : ' ');
        _commas = between == ',';
        _rows = [.. rows.Select(r => (Fields(said is null ? r.Text.Trim() : r.Text, between), r.Line))];
    }

    // Between quotes that begin a field stands what may hold the mark between columns; two of them are one. An inch mark begins no field.
    private static string[] Fields(string row, char between)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < row.Length; i++)
        {
            char c = row[i];
            if (quoted && c == '"' && i + 1 < row.Length && row[i + 1] == '"') field.Append(row[++i]);
            else if (quoted && c == '"') quoted = false;
            else if (!quoted && c == '"' && field.ToString().Trim().Length == 0) quoted = true;
            else if (!quoted && c == between) End();
            else field.Append(c);
        }
        End();
        return [.. between == ' ' ? fields.Where(f => f.Length > 0) : fields];

        void End()
        {
            fields.Add(field.ToString().Trim());
            field.Clear();
        }
    }

    /// <summary>The points.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="columns">Names or numbers, from 1, of two or three columns; empty where the file has no others.</param>
    /// <param name="unit">Millimetres of the unit that plain numbers are in.</param>
    public static CsvReading Read(byte[] bytes, ImmutableArray<string> columns, double unit)
    {
        bool wide = bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..];
        if (!wide && bytes.AsSpan(0, Math.Min(bytes.Length, 256)).Contains((byte)0))
            return new CsvReading([], [new FileFault("csv-broken", 0, "This is no text in columns, but a binary file.", "Save the table as CSV.")]);
        // The marks at its start tell the encoding, UTF-8 without.
        using var stream = new StreamReader(new MemoryStream(bytes));
        var reader = new CsvPoints(stream.ReadToEnd(), unit);
        ImmutableArray<CsvPoint> points = reader.Points(columns);
        return new CsvReading(reader._faults.Any ? [] : points, reader._faults.InOrder()) { Traced = reader._traced };
    }

    private ImmutableArray<CsvPoint> Points(ImmutableArray<string> columns)
    {
        if (_rows.Length == 0)
        {
            _faults.Add("csv-broken", 0, "There is nothing in the file.", "Save the table again, with one point a row.");
            return [];
        }
        bool hasNames = !_rows[0].Fields.Any(f => Number(f) is not null);
        ImmutableArray<(string[] Fields, int Line)> rows = [.. _rows.Skip(hasNames ? 1 : 0)];
        if (Chosen(columns, hasNames ? _rows[0].Fields : [], rows) is not { } chosen) return [];
        if (rows.Length > MostPoints)
            _faults.Add("csv-broken", rows[MostPoints].Line, string.Create(CultureInfo.InvariantCulture, $"The file has more than {MostPoints:N0} points."), "Keep every tenth: a smooth curve needs no more.");
        else if (rows.Length < 2)
            _faults.Add("csv-broken", 0, "A curve needs at least two points.", "Give one point a row, two values in each.");
        return _faults.Any ? [] : [.. rows.Select(r => Point(r, chosen)).TakeWhile(_ => !_faults.Full)];
    }

    private CsvPoint Point((string[] Fields, int Line) row, int[] chosen)
    {
        var values = ImmutableArray.CreateBuilder<double>();
        foreach (int column in chosen)
        {
            if (column >= row.Fields.Length)
            {
                _faults.Add("csv-broken", row.Line, string.Create(CultureInfo.InvariantCulture, $"Here is no column {column + 1}: the row has {row.Fields.Length}."), "Give every row as many values as the others.");
                values.Add(double.NaN);
                continue;
            }
            double? value = Number(row.Fields[column]);
            if (value is null) _faults.Add("csv-broken", row.Line, $"{FileFaults.Show(row.Fields[column])} is no number.", "Write a plain number, such as 12.5 or, where columns are not parted by commas, 12,5.");
            values.Add(value ?? double.NaN);
        }
        bool corner = row.Fields.Where((_, i) => !chosen.Contains(i)).Any(f => f.Equals("corner", StringComparison.OrdinalIgnoreCase));
        return new CsvPoint(values.ToImmutable(), corner, row.Line);
    }

    // Columns by their places; null with a fault.
    private int[]? Chosen(ImmutableArray<string> columns, string[] names, ImmutableArray<(string[] Fields, int Line)> rows)
    {
        int count = Math.Max(names.Length, rows.IsEmpty ? 0 : rows.Max(r => r.Fields.Length));
        if (columns.IsEmpty && _commas && names.Length < 4 && DecimalCommas(rows))
        {
            _faults.Add("csv-columns", rows[0].Line, $"Decimals seem to be written with commas here, like those between the columns: {FileFaults.Show(string.Join(",", rows.MaxBy(r => r.Fields.Length).Fields))}.", "Save the table with semicolons between the columns, or with points for decimals.");
            return null;
        }
        if (columns.IsEmpty)
        {
            int[] numbers = [.. Enumerable.Range(0, count).Where(c => rows.All(r => c < r.Fields.Length && !IsWord(r.Fields[c])))];
            // Beside columns of those names another counts the rows.
            int across = Named("across"), up = Named("up");
            if (numbers.Contains(across) && numbers.Contains(up)) return [across, up];
            if (numbers.Length is 2 or 3) return numbers;
            // Every row short of a value would leave no column whole: then the first two are meant, and the row is named.
            if (count is 2 or 3) return [.. Enumerable.Range(0, 2)];
            string has = names.Length > 0 ? $"The columns are {string.Join(", ", names)}." : string.Create(CultureInfo.InvariantCulture, $"There are {count} columns.");
            _faults.Add("csv-columns", rows.IsEmpty ? 0 : rows[0].Line, $"A curve takes two columns, or three in space. {has}", "Say which: \"columns\": [1, 2], or by the names in the first row.");
            return null;
        }
        var chosen = new List<int>();
        foreach (string column in columns)
        {
            int at = Named(column);
            if (at < 0 && int.TryParse(column, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= count) at = number - 1;
            if (at >= 0) chosen.Add(at);
            else _faults.Add("csv-columns", 0, $"There is no column {FileFaults.Show(column)}.", names.Length > 0 ? $"The columns are {string.Join(", ", names)}." : string.Create(CultureInfo.InvariantCulture, $"The file has {count}, without names; count them from 1."));
        }
        return chosen.Count == columns.Length ? [.. chosen] : null;

        int Named(string column) => Array.FindIndex(names, n => n.Equals(column, StringComparison.OrdinalIgnoreCase));
    }

    private static bool IsWord(string field) => field.Length == 0 || field.Equals("corner", StringComparison.OrdinalIgnoreCase);

    // Four whole numbers, in some rows perhaps three or two: two values with decimals or without.
    private static bool DecimalCommas(ImmutableArray<(string[] Fields, int Line)> rows) =>
        !rows.IsEmpty && rows.Max(r => r.Fields.Length) == 4 && rows.All(r => r.Fields.Length >= 2 && r.Fields.All(f => Whole().IsMatch(f)));

    private double? Number(string field)
    {
        string text = field.Replace('\u2212', '-');
        // In a field of its own a comma parts no columns.
        if (text.Count(c => c == ',') == 1 && !text.Contains('.', StringComparison.Ordinal)) text = text.Replace(',', '.');
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)) return Math.Abs(value) <= 1e9 ? value : null;
        return ShopLength.Parse(text, LengthUnit.Millimetre) is { IsLength: true } reading ? reading.Millimetres / _unit : null;
    }

    [GeneratedRegex(@"^""?sep=(.)""?$", RegexOptions.IgnoreCase)]
    private static partial Regex Separator();

    [GeneratedRegex(@"^[-+\u2212]?\d+$")]
    private static partial Regex Whole();

    // Columns parted by spaces whose numbers have decimal commas: no space follows a comma.
    [GeneratedRegex(@"^[-+\d.]+,\d+(\s+[-+\d.]+(,\d+)?)+$")]
    private static partial Regex SpacesAndCommas();
}
