using System.Globalization;
using System.Text;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Files.Photos;

/// <summary>Writes a traced curve as a table that a job's <c>file</c> reads.</summary>
public static class TracedCsv
{
    // Ends the first row; by it the table is known for what it is.
    private const string Ending = " in 95 of 100 photos";

    /// <summary>A table begins as those that are written here do: its points are places along one line, and none was read by itself.</summary>
    /// <param name="firstRow">Its first row.</param>
    public static bool IsOne(string firstRow)
    {
        ArgumentNullException.ThrowIfNull(firstRow);
        return firstRow.StartsWith('#') && firstRow.TrimEnd().TrimEnd(',', ';', '\t').EndsWith(Ending, StringComparison.Ordinal);
    }

    /// <summary>The file.</summary>
    /// <param name="curve">Curve.</param>
    /// <param name="said">What was traced on what, for its first row.</param>
    /// <param name="perUnit">Millimetres of the unit that the table is in.</param>
    public static byte[] Write(TracedCurve curve, string said, double perUnit)
    {
        ArgumentNullException.ThrowIfNull(curve);
        var text = new StringBuilder();
        // Three decimals of a millimetre, four of an inch: both far below what a photo tells.
        string format = perUnit == 1 ? "0.###" : "0.####";
        string Number(double mm) => (Math.Round(mm / perUnit, 4) + 0.0).ToString(format, CultureInfo.InvariantCulture);
        text.Append(CultureInfo.InvariantCulture, $"# {said.ReplaceLineEndings(" ")}; in {(perUnit == 1 ? "mm" : "inches")}, true within {ErrorText.Of(curve.Error)}{Ending}\n");
        bool corners = curve.Points.Any(p => p.Corner);
        text.Append(corners ? "across,up,note\n" : "across,up\n");
        foreach (ProfilePoint p in curve.Points) text.Append(Number(p.Place.X)).Append(',').Append(Number(p.Place.Y)).Append(!corners ? "" : p.Corner ? ",corner" : ",").Append('\n');
        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
