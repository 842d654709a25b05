using System.Collections.Immutable;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>What was measured on finished pieces, in the words of the shop.</summary>
public static class BuiltWords
{
    // Ends of an edge that are off by amounts as near as this, mm, are off alike.
    private const double Alike = 0.5;

    /// <summary>A table of the lengths: headings and rows.</summary>
    public static (string[] Headings, ImmutableArray<string[]> Rows) Table(BuiltCheck check, LengthUnit units) => (
        ["As built", "Wanted", "Measured", "Off by", "Error", ""],
        [.. check.Differences.Select(d => new[]
        {
            What(d.Reading), ShopLength.Print(d.Wanted, units), ShopLength.Print(d.Reading.Length, units), Signed(d.Off, units), "±" + BendWords.FineLength(BlankError.Coverage * d.Error, units), d.IsWithin ? "within" : "BEYOND",
        })]);

    /// <summary>What was measured: <c>a–c on the blank</c>.</summary>
    public static string What(BuiltReading reading) => reading.Kind switch
    {
        BuiltKind.Edge => $"edge {reading.From}",
        BuiltKind.Part => $"{reading.From}–{reading.To} on the part, taut",
        BuiltKind.Sheet => $"{reading.From}–{reading.To} on the part, on the sheet",
        _ => $"{reading.From}–{reading.To} on the blank",
    };

    /// <summary>What to do, one sentence each.</summary>
    /// <param name="check">The comparison.</param>
    /// <param name="panel">The piece.</param>
    /// <param name="units">Units of the job.</param>
    public static IEnumerable<string> Sentences(BuiltCheck check, PanelDevelopment panel, LengthUnit units) => check.Finding switch
    {
        BuiltFinding.Within => ["All lengths are within their errors: nothing to correct."],
        BuiltFinding.Forming => ["No edge explains what is off, and the blank is right as far as it was measured: it is the forming. Bend it on, or open it, until the lengths come out."],
        BuiltFinding.Untold => ["The lengths do not tell which edge is off. Tape more of those in the plan of the piece, across all its edges."],
        _ when check.Either => [$"Either: {string.Join(" ", Correction(check.Corrections[0], panel, units))} Or: {string.Join(" ", Correction(check.Corrections[1], panel, units))} The lengths do not tell which; lay the pattern on the blank."],
        _ => check.Corrections.SelectMany(edge => Correction(edge, panel, units)),
    };

    private static IEnumerable<string> Correction(EdgeCorrection edge, PanelDevelopment panel, LengthUnit units)
    {
        bool first = Tells(edge.AtFirst, edge.ErrorFirst), last = Tells(edge.AtLast, edge.ErrorLast);
        if (first && last && Math.Abs(edge.AtFirst - edge.AtLast) <= Alike)
        {
            yield return Sentence(0.5 * (edge.AtFirst + edge.AtLast), edge.Edge, "all along");
            yield break;
        }
        (string start, string end) = Ends(edge.Edge, panel);
        if (first) yield return Sentence(edge.AtFirst, edge.Edge, $"at its {start} end ({edge.LetterFirst})");
        if (last) yield return Sentence(edge.AtLast, edge.Edge, $"at its {end} end ({edge.LetterLast})");
        // Both ends together are sure where neither is by itself.
        if (!first && !last) yield return Sentence(0.5 * (edge.AtFirst + edge.AtLast), edge.Edge, "in the mean of its length");

        string Sentence(double off, string name, string where) => off > 0
            ? $"Take {ShopLength.Print(off, units)} off the edge {name} {where}."
            : $"The edge {name} is {ShopLength.Print(-off, units)} short {where}: it cannot be put back; let its mate, or its joint, take it up.";
    }

    private static bool Tells(double amount, double error) => Math.Abs(amount) > BlankError.Coverage * error;

    private static (string First, string Last) Ends(string edge, PanelDevelopment panel) => !DrawingPlaces.HasSides(panel) ? ("first", "last")
        : edge is "front" or "rear" ? ("left", "right") : edge is "left" or "right" ? ("front", "rear") : ("first", "last");

    private static string Signed(double mm, LengthUnit units) => (mm > 0 ? "+" : mm < 0 ? "−" : "") + BendWords.FineLength(Math.Abs(mm), units);
}
