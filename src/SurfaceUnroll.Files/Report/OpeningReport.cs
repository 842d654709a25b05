using System.Text.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of a hole or opening.</summary>
internal static class OpeningReport
{
    public static void Write(Utf8JsonWriter json, BlankOpening opening)
    {
        json.WriteStartObject();
        json.WriteString("name", opening.Name);
        json.WriteString("size", opening.Size);
        json.WritePropertyName("formedCentre");
        ReportJson.WritePoint(json, opening.FormedCentre);
        json.WritePropertyName("centre");
        ReportJson.WritePoint(json, opening.Centre);
        json.WriteNumber("formedArea", ReportJson.Mm(opening.FormedArea));
        json.WriteNumber("flatArea", ReportJson.Mm(opening.FlatArea));
        ReportJson.WritePoints(json, "flat", opening.Flat);
        ReportJson.WritePoints(json, "cut", opening.Cut);
        json.WriteEndObject();
    }
}
