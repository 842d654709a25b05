using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.Report;

/// <summary>Writes <c>report.json</c>: everything computed for a job, in millimetres and degrees.</summary>
public static class ReportJson
{
    /// <summary>Name and version written as the report's <c>generator</c>.</summary>
    public static string Generator { get; } = $"surfaceunroll {typeof(ReportJson).Assembly.GetName().Version?.ToString(3)}";

    private const int AngleDecimals = 9;

    /// <summary>The report.</summary>
    /// <param name="development">The job.</param>
    /// <param name="papers">How the pattern of each panel lies on paper, in their order; none where it was not printed.</param>
    /// <param name="cuts">Drawing for cutting machines of each panel; null: made for it.</param>
    /// <param name="together">How all pieces lie on one run of paper; null where they were not printed so.</param>
    /// <returns>UTF-8 JSON, indented, ended by a line feed.</returns>
    public static byte[] Write(Development development, ImmutableArray<TilePlan> papers = default, IReadOnlyList<Drawing>? cuts = null, (TilePlan Plan, ImmutableArray<NestPlacement> Placements)? together = null)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("job", development.Job.Name);
            json.WriteString("generator", Generator);
            WriteCutting(json, development.Job.Cutting);
            json.WriteStartArray("panels");
            cuts ??= [.. development.Panels.Select(p => CutFitting.Of(PatternDrawing.Of(p, development.Job, development.Joints), development.Job.Cutting))];
            for (int i = 0; i < development.Panels.Length; i++) WritePanel(json, development.Panels[i], cuts[i], papers.IsDefaultOrEmpty ? null : papers[i], development.Job.Units);
            json.WriteEndArray();
            JointReport.Write(json, development);
            FormingReport.Write(json, development);
            NestReport.Write(json, development);
            NestReport.WriteTogether(json, development, together);
            BuiltReport.Write(json, development);
            WriteNotices(json, development);
            WriteTimings(json, development);
            json.WriteEndObject();
        }
        buffer.WriteByte((byte)'\n');
        return buffer.ToArray();
    }

    /// <summary>The verdict in the report's words.</summary>
    public static string Words(Verdict verdict) => verdict switch
    {
        Verdict.BendsOnly => "bends only",
        Verdict.NeedsStretching => "needs stretching",
        _ => "past the limit",
    };

    private static void WriteCutting(Utf8JsonWriter json, CuttingSpec cutting)
    {
        json.WriteStartObject("cutting");
        json.WriteNumber("kerf", Mm(cutting.Kerf));
        json.WriteString("dxf", cutting.Dxf == DxfVersion.R12 ? "r12" : "r2000");
        json.WriteString("lettering", cutting.Lettering == CutLettering.Strokes ? "strokes" : "text");
        json.WriteEndObject();
    }

    private static void WritePanel(Utf8JsonWriter json, PanelDevelopment panel, Drawing cut, TilePlan? paper, LengthUnit units)
    {
        json.WriteStartObject();
        json.WriteString("name", panel.Spec.Name);
        json.WriteString("kind", panel.Spec.Kind);
        if (panel.Piece is { } piece)
        {
            json.WriteStartObject("piece");
            json.WriteString("panel", piece.Panel);
            json.WriteNumber("number", piece.Number);
            json.WriteNumber("count", piece.Count);
            json.WriteEndObject();
        }
        json.WriteString("verdict", Words(panel.Verdict));
        WriteTwist(json, "twist", panel.Twist);
        WriteTwist(json, "even", panel.EvenTwist);
        WriteStrain(json, "strain", panel.Strain);
        json.WriteNumber("limit", panel.Limit);
        if (panel.Freedom is { } freedom) FreedomReport.Write(json, freedom, panel.JudgedStrain);
        StrainReport.Write(json, panel);
        json.WriteNumber("formedArea", Mm(panel.FormedArea));
        json.WriteNumber("flatArea", Mm(panel.FlatArea));
        Box blank = Box.Around(panel.Cut);
        json.WriteStartObject("blank");
        json.WriteNumber("width", Mm(blank.Width));
        json.WriteNumber("height", Mm(blank.Height));
        json.WriteEndObject();
        WriteEdges(json, panel);
        WriteElements(json, panel);
        WritePoints(json, "cut", panel.Cut);
        json.WriteNumber("cutSegments", CutFitting.Segments(cut));
        ErrorReport.Write(json, panel, units);
        FittingReport.Write(json, panel);
        FormingReport.Write(json, panel);
        if (paper is not null) PaperReport.Write(json, paper);
        json.WriteEndObject();
    }

    internal static void WriteStrain(Utf8JsonWriter json, string name, StrainSummary strain)
    {
        json.WriteStartObject(name);
        json.WriteNumber("maxStretch", strain.MaxStretch + 0.0);
        json.WriteNumber("maxShrink", strain.MaxShrink + 0.0);
        json.WriteNumber("energy", strain.Energy + 0.0);
        json.WriteEndObject();
    }

    private static void WriteTwist(Utf8JsonWriter json, string name, TwistSummary twist)
    {
        json.WriteStartObject(name);
        json.WriteNumber("maxDeg", Degrees(twist.Max));
        json.WriteNumber("meanDeg", Degrees(twist.Mean));
        json.WriteEndObject();
    }

    private static void WriteEdges(Utf8JsonWriter json, PanelDevelopment panel)
    {
        json.WriteStartArray("edges");
        foreach (BlankEdge edge in panel.Edges)
        {
            json.WriteStartObject();
            json.WriteString("name", edge.Name);
            json.WriteNumber("formedLength", Mm(edge.FormedLength));
            json.WriteNumber("flatLength", Mm(edge.FlatLength));
            WritePoints(json, "flat", edge.Flat);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void WriteElements(Utf8JsonWriter json, PanelDevelopment panel)
    {
        json.WriteStartArray("elements");
        foreach (ElementLine line in panel.Elements)
        {
            json.WriteStartObject();
            if (line.Number > 0) json.WriteNumber("number", line.Number);
            else json.WriteNull("number");
            json.WritePropertyName("front");
            WritePoint(json, line.Front);
            json.WritePropertyName("rear");
            WritePoint(json, line.Rear);
            json.WriteNumber("length", Mm(line.Length));
            json.WriteNumber("frontLength", Mm(line.FrontLength));
            json.WriteNumber("rearLength", Mm(line.RearLength));
            json.WriteNumber("twistDeg", Degrees(line.Twist));
            WriteRadius(json, "bendRadiusFront", line.BendRadiusFront);
            WriteRadius(json, "bendRadiusRear", line.BendRadiusRear);
            json.WriteBoolean("bendsOutward", line.BendsOutward);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    // Flat metal has no bend radius, and JSON has no infinity.
    internal static void WriteRadius(Utf8JsonWriter json, string name, double radius)
    {
        if (double.IsFinite(radius)) json.WriteNumber(name, Mm(radius));
        else json.WriteNull(name);
    }

    private static void WriteNotices(Utf8JsonWriter json, Development development)
    {
        json.WriteStartArray("notices");
        foreach (Notice notice in development.Notices)
        {
            json.WriteStartObject();
            json.WriteString("code", notice.Code);
            json.WriteString("severity", Words(notice.Severity));
            json.WriteString("where", notice.Where);
            json.WriteString("message", notice.Message);
            if (notice.Mend is not null) json.WriteString("mend", notice.Mend);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    // The one part of the outputs that differs from run to run.
    private static void WriteTimings(Utf8JsonWriter json, Development development)
    {
        json.WriteStartArray("timingsMs");
        foreach ((string step, double milliseconds) in development.Timings)
        {
            json.WriteStartObject();
            json.WriteString("step", step);
            json.WriteNumber("ms", Math.Round(milliseconds, 1));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static string Words(Severity severity) => severity switch
    {
        Severity.Note => "note",
        Severity.Warning => "warning",
        _ => "error",
    };

    internal static void WritePoints(Utf8JsonWriter json, string name, IEnumerable<Vec2> points)
    {
        json.WriteStartArray(name);
        foreach (Vec2 p in points)
        {
            WritePoint(json, p);
        }
        json.WriteEndArray();
    }

    // A point on one line: an indented pair would take four.
    internal static void WritePoint(Utf8JsonWriter json, Vec2 p)
    {
        var text = new StringBuilder("[", 48);
        text.Append(PlainNumber.Mm(p.X)).Append(", ").Append(PlainNumber.Mm(p.Y)).Append(']');
        json.WriteRawValue(text.ToString(), skipInputValidation: true);
    }

    internal static void WritePoint(Utf8JsonWriter json, Vec3 p) =>
        json.WriteRawValue($"[{PlainNumber.Mm(p.X)}, {PlainNumber.Mm(p.Y)}, {PlainNumber.Mm(p.Z)}]", skipInputValidation: true);

    internal static double Mm(double value) => PlainNumber.Rounded(value, PlainNumber.LengthDecimals);

    internal static double Degrees(double radians) => PlainNumber.Rounded(radians * 180 / Math.PI, AngleDecimals);
}
