using System.Collections.Immutable;
using System.Text.Json;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of a sharp bend.</summary>
internal static class BendReport
{
    public static void Write(Utf8JsonWriter json, BendLine bend)
    {
        json.WriteStartObject();
        json.WriteNumber("number", bend.Number);
        if (bend.Lip is { } lip) json.WriteString("lip", lip);
        else json.WriteNull("lip");
        json.WriteNumber("angleDeg", ReportJson.Degrees(bend.Angle));
        json.WriteNumber("leastAngleDeg", ReportJson.Degrees(bend.LeastAngle));
        json.WriteNumber("greatestAngleDeg", ReportJson.Degrees(bend.GreatestAngle));
        json.WriteNumber("insideRadius", ReportJson.Mm(bend.InsideRadius));
        json.WriteString("direction", bend.Up ? "up" : "down");
        json.WriteNumber("k", bend.Length.K + 0.0);
        json.WriteNumber("allowance", ReportJson.Mm(bend.Length.Allowance));
        json.WriteNumber("setback", ReportJson.Mm(bend.Length.Setback));
        json.WriteNumber("deduction", ReportJson.Mm(bend.Length.Deduction));
        json.WriteString("source", bend.Length.Source);
        ReportJson.WritePoints(json, "centre", bend.Centre);
        json.WriteStartArray("tangents");
        foreach (ImmutableArray<Vec2> line in bend.Tangents) FittingReport.WriteLoop(json, line);
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
