using System.Text.Json;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting.Nearest;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of a curve that was moved so that its sheet only bends.</summary>
internal static class FreedomReport
{
    public static void Write(Utf8JsonWriter json, FreedomFit fit, StrainSummary after)
    {
        json.WriteStartObject("freedom");
        json.WriteString("curve", fit.Spec.Curve);
        json.WriteNumber("most", ReportJson.Mm(fit.Spec.Most));
        json.WriteNumber("largest", ReportJson.Mm(Math.Abs(fit.Largest.Move)));
        json.WriteNumber("largestAt", ReportJson.Mm(fit.Largest.Length));
        json.WriteNumber("rms", ReportJson.Mm(fit.Mean));
        json.WriteStartObject("before");
        json.WriteNumber("twistMaxDeg", ReportJson.Degrees(fit.Twist.Max));
        json.WriteNumber("twistMeanDeg", ReportJson.Degrees(fit.Twist.Mean));
        if (fit.Strain is { } strain) ReportJson.WriteStrain(json, "strain", strain);
        json.WriteEndObject();
        json.WriteStartObject("after");
        ReportJson.WriteStrain(json, "strain", after);
        json.WriteEndObject();
        json.WriteStartArray("edge");
        foreach (EdgeMove move in fit.Moves)
        {
            json.WriteStartObject();
            json.WriteNumber("at", ReportJson.Mm(move.Length));
            json.WriteNumber("move", ReportJson.Mm(move.Move));
            json.WritePropertyName("was");
            ReportJson.WritePoint(json, move.Was);
            json.WritePropertyName("is");
            ReportJson.WritePoint(json, move.Is);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
