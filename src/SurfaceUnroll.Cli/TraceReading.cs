using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Cli;

/// <summary>The words of <c>trace</c>, understood.</summary>
/// <param name="Sheet">Null where marks are named, or with faults.</param>
/// <param name="Edge">Null with faults.</param>
/// <param name="Frame">Axes of the curve.</param>
/// <param name="Units">What plain lengths are in, and the table that is written.</param>
/// <param name="Spread">Standard error of what was measured, mm.</param>
/// <param name="Faults">Every one.</param>
internal sealed record TraceReading(
    SheetReference? Sheet, PhotoEdge? Edge, TraceFrame Frame, LengthUnit Units, double Spread, ImmutableArray<(string Place, string Message, string Mend)> Faults)
{
    private const string Corners = "Write four places in pixels: --corners 310,1480 1620,1500 1570,560 350,540 (lower left, lower right, upper right, upper left).";

    /// <summary>Reads the words; opens no file.</summary>
    public static TraceReading Of(TraceWords words)
    {
        var faults = ImmutableArray.CreateBuilder<(string, string, string)>();
        void Fault(string place, string message, string mend) => faults.Add((place, message, mend));
        LengthUnit units = Word(words.Units, "--units", Fault, ("mm", LengthUnit.Millimetre), ("in", LengthUnit.Inch));
        bool centred = Word(words.Zero, "--zero", Fault, ("ends", true), ("reference", false));
        EdgeKind? kind = Word<EdgeKind?>(words.Follow, "--follow", Fault, ("edge", EdgeKind.Edge), ("line", EdgeKind.Line), ("taps", null));
        double spread = HowWell(words.Tape, units, Fault);
        if (words.Sheet is null == words.Marks is null)
            Fault("surfaceunroll", words.Sheet is null ? "What is measured by is not named." : "A sheet and marks are named; one photo is measured by one of them.", "Name a sheet (--sheet A4 --corners …) or marks (--marks MARKS.csv).");
        if (!words.Corners.IsEmpty && words.Sheet is null) Fault("--corners", "Corners go with a sheet.", "Name it: --sheet A4.");
        ImmutableArray<EdgeTap>? corners = words.Sheet is null ? null : Taps(words.Corners, "--corners", Fault);
        SheetReference? sheet = null;
        if (corners is { } four)
        {
            if (four.Length != 4 || four.Any(c => c.Corner)) Fault("--corners", string.Create(CultureInfo.InvariantCulture, $"A sheet has four corners; {four.Length} are given."), Corners);
            else
            {
                (sheet, string problem, string mend) = ReferenceText.Sheet(words.Sheet!, [.. four.Select(c => c.At)], units, spread);
                if (sheet is null) Fault("--sheet", problem, mend);
            }
        }
        ImmutableArray<EdgeTap>? taps = Taps(words.Edge, "--edge", Fault);
        if (taps is { Length: < 2 }) Fault("--edge", "The edge has no taps, or only one.", "Write where it begins, where it bends and where it ends, in pixels: --edge 300,900 700,620,corner 1100,640.");
        if (words.Out is null) Fault("--out", "The file to write the curve to is not named.", "Name a file that ends in .csv: --out CURVE.csv.");
        else if (!words.Out.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)) Fault(words.Out, "The curve is written as a table of points.", "Name a file that ends in .csv: --out CURVE.csv.");
        if (words.Picture is { } picture && !picture.EndsWith(".png", StringComparison.OrdinalIgnoreCase)) Fault(picture, "The picture is written as PNG.", "Name a file that ends in .png.");
        if (words.Picture is { } drawn && SameFile(drawn, words.Photo)) Fault(drawn, "The picture would overwrite the photo.", "Name another file with --picture.");
        if (words.Out is { } table && words.Marks is { } marks && SameFile(table, marks)) Fault(table, "The curve would overwrite the table of marks.", "Name another file with --out.");
        return new TraceReading(sheet, taps is { } t ? new PhotoEdge(t, kind) : null, new TraceFrame(words.Level, centred), units, spread, faults.ToImmutable());
    }

    private static bool SameFile(string a, string b) => string.Equals(Path.GetFullPath(a), Path.GetFullPath(b), StringComparison.OrdinalIgnoreCase);

    private static T Word<T>(string? word, string option, Action<string, string, string> fault, params (string Word, T Meaning)[] known)
    {
        foreach ((string name, T meaning) in known)
            if (name.Equals(word ?? known[0].Word, StringComparison.OrdinalIgnoreCase)) return meaning;
        fault(option, $"“{word}” is not a word that it takes.", $"It can be {string.Join(", ", known.Select(k => k.Word))}.");
        return known[0].Meaning;
    }

    private static double HowWell(string? text, LengthUnit units, Action<string, string, string> fault)
    {
        if (text is null) return HandErrors.Tape;
        if (ShopLength.Parse(text, units) is { IsLength: true, Millimetres: >= 0.01 and <= 20 } reading) return reading.Millimetres;
        fault("--tape", $"“{text}” does not say how well it was measured: that can be 0.01 to 20 mm.", $"Give the error that two of three measures keep to, such as {ShopLength.Print(HandErrors.Tape, units)}.");
        return HandErrors.Tape;
    }

    // “812,455” or “812,455,corner”; null with faults.
    private static ImmutableArray<EdgeTap>? Taps(ImmutableArray<string> words, string option, Action<string, string, string> fault)
    {
        var taps = ImmutableArray.CreateBuilder<EdgeTap>();
        bool good = true;
        foreach (string word in words)
        {
            string[] parts = word.Split(',');
            bool corner = parts.Length == 3 && parts[2].Trim().Equals("corner", StringComparison.OrdinalIgnoreCase);
            if ((parts.Length == 2 || corner) && Number(parts[0]) is { } x && Number(parts[1]) is { } y) taps.Add(new EdgeTap(new Vec2(x, y), corner));
            else
            {
                fault(option, $"“{word}” is no place in the photo.", "Write pixels to the right and pixels down, with a comma and no space: 812,455.");
                good = false;
            }
        }
        return good ? taps.ToImmutable() : null;
    }

    private static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && Math.Abs(value) < 1e6 ? value : null;
}
