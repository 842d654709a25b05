using System.Text.Json;
using SurfaceUnroll.Drawings;

namespace SurfaceUnroll.Files.Report;

/// <summary>How a pattern lies on paper, in the report.</summary>
internal static class PaperReport
{
    /// <summary>Writes <c>paper</c>.</summary>
    public static void Write(Utf8JsonWriter json, TilePlan plan)
    {
        json.WriteStartObject("paper");
        json.WriteString("size", plan.Paper.Size.Name);
        json.WriteBoolean("landscape", plan.IsLandscape);
        json.WriteNumber("width", ReportJson.Mm(plan.Given.Width));
        json.WriteNumber("height", ReportJson.Mm(plan.Given.Height));
        json.WriteNumber("sheets", plan.Printed.Count());
        json.WriteNumber("turnDeg", ReportJson.Degrees(plan.Turn));
        // Of a roll its length, mm.
        if (plan.CostUnturned is { } unturned) json.WriteNumber(plan.Paper.Size.IsRoll ? "lengthUnturned" : "sheetsUnturned", ReportJson.Mm(unturned));
        if (plan.Paper.Printer is { } printer)
        {
            json.WriteStartObject("printer");
            json.WriteString("name", printer.Name);
            json.WriteNumber("across", printer.Across);
            json.WriteNumber("along", printer.Along);
            json.WriteNumber("skewDeg", ReportJson.Degrees(printer.Skew));
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }
}
