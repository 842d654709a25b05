using System.Text.Json;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of finished pieces that were measured.</summary>
internal static class BuiltReport
{
    /// <summary>The comparisons; left out where nothing was measured.</summary>
    public static void Write(Utf8JsonWriter json, Development development)
    {
        if (development.Built.IsEmpty) return;
        json.WriteStartArray("built");
        foreach (BuiltCheck check in development.Built)
        {
            json.WriteStartObject();
            json.WriteString("panel", check.Panel);
            json.WriteString("finding", check.Finding switch { BuiltFinding.Within => "within", BuiltFinding.Edges => "edges", BuiltFinding.Forming => "forming", _ => "untold" });
            json.WriteBoolean("either", check.Either);
            json.WriteStartArray("lengths");
            foreach (BuiltDifference difference in check.Differences) WriteDifference(json, difference);
            json.WriteEndArray();
            json.WriteStartArray("corrections");
            foreach (EdgeCorrection edge in check.Corrections) WriteCorrection(json, edge);
            json.WriteEndArray();
            json.WriteStartArray("words");
            foreach (string sentence in BuiltWords.Sentences(check, development.Panels.First(p => p.Spec.Name == check.Panel), development.Job.Units)) json.WriteStringValue(sentence);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void WriteDifference(Utf8JsonWriter json, BuiltDifference difference)
    {
        json.WriteStartObject();
        json.WriteString("where", difference.Reading.Where);
        json.WriteString("what", BuiltWords.What(difference.Reading));
        json.WriteNumber("wanted", ReportJson.Mm(difference.Wanted));
        json.WriteNumber("measured", ReportJson.Mm(difference.Reading.Length));
        json.WriteNumber("off", ReportJson.Mm(difference.Off));
        json.WriteNumber("errorTape", ReportJson.Mm(difference.Tape));
        json.WriteNumber("errorDesign", ReportJson.Mm(difference.Design));
        json.WriteBoolean("within", difference.IsWithin);
        json.WriteEndObject();
    }

    private static void WriteCorrection(Utf8JsonWriter json, EdgeCorrection edge)
    {
        json.WriteStartObject();
        json.WriteString("edge", edge.Edge);
        json.WriteNumber("first", ReportJson.Mm(edge.AtFirst));
        json.WriteNumber("last", ReportJson.Mm(edge.AtLast));
        json.WriteNumber("errorFirst", ReportJson.Mm(edge.ErrorFirst));
        json.WriteNumber("errorLast", ReportJson.Mm(edge.ErrorLast));
        json.WriteString("nearFirst", edge.LetterFirst);
        json.WriteString("nearLast", edge.LetterLast);
        json.WriteEndObject();
    }
}
