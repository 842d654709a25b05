using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>Errors of readings and what they ask for, in the words of the shop.</summary>
public static class ErrorWords
{
    /// <summary>What to leave on along an edge: <c>leave 2 mm (0–140 mm from the left), 1 mm (from 140 mm)</c>.</summary>
    public static string Leave(EdgeError edge, PanelDevelopment panel, LengthUnit units) => edge.Leave.All(s => s.Width == 0) ? "cut to the line" : "leave " + Steps(edge.Name, edge.Leave, panel, units);

    /// <summary>Widths along an edge: <c>2 mm (0–140 mm from the left), 1 mm (from 140 mm)</c>.</summary>
    /// <param name="edge">Name of the edge.</param>
    /// <param name="steps">From its first end to its last.</param>
    /// <param name="panel">The piece.</param>
    /// <param name="units">Units of the job.</param>
    public static string Steps(string edge, ImmutableArray<LeaveStep> steps, PanelDevelopment panel, LengthUnit units)
    {
        string from = !DrawingPlaces.HasSides(panel) ? " along it" : edge is "front" or "rear" ? " from the left" : edge is "left" or "right" ? " from the front" : " along it";
        string At(double length) => ShopLength.Print(length, units, 0);
        return steps.Length == 1
            ? Width(steps[0].Width, units)
            : string.Join(", ", steps.Select((s, i) =>
                $"{Width(s.Width, units)} ({(i == 0 ? $"0–{At(s.To)}{from}" : i == steps.Length - 1 ? $"from {At(s.From)}" : $"{ShopLength.PrintNumber(s.From, units, 0)}–{At(s.To)}")})"));
    }

    /// <summary>True where the cut line leaves on what the band asks for.</summary>
    public static bool IsLeftOn(PanelDevelopment panel, string edge) => panel.Allowances.Any(a => a.Edge == edge && !a.Steps.IsEmpty);

    /// <summary>One width: <c>2 mm</c>, <c>nothing</c>.</summary>
    public static string Width(double width, LengthUnit units) => width == 0 ? "nothing" : ShopLength.Print(width, units, 0);

    /// <summary>The band along an edge: <c>±0.4 to ±1.8 mm</c>.</summary>
    public static string Band(EdgeError edge, LengthUnit units)
    {
        string least = Fine(edge.Places.Min(p => p.Band), units), most = Fine(edge.Largest, units);
        string unit = ShopLength.Name(units);
        return least == most ? $"±{most} {unit}" : $"±{least} to ±{most} {unit}";
    }

    /// <summary>Which reading to look at first: <c>point 5 of “rear” (across), 62 % of it</c>.</summary>
    public static string First(ReadingShare reading) => $"{reading.Words}, {Percent(reading.Share)} of it";

    /// <summary>Standard error of a reading.</summary>
    public static string Error(ReadingShare reading, LengthUnit units) =>
        reading.IsAngle ? (reading.Error * 180 / Math.PI).ToString("0.##", CultureInfo.InvariantCulture) + "°" : $"{Fine(reading.Error, units)} {ShopLength.Name(units)}";

    /// <summary>A share of the whole.</summary>
    public static string Percent(double share) => share is > 0 and < 0.005 ? "under 1 %" : (100 * share).ToString("0", CultureInfo.InvariantCulture) + " %";

    /// <summary>How far one reading alone moves an edge.</summary>
    public static string Moves(ReadingShare reading, LengthUnit units) => $"{reading.Edge} by {Fine(reading.Most, units)} {ShopLength.Name(units)}";

    /// <summary>A table of the readings that matter most: headings and rows.</summary>
    /// <param name="error">What was found of a piece.</param>
    /// <param name="units">Units of the job.</param>
    /// <param name="most">So many rows at most.</param>
    public static (string[] Headings, ImmutableArray<string[]> Rows) Table(BlankError error, LengthUnit units, int most) => (
        ["Reading", "Its error", "Share", "Moves most"],
        [.. error.Readings.Take(most).Select(r => new[] { r.Words, Error(r, units), Percent(r.Share), Moves(r, units) })]);

    // Finer than a tape, so that what is added up can be seen: a hundredth of a millimetre, a thousandth of an inch.
    private static string Fine(double mm, LengthUnit units) => units == LengthUnit.Inch
        ? (mm / ShopLength.MillimetresPerInch).ToString("0.###", CultureInfo.InvariantCulture)
        : mm.ToString("0.##", CultureInfo.InvariantCulture);
}
