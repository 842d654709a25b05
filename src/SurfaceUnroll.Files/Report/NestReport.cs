using System.Collections.Immutable;
using System.Text.Json;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of how pieces are laid out on sheets.</summary>
internal static class NestReport
{
    /// <summary>The layout; always there, null without stock.</summary>
    public static void Write(Utf8JsonWriter json, Development development)
    {
        if (development.Nest is not { } nest)
        {
            json.WriteNull("nest");
            return;
        }
        json.WriteStartObject("nest");
        json.WriteNumber("gap", ReportJson.Mm(development.Job.Nest.Gap));
        json.WriteNumber("use", nest.Use + 0.0);
        json.WriteStartArray("stock");
        foreach ((StockSheet stock, int count) in nest.Taken) WriteStock(json, stock, count);
        json.WriteEndArray();
        json.WriteStartArray("sheets");
        foreach (NestedSheet sheet in nest.Sheets) WriteSheet(json, development, sheet);
        json.WriteEndArray();
        json.WriteStartArray("tooLarge");
        foreach (int piece in nest.TooLarge) json.WriteStringValue(development.Panels[piece].Spec.Name);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteStock(Utf8JsonWriter json, StockSheet stock, int count)
    {
        json.WriteStartObject();
        json.WriteNumber("length", ReportJson.Mm(stock.Length));
        json.WriteNumber("width", ReportJson.Mm(stock.Width));
        json.WriteBoolean("grainAcross", stock.GrainAcross);
        if (stock.Count is { } have) json.WriteNumber("have", have);
        else json.WriteNull("have");
        json.WriteNumber("count", count);
        json.WriteEndObject();
    }

    private static void WriteSheet(Utf8JsonWriter json, Development development, NestedSheet sheet)
    {
        json.WriteStartObject();
        json.WriteNumber("length", ReportJson.Mm(sheet.Stock.Length));
        json.WriteNumber("width", ReportJson.Mm(sheet.Stock.Width));
        json.WriteNumber("use", sheet.Use + 0.0);
        json.WriteNumber("lengthUsed", ReportJson.Mm(sheet.LengthUsed));
        WritePieces(json, development, sheet.Placements);
        json.WriteEndObject();
    }

    /// <summary>The run of paper with all pieces; always there, null where there is none.</summary>
    public static void WriteTogether(Utf8JsonWriter json, Development development, (TilePlan Plan, ImmutableArray<NestPlacement> Placements)? together)
    {
        if (together is not var (plan, placements))
        {
            json.WriteNull("together");
            return;
        }
        json.WriteStartObject("together");
        PaperReport.Write(json, plan);
        WritePieces(json, development, placements);
        json.WriteEndObject();
    }

    private static void WritePieces(Utf8JsonWriter json, Development development, ImmutableArray<NestPlacement> placements)
    {
        json.WriteStartArray("pieces");
        foreach (NestPlacement placement in placements)
        {
            json.WriteStartObject();
            json.WriteString("name", development.Panels[placement.Panel].Spec.Name);
            json.WriteNumber("turnDeg", ReportJson.Degrees(placement.Turn));
            json.WritePropertyName("move");
            ReportJson.WritePoint(json, placement.Move);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }
}
