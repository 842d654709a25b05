using System.Text;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>Writes a drawing as DXF R12 (AC1009) in mm, for machines that read no later one: the same layers and line types, cut lines as POLYLINE with bulges.</summary>
/// <remarks>R12 has no LWPOLYLINE, no line widths of layers, no header variable for units and no characters beyond ASCII, and needs no handles.</remarks>
internal static class DxfR12
{
    /// <summary>The file.</summary>
    public static byte[] Write(Drawing drawing, CuttingSpec cutting)
    {
        Box box = drawing.Bounds;
        var tags = new DxfTags();
        DxfPattern.WriteComments(tags, drawing with { Title = Plain(drawing.Title) }, cutting)
            .Add(0, "SECTION").Add(2, "HEADER")
            .Add(9, "$ACADVER").Add(1, "AC1009")
            .Add(9, "$INSBASE").AtZero(10, Vec2.Zero)
            .Add(9, "$EXTMIN").AtZero(10, box.Min)
            .Add(9, "$EXTMAX").AtZero(10, box.Max)
            .Add(9, "$LIMMIN").At(10, box.Min)
            .Add(9, "$LIMMAX").At(10, box.Max)
            .Add(9, "$LTSCALE").Add(40, 1.0)
            .Add(9, "$LUNITS").Add(70, 2)
            .Add(9, "$HANDLING").Add(70, 0)
            .Add(0, "ENDSEC");
        WriteTables(tags, drawing);
        tags.Add(0, "SECTION").Add(2, "BLOCKS").Add(0, "ENDSEC").Add(0, "SECTION").Add(2, "ENTITIES");
        foreach (Stroke stroke in drawing.Strokes) WriteStroke(tags, stroke);
        foreach (Lettering lettering in drawing.Letterings) WriteText(tags, lettering);
        return tags.Add(0, "ENDSEC").Add(0, "EOF").ToBytes();
    }

    private static void WriteTables(DxfTags tags, Drawing drawing)
    {
        IReadOnlyList<DxfLinetype> types = DxfLinetype.In(DxfLayer.Has(drawing, Role.Net));
        IReadOnlyList<DxfLayer> layers = DxfLayer.In(drawing);
        tags.Add(0, "SECTION").Add(2, "TABLES").Add(0, "TABLE").Add(2, "LTYPE").Add(70, types.Count);
        foreach (DxfLinetype type in types)
        {
            tags.Add(0, "LTYPE").Add(2, type.Name).Add(70, 0).Add(3, type.Description).Add(72, 65).Add(73, type.Dashes.Length).Add(40, type.Length);
            foreach (double dash in type.Dashes) tags.Add(49, dash);
        }
        tags.Add(0, "ENDTAB").Add(0, "TABLE").Add(2, "LAYER").Add(70, layers.Count + 1);
        foreach (DxfLayer layer in layers.Prepend(new DxfLayer("0", 7, DxfLayer.Continuous, 25)))
            tags.Add(0, "LAYER").Add(2, layer.Name).Add(70, 0).Add(62, layer.Colour).Add(6, layer.Linetype);
        tags.Add(0, "ENDTAB").Add(0, "TABLE").Add(2, "STYLE").Add(70, 1)
            .Add(0, "STYLE").Add(2, "STANDARD").Add(70, 0).Add(40, 0.0).Add(41, 1.0).Add(50, 0.0).Add(71, 0).Add(42, 2.5).Add(3, "txt").Add(4, "")
            .Add(0, "ENDTAB").Add(0, "ENDSEC");
    }

    private static DxfTags Begin(DxfTags tags, string kind, Role role, bool dashed = false)
    {
        tags.Add(0, kind).Add(8, DxfLayer.Of(role));
        if (role == Role.Centre) tags.Add(6, DxfLayer.CentreLine);
        return dashed ? tags.Add(6, DxfLayer.Dashed) : tags;
    }

    private static void WriteStroke(DxfTags tags, Stroke stroke)
    {
        if (stroke is { Points.Length: 2, Bulges.IsEmpty: true })
        {
            Begin(tags, "LINE", stroke.Role, stroke.Dashed).AtZero(10, stroke.Points[0]).AtZero(11, stroke.Points[1]);
            return;
        }
        Begin(tags, "POLYLINE", stroke.Role, stroke.Dashed).Add(66, 1).AtZero(10, Vec2.Zero).Add(70, stroke.Closed ? 1 : 0);
        for (int i = 0; i < stroke.Points.Length; i++)
        {
            Begin(tags, "VERTEX", stroke.Role, stroke.Dashed).AtZero(10, stroke.Points[i]);
            if (!stroke.Bulges.IsEmpty && stroke.Bulges[i] != 0) tags.Add(42, stroke.Bulges[i]);
        }
        Begin(tags, "SEQEND", stroke.Role, stroke.Dashed);
    }

    private static void WriteText(DxfTags tags, Lettering text)
    {
        int justification = text.Anchor switch { Anchor.Middle => 1, Anchor.Right => 2, _ => 0 };
        Begin(tags, "TEXT", text.Role).AtZero(10, text.At).Add(40, text.Height).Add(1, Plain(text.Text)).Add(50, text.Angle * 180 / Math.PI).Add(7, "STANDARD");
        if (justification != 0) tags.Add(72, justification).AtZero(11, text.At);
    }

    // Degree and diameter have codes of their own in every text of the format; of the rest, what is nearest in ASCII.
    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            plain.Append(c switch
            {
                '°' => "%%d",
                'Ø' => "%%c",
                '×' => "x",
                '–' or '—' or '−' => "-",
                '→' => "->",
                '“' or '”' => "\"",
                '‘' or '’' => "'",
                '…' => "...",
                '²' => "2",
                '¼' => " 1/4",
                '½' => " 1/2",
                '¾' => " 3/4",
                <= '~' => c.ToString(),
                _ => "?",
            });
        }
        return plain.ToString();
    }
}
