using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>Writes a drawing as DXF R2000 (AC1015) in mm: layers CUT, ELEMENT, MARK, NOTE and CONTOUR, and BEND and NET where there are bends and allowances; every cut line one closed LWPOLYLINE.</summary>
/// <remarks>Only what the format asks for and nothing that depends on time or machine: the same drawing gives the same bytes.</remarks>
public static class DxfPattern
{
    /// <summary>The file.</summary>
    /// <returns>ASCII; other characters are escaped.</returns>
    public static byte[] Write(Drawing drawing)
    {
        var tags = new DxfTags();
        WriteHeader(tags, drawing);
        tags.Add(0, "SECTION").Add(2, "CLASSES").Add(0, "ENDSEC");
        DxfTables.Write(tags, drawing);
        WriteBlocks(tags);
        DxfEntities.Write(tags, drawing);
        DxfObjects.Write(tags, drawing.Bounds);
        return tags.Add(0, "EOF").ToBytes();
    }

    private static void WriteHeader(DxfTags tags, Drawing drawing)
    {
        Box box = drawing.Bounds;
        tags.Add(999, drawing.Title).Add(999, "1:1 in mm. Cut only layer CUT.")
            .Add(0, "SECTION").Add(2, "HEADER")
            .Add(9, "$ACADVER").Add(1, "AC1015")
            .Add(9, "$DWGCODEPAGE").Add(3, "ANSI_1252")
            .Add(9, "$INSUNITS").Add(70, 4)
            .Add(9, "$MEASUREMENT").Add(70, 1)
            .Add(9, "$LUNITS").Add(70, 2)
            .Add(9, "$LTSCALE").Add(40, 1.0)
            .Add(9, "$INSBASE").AtZero(10, Vec2.Zero)
            .Add(9, "$EXTMIN").AtZero(10, box.Min)
            .Add(9, "$EXTMAX").AtZero(10, box.Max)
            .Add(9, "$LIMMIN").At(10, box.Min)
            .Add(9, "$LIMMAX").At(10, box.Max)
            .Add(9, "$HANDSEED").Handle(5, DxfHandle.FirstEntity + drawing.Strokes.Length + drawing.Letterings.Length)
            .Add(0, "ENDSEC");
    }

    private static void WriteBlocks(DxfTags tags)
    {
        tags.Add(0, "SECTION").Add(2, "BLOCKS");
        WriteBlock(tags, "*Model_Space", DxfHandle.ModelRecord, DxfHandle.ModelBlock, DxfHandle.ModelBlockEnd, paper: false);
        WriteBlock(tags, "*Paper_Space", DxfHandle.PaperRecord, DxfHandle.PaperBlock, DxfHandle.PaperBlockEnd, paper: true);
        tags.Add(0, "ENDSEC");
    }

    private static void WriteBlock(DxfTags tags, string name, int record, int begin, int end, bool paper)
    {
        tags.Add(0, "BLOCK").Handle(5, begin).Handle(330, record).Add(100, "AcDbEntity");
        if (paper) tags.Add(67, 1);
        tags.Add(8, "0").Add(100, "AcDbBlockBegin").Add(2, name).Add(70, 0).AtZero(10, Vec2.Zero).Add(3, name).Add(1, "")
            .Add(0, "ENDBLK").Handle(5, end).Handle(330, record).Add(100, "AcDbEntity");
        if (paper) tags.Add(67, 1);
        tags.Add(8, "0").Add(100, "AcDbBlockEnd");
    }
}
