using System.Collections.Immutable;
using System.Text.Json;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of how far the edges of a blank may be off.</summary>
internal static class ErrorReport
{
    // The band is that of 95 of 100.
    private const double Probability = 0.95;

    /// <summary>The bands of one piece and the readings that they come from; left out where no reading has an error.</summary>
    public static void Write(Utf8JsonWriter json, PanelDevelopment panel, LengthUnit units)
    {
        if (panel.Error is not { } error) return;
        json.WriteStartObject("error");
        json.WriteString("method", error.Method == ErrorMethod.Linear ? "linear" : "random");
        json.WriteNumber("probability", Probability);
        if (error.Method == ErrorMethod.Random) json.WriteNumber("failed", error.Failed);
        json.WriteNumber("largest", ReportJson.Mm(error.Largest));
        json.WriteStartArray("edges");
        foreach (EdgeError edge in error.Edges) WriteEdge(json, edge, panel, units);
        json.WriteEndArray();
        json.WriteStartArray("readings");
        foreach (ReadingShare reading in error.Readings) WriteReading(json, reading);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteEdge(Utf8JsonWriter json, EdgeError edge, PanelDevelopment panel, LengthUnit units)
    {
        json.WriteStartObject();
        json.WriteString("name", edge.Name);
        json.WriteNumber("largest", ReportJson.Mm(edge.Largest));
        json.WriteString("words", ErrorWords.Leave(edge, panel, units));
        WriteSteps(json, "leave", edge.Leave);
        json.WriteStartArray("places");
        foreach (BandPlace place in edge.Places)
        {
            json.WriteStartObject();
            json.WriteNumber("at", ReportJson.Mm(place.At));
            json.WriteNumber("band", ReportJson.Mm(place.Band));
            json.WritePropertyName("flat");
            ReportJson.WritePoint(json, place.Flat);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Widths along an edge.</summary>
    public static void WriteSteps(Utf8JsonWriter json, string name, ImmutableArray<LeaveStep> steps)
    {
        json.WriteStartArray(name);
        foreach (LeaveStep step in steps)
        {
            json.WriteStartObject();
            json.WriteNumber("from", ReportJson.Mm(step.From));
            json.WriteNumber("to", ReportJson.Mm(step.To));
            json.WriteNumber("width", ReportJson.Mm(step.Width));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void WriteReading(Utf8JsonWriter json, ReadingShare reading)
    {
        json.WriteStartObject();
        json.WriteString("where", reading.Where);
        json.WriteString("what", reading.Words);
        if (reading.IsAngle) json.WriteNumber("errorDeg", ReportJson.Degrees(reading.Error));
        else json.WriteNumber("error", ReportJson.Mm(reading.Error));
        json.WriteNumber("share", Math.Round(reading.Share, 6));
        json.WriteNumber("moves", ReportJson.Mm(reading.Most));
        json.WriteString("edge", reading.Edge);
        json.WriteEndObject();
    }
}
