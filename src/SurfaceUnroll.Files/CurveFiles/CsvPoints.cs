using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>One point of a CSV file.</summary>
/// <param name="Values">Two or three, in units of the file.</param>
/// <param name="Corner">The word “corner” stands in its row.</param>
/// <param name="Line">From 1.</param>
internal readonly record struct CsvPoint(ImmutableArray<double> Values, bool Corner, int Line);

/// <summary>What came of reading a CSV file.</summary>
/// <param name="Points">In the order of the file, all of two values or all of three.</param>
/// <param name="Faults">What keeps it from being used.</param>
internal sealed record CsvReading(ImmutableArray<CsvPoint> Points, ImmutableArray<FileFault> Faults);

/// <summary>Reads points from text in columns: between them semicolons, tabs, commas or spaces; a decimal comma where it cannot be one between columns; a row of names first or not;
/// empty rows and rows that begin with # are passed over.</summary>
internal sealed partial class CsvPoints
{
    /// <summary>Most points of a curve. A spline through more has more pieces than any part has shape.</summary>
    public const int MostPoints = 5000;

    private readonly FileFaults _faults = new();
    private readonly (string[] Fields, int Line)[] _rows;
    private readonly bool _decimalComma;

    private CsvPoints(byte[] bytes)
    {
        string[] lines = Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        (string Text, int Line)[] rows = [.. lines.Select((text, i) => (text.Trim(), i + 1)).Where(r => r.Item1.Length > 0 && r.Item1[0] != '#')];
        char between = rows.Any(r => r.Text.Contains(';', StringComparison.Ordinal)) ? ';'
            : rows.Any(r => r.Text.Contains('\t', StringComparison.Ordinal)) ? '\t'
            : rows.Any(r => r.Text.Contains(',', StringComparison.Ordinal)) && !rows.Any(r => SpacesAndCommas().IsMatch(r.Text)) ? ','
            : ' ';
        _decimalComma = between != ',';
        _rows = [.. rows.Select(r => (r.Text.Split(between, between == ' ' ? StringSplitOptions.RemoveEmptyEntries : StringSplitOptions.None).Select(f => f.Trim().Trim('"').Trim()).ToArray(), r.Line))];
    }

    /// <summary>The points.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="columns">Names or numbers, from 1, of two or three columns; empty where the file has no others.</param>
    public static CsvReading Read(byte[] bytes, ImmutableArray<string> columns)
    {
        if (bytes.AsSpan(0, Math.Min(bytes.Length, 256)).Contains((byte)0))
            return new CsvReading([], [new FileFault("csv-broken", 0, "This is no text in columns, but a binary file.", "Save the table as CSV.")]);
        var reader = new CsvPoints(bytes);
        ImmutableArray<CsvPoint> points = reader.Points(columns);
        return new CsvReading(reader._faults.Any ? [] : points, reader._faults.InOrder());
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
        if (columns.IsEmpty)
        {
            int[] numbers = [.. Enumerable.Range(0, count).Where(c => rows.All(r => c < r.Fields.Length && !IsWord(r.Fields[c])))];
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
            int at = Array.FindIndex(names, n => n.Equals(column, StringComparison.OrdinalIgnoreCase));
            if (at < 0 && int.TryParse(column, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= count) at = number - 1;
            if (at >= 0) chosen.Add(at);
            else _faults.Add("csv-columns", 0, $"There is no column {FileFaults.Show(column)}.", names.Length > 0 ? $"The columns are {string.Join(", ", names)}." : string.Create(CultureInfo.InvariantCulture, $"The file has {count}, without names; count them from 1."));
        }
        return chosen.Count == columns.Length ? [.. chosen] : null;
    }

    private static bool IsWord(string field) => field.Length == 0 || field.Equals("corner", StringComparison.OrdinalIgnoreCase);

    private double? Number(string field)
    {
        string text = field.Replace('\u2212', '-');
        if (_decimalComma && text.Count(c => c == ',') == 1 && !text.Contains('.', StringComparison.Ordinal)) text = text.Replace(',', '.');
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && Math.Abs(value) <= 1e9 ? value : null;
    }

    // Columns parted by spaces whose numbers have decimal commas: no space follows a comma.
    [GeneratedRegex(@"^[-+\d.]+,\d+(\s+[-+\d.]+(,\d+)?)+$")]
    private static partial Regex SpacesAndCommas();
}
