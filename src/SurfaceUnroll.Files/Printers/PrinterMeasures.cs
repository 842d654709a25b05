using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.Printers;

/// <summary>What was measured on a printed test page, as typed, and what it says of the printer.</summary>
/// <param name="Scale">How the printer prints; null with a fault.</param>
/// <param name="Faults">What is wrong and how to mend it; all of it.</param>
/// <param name="Said">How it prints, in words; empty with a fault.</param>
/// <param name="Doubt">What is to be known though the measures can be used, and how to mend it; null if nothing.</param>
public sealed record PrinterMeasures(PrinterScale? Scale, ImmutableArray<(string Message, string? Mend)> Faults, string Said, (string Message, string Mend)? Doubt)
{
    /// <summary>Reads measures.</summary>
    /// <param name="name">Of the printer.</param>
    /// <param name="paper">The paper that the page was made for.</param>
    /// <param name="typed">Across and along, and where they were measured the diagonals up and down; plain numbers are millimetres.</param>
    /// <param name="order">How two or four measures are to be given.</param>
    public static PrinterMeasures Read(string name, PaperSpec paper, ImmutableArray<string> typed, string order)
    {
        LengthReading[] readings = [.. typed.Select(m => ShopLength.Parse(m, LengthUnit.Millimetre))];
        List<(string, string?)> faults =
        [
            .. readings.Zip(typed).Where(r => !r.First.IsLength || r.First.Millimetres <= 0)
                .Select(r => (r.First.IsLength ? $"“{r.Second}” is no length that can be measured." : $"“{r.Second}”: {r.First.Problem}", (string?)(r.First.IsLength ? "Measure the bar again." : r.First.Mend))),
        ];
        if (typed.Length is not (2 or 4)) faults.Add(($"Two measures belong here, or four with the diagonals, and not {typed.Length.ToString(CultureInfo.InvariantCulture)}.", order));
        if (faults.Count > 0) return new PrinterMeasures(null, [.. faults], "", null);
        double[] mm = [.. readings.Select(r => r.Millimetres)];
        PrinterTest test = PrinterTest.Of(name, PrinterTestPage.On(paper), mm[0], mm[1], mm.Length == 4 ? (mm[2], mm[3]) : null);
        return test.Scale is { } scale
            ? new PrinterMeasures(scale, [], Words(scale, mm.Length == 4), test.Problem.Length > 0 ? (test.Problem, test.Mend) : null)
            : new PrinterMeasures(null, [(test.Problem, test.Mend)], "", null);
    }

    private static string Words(PrinterScale scale, bool square) => string.Create(CultureInfo.InvariantCulture,
        $"prints {Percent(scale.Across)} across and {Percent(scale.Along)} along the paper, {(square ? $"{Math.Abs(scale.Skew) * 180 / Math.PI:0.00}° out of square" : "squareness not measured")}.");

    private static string Percent(double scale) => string.Create(CultureInfo.InvariantCulture, $"{100 * scale:0.00} %");
}
