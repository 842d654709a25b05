using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.CutPaths;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>Writes a drawing as DXF in mm, R2000 (AC1015) or <see cref="DxfR12">R12</see>: layers CUT, ELEMENT, MARK, NOTE and CONTOUR, and BEND and NET where there are bends and allowances; every cut line one closed LWPOLYLINE.</summary>
/// <remarks>Only what the format asks for and nothing that depends on time or machine: the same drawing gives the same bytes.</remarks>
public static class DxfPattern
{
    /// <summary>The file.</summary>
    /// <param name="drawing">As it is to be cut.</param>
    /// <param name="cutting">Version, and the kerf that is stated.</param>
    /// <returns>ASCII; other characters are escaped.</returns>
    public static byte[] Write(Drawing drawing, CuttingSpec cutting)
    {
        if (cutting.Dxf == DxfVersion.R12) return DxfR12.Write(drawing, cutting);
        var tags = new DxfTags();
        WriteHeader(tags, drawing, cutting);
        tags.Add(0, "SECTION").Add(2, "CLASSES").Add(0, "ENDSEC");
        DxfTables.Write(tags, drawing);
        WriteBlocks(tags);
        DxfEntities.Write(tags, drawing);
        DxfObjects.Write(tags, drawing.Bounds);
        return tags.Add(0, "EOF").ToBytes();
    }

    /// <summary>What a reader of the file as text should know.</summary>
    internal static DxfTags WriteComments(DxfTags tags, Drawing drawing, CuttingSpec cutting)
    {
        tags.Add(999, drawing.Title).Add(999, "1:1 in mm. Cut only layer CUT.");
        return CutFitting.KerfWords(cutting) is { } words ? tags.Add(999, words) : tags;
    }

    private static void WriteHeader(DxfTags tags, Drawing drawing, CuttingSpec cutting)
    {
        Box box = drawing.Bounds;
        WriteComments(tags, drawing, cutting).Add(0, "SECTION").Add(2, "HEADER")
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
