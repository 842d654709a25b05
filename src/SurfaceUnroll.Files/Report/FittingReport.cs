using System.Collections.Immutable;
using System.Text.Json;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of a panel's bends, openings, marks, allowances and notches, and where its area comes from.</summary>
internal static class FittingReport
{
    public static void Write(Utf8JsonWriter json, PanelDevelopment panel)
    {
        // A plate has every list, also an empty one, so that a reader need not ask.
        bool always = panel.Spec.Kind is "flat" or "bent";
        if (!panel.Net.AsSpan().SequenceEqual(panel.Cut.AsSpan())) ReportJson.WritePoints(json, "net", panel.Net);
        List(json, "bends", always, panel.Bends, BendReport.Write);
        List(json, "openings", always, panel.Openings, OpeningReport.Write);
        List(json, "innerCuts", always, panel.InnerCuts, WriteLoop);
        List(json, "marks", always, panel.Marks, WriteMark);
        List(json, "allowances", always, panel.Allowances, WriteAllowance);
        List(json, "notches", always, panel.Notches, WriteNotch);
        if (panel.Areas.Blank > 0) WriteAreas(json, panel.Areas);
    }

    /// <summary>A polyline without a name.</summary>
    internal static void WriteLoop(Utf8JsonWriter json, ImmutableArray<Vec2> points)
    {
        json.WriteStartArray();
        foreach (Vec2 p in points) ReportJson.WritePoint(json, p);
        json.WriteEndArray();
    }

    private static void List<T>(Utf8JsonWriter json, string name, bool always, ImmutableArray<T> items, Action<Utf8JsonWriter, T> write)
    {
        if (items.IsEmpty && !always) return;
        json.WriteStartArray(name);
        foreach (T item in items) write(json, item);
        json.WriteEndArray();
    }

    private static void WriteMark(Utf8JsonWriter json, MatchMark mark)
    {
        json.WriteStartObject();
        json.WriteString("joint", mark.Joint);
        json.WriteNumber("number", mark.Number);
        json.WriteString("label", JointWords.Label(mark));
        json.WriteString("edge", mark.Edge);
        json.WriteNumber("at", ReportJson.Mm(mark.At));
        json.WritePropertyName("flat");
        ReportJson.WritePoint(json, mark.Flat);
        json.WritePropertyName("inward");
        ReportJson.WritePoint(json, mark.Inward);
        json.WritePropertyName("formed");
        ReportJson.WritePoint(json, mark.Formed);
        json.WriteEndObject();
    }

    private static void WriteAllowance(Utf8JsonWriter json, EdgeAllowance allowance)
    {
        json.WriteStartObject();
        json.WriteString("edge", allowance.Edge);
        json.WriteString("joint", allowance.Joint);
        json.WriteString("kind", JointWords.Word(allowance.Kind));
        json.WriteNumber("width", ReportJson.Mm(allowance.Width));
        json.WriteString("corners", JointWords.Word(allowance.Corners));
        if (!allowance.Steps.IsEmpty) ErrorReport.WriteSteps(json, "steps", allowance.Steps);
        json.WriteEndObject();
    }

    private static void WriteNotch(Utf8JsonWriter json, LipNotch notch)
    {
        json.WriteStartObject();
        json.WriteString("edge", notch.Edge);
        json.WriteNumber("at", ReportJson.Mm(notch.At));
        json.WriteNumber("width", ReportJson.Mm(notch.Width));
        ReportJson.WritePoints(json, "outline", notch.Outline);
        json.WriteEndObject();
    }

    private static void WriteAreas(Utf8JsonWriter json, AreaAccount areas)
    {
        json.WriteStartObject("areas");
        json.WriteNumber("formed", ReportJson.Mm(areas.Formed));
        json.WriteNumber("openings", ReportJson.Mm(areas.Openings));
        json.WriteNumber("bends", ReportJson.Mm(areas.Bends));
        json.WriteNumber("forming", ReportJson.Mm(areas.Forming));
        json.WriteNumber("allowances", ReportJson.Mm(areas.Allowances));
        json.WriteNumber("blank", ReportJson.Mm(areas.Blank));
        json.WriteEndObject();
    }
}
