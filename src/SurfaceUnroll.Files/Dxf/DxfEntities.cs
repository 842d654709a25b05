using SurfaceUnroll.Drawings;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>The ENTITIES section: strokes as LINE or LWPOLYLINE, words as TEXT, all in model space.</summary>
internal static class DxfEntities
{
    public static void Write(DxfTags tags, Drawing drawing)
    {
        int handle = DxfHandle.FirstEntity;
        tags.Add(0, "SECTION").Add(2, "ENTITIES");
        foreach (Stroke stroke in drawing.Strokes)
        {
            if (stroke is { Points.Length: 2, Bulges.IsEmpty: true }) WriteLine(tags, stroke, handle++);
            else WritePolyline(tags, stroke, handle++);
        }
        foreach (Lettering lettering in drawing.Letterings)
        {
            WriteText(tags, lettering, handle++);
        }
        tags.Add(0, "ENDSEC");
    }

    private static void Begin(DxfTags tags, string kind, Role role, int handle, bool dashed = false)
    {
        tags.Add(0, kind).Handle(5, handle).Handle(330, DxfHandle.ModelRecord).Add(100, "AcDbEntity").Add(8, DxfLayer.Of(role));
        if (role == Role.Centre) tags.Add(6, DxfLayer.CentreLine);
        if (dashed) tags.Add(6, DxfLayer.Dashed);
    }

    private static void WriteLine(DxfTags tags, Stroke stroke, int handle)
    {
        Begin(tags, "LINE", stroke.Role, handle, stroke.Dashed);
        tags.Add(100, "AcDbLine").AtZero(10, stroke.Points[0]).AtZero(11, stroke.Points[1]);
    }

    private static void WritePolyline(DxfTags tags, Stroke stroke, int handle)
    {
        Begin(tags, "LWPOLYLINE", stroke.Role, handle, stroke.Dashed);
        tags.Add(100, "AcDbPolyline").Add(90, stroke.Points.Length).Add(70, stroke.Closed ? 1 : 0).Add(43, 0.0);
        for (int i = 0; i < stroke.Points.Length; i++)
        {
            tags.At(10, stroke.Points[i]);
            if (!stroke.Bulges.IsEmpty && stroke.Bulges[i] != 0) tags.Add(42, stroke.Bulges[i]);
        }
    }

    private static void WriteText(DxfTags tags, Lettering text, int handle)
    {
        int justification = text.Anchor switch { Anchor.Middle => 1, Anchor.Right => 2, _ => 0 };
        Begin(tags, "TEXT", text.Role, handle);
        tags.Add(100, "AcDbText").AtZero(10, text.At).Add(40, text.Height).Add(1, text.Text)
            .Add(50, text.Angle * 180 / Math.PI).Add(7, "STANDARD");
        if (justification != 0) tags.Add(72, justification).AtZero(11, text.At);
        tags.Add(100, "AcDbText");
    }
}
