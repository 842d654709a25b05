using System.Globalization;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Cli;

/// <summary>Prints what was traced.</summary>
internal static class TracingText
{
    /// <summary>Writes residuals, the curve and the line for the job.</summary>
    public static void Write(Screen screen, TraceWords words, PhotoTrace trace, PhotoReference reference, GreyPhoto photo, LengthUnit units)
    {
        TracedCurve curve = trace.Curve!;
        TextWriter to = screen.Out;
        to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{words.Photo}: {photo.Width} by {photo.Height} pixels, {Reference(reference)}"));
        to.WriteLine();
        TextTable.Write(screen, ["reference", "off by, mm", "to the right", "up"], [.. curve.Scale.Residuals.Select(Row)]);
        if (curve.Scale.Residuals.Any(r => !r.Counts)) to.WriteLine("Corners are where the sides cross; their taps only lead there.");
        to.WriteLine();
        Line("Lens bow", curve.Scale.BowIsKnown
            ? string.Create(CultureInfo.InvariantCulture, $"{100 * curve.Scale.Camera.Bow:0.0;−0.0;0.0} % at the corner of the photo, taken out")
            : "not known from this reference; the stated error allows for it");
        Line("Curve", string.Create(CultureInfo.InvariantCulture, $"{curve.Points.Length} points, {ShopLength.Print(curve.Length, units)} along"));
        Line("Check", $"{ShopLength.Print(curve.Chord, units)} straight from end to end: lay a tape there, for a photo does not tell how large a thing is");
        Line("Stated error", $"{ErrorText.Of(curve.Error)}: no place is farther off in 95 of 100 photos");
        foreach (Notice f in trace.Findings) FaultText.Write(to, "", $"{(f.Severity == Severity.Warning ? "warning" : "note")}: {f.Message}", f.Mend);
        to.WriteLine();
        to.WriteLine($"Written to {words.Out}{(words.Picture is null ? "" : $"; the line over the photo to {words.Picture}")}. In a job beside it:");
        to.WriteLine($"  \"front\": {{ \"file\": \"{Path.GetFileName(words.Out)}\", \"fileUnits\": \"{ShopLength.Name(units)}\", \"error\": \"{ErrorText.OfReadings(curve.Error)}\" }}");

        void Line(string label, string value) => to.WriteLine($"  {label,-12}  {value}");
    }

    private static string Reference(PhotoReference reference) => reference switch
    {
        SheetReference s => string.Create(CultureInfo.InvariantCulture, $"measured by a sheet of {s.Width:0.##} by {s.Height:0.##} mm (across by up)"),
        MarkReference m => string.Create(CultureInfo.InvariantCulture, $"measured by {m.Marks.Length} marks and {(m.IsTaped ? $"{m.Distances.Length} distances" : "their places")}"),
        _ => "",
    };

    private static string[] Row(ReferenceResidual r)
    {
        string Mm(double value) => (Math.Round(value, 2) + 0.0).ToString("0.00;−0.00;0.00", CultureInfo.InvariantCulture);
        return [r.Name, Mm(r.Off.Length), r.OneWay ? "" : Mm(r.Off.X), r.OneWay ? "" : Mm(r.Off.Y)];
    }
}
