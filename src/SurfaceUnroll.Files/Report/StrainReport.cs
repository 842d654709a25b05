using System.Collections.Immutable;
using System.Text.Json;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of a panel that cannot only bend: held edges, pieces, relief cuts, worst places.</summary>
internal static class StrainReport
{
    public static void Write(Utf8JsonWriter json, PanelDevelopment panel)
    {
        if (panel.Unheld is { } free)
        {
            json.WriteStartObject("hold");
            json.WriteStartArray("edges");
            foreach (string edge in panel.Spec.Hold) json.WriteStringValue(edge);
            json.WriteEndArray();
            ReportJson.WriteStrain(json, "without", free);
            json.WriteNumber("energyCost", panel.Strain.Energy - free.Energy);
            json.WriteEndObject();
        }
        if (panel.ClearOfTips is { } clear) ReportJson.WriteStrain(json, "strainClearOfTips", clear);
        if (!panel.Choices.IsEmpty) WriteChoices(json, panel.Choices);
        if (!panel.Slits.IsEmpty) WriteSlits(json, panel.Slits);
        if (panel.DrawnMap is { } map) WriteSpots(json, panel, map);
    }

    private static void WriteChoices(Utf8JsonWriter json, ImmutableArray<PieceChoice> choices)
    {
        json.WriteStartArray("pieces");
        foreach (PieceChoice choice in choices)
        {
            json.WriteStartObject();
            json.WriteNumber("pieces", choice.Pieces);
            json.WriteNumber("maxStretch", choice.MaxStretch + 0.0);
            json.WriteNumber("maxShrink", choice.MaxShrink + 0.0);
            json.WriteNumber("weldLength", ReportJson.Mm(choice.WeldLength));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void WriteSlits(Utf8JsonWriter json, ImmutableArray<SlitOpening> slits)
    {
        json.WriteStartArray("slits");
        foreach (SlitOpening slit in slits)
        {
            json.WriteStartObject();
            json.WriteString("edge", slit.Edge);
            json.WriteNumber("at", ReportJson.Mm(slit.At));
            json.WriteNumber("depth", ReportJson.Mm(slit.Depth));
            json.WriteNumber("width", ReportJson.Mm(slit.Width));
            json.WriteBoolean("overlaps", slit.Width < 0);
            json.WritePropertyName("tip");
            ReportJson.WritePoint(json, slit.Tip);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void WriteSpots(Utf8JsonWriter json, PanelDevelopment panel, StrainMap map)
    {
        json.WriteStartArray("worst");
        foreach (StrainSpot spot in StrainSpots.Of(panel.Mesh, map, panel.Edges, panel.Elements, Units.LengthUnit.Millimetre))
        {
            json.WriteStartObject();
            json.WriteNumber("number", spot.Number);
            json.WriteString("kind", spot.Kind == StrainKind.Stretch ? "stretch" : "shrink");
            json.WriteNumber("strain", spot.Size);
            json.WriteNumber("thickness", spot.Thickness);
            json.WritePropertyName("flat");
            ReportJson.WritePoint(json, spot.Flat);
            json.WriteString("where", spot.Where);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }
}
