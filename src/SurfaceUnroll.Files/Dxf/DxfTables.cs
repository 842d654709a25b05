using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>The TABLES section: the nine tables that AC1015 asks for.</summary>
internal static class DxfTables
{
    public static void Write(DxfTags tags, Drawing drawing)
    {
        tags.Add(0, "SECTION").Add(2, "TABLES");
        WriteViewport(tags, drawing.Bounds);
        WriteLinetypes(tags, DxfLayer.Has(drawing, Role.Net));
        WriteLayers(tags, DxfLayer.In(drawing));
        WriteTextStyle(tags);
        Begin(tags, "VIEW", DxfHandle.ViewTable, 0).Add(0, "ENDTAB");
        Begin(tags, "UCS", DxfHandle.UcsTable, 0).Add(0, "ENDTAB");
        Begin(tags, "APPID", DxfHandle.AppIdTable, 1);
        Record(tags, "APPID", DxfHandle.AppId, DxfHandle.AppIdTable, "AcDbRegAppTableRecord", "ACAD").Add(70, 0).Add(0, "ENDTAB");
        WriteDimensionStyle(tags);
        WriteBlockRecords(tags);
        tags.Add(0, "ENDSEC");
    }

    private static DxfTags Begin(DxfTags tags, string name, int handle, int count) =>
        tags.Add(0, "TABLE").Add(2, name).Handle(5, handle).Add(330, "0").Add(100, "AcDbSymbolTable").Add(70, count);

    private static DxfTags Record(DxfTags tags, string kind, int handle, int table, string subclass, string name) =>
        tags.Add(0, kind).Handle(5, handle).Handle(330, table).Add(100, "AcDbSymbolTableRecord").Add(100, subclass).Add(2, name);

    // Opens the file with the whole piece in view.
    private static void WriteViewport(DxfTags tags, Box bounds)
    {
        Begin(tags, "VPORT", DxfHandle.ViewportTable, 1);
        Record(tags, "VPORT", DxfHandle.Viewport, DxfHandle.ViewportTable, "AcDbViewportTableRecord", "*Active")
            .Add(70, 0).At(10, Vec2.Zero).At(11, new Vec2(1, 1)).At(12, bounds.Centre).At(13, Vec2.Zero)
            .At(14, new Vec2(10, 10)).At(15, new Vec2(10, 10))
            .Add(16, 0.0).Add(26, 0.0).Add(36, 1.0).Add(17, 0.0).Add(27, 0.0).Add(37, 0.0)
            .Add(40, 1.1 * Math.Max(bounds.Height, bounds.Width)).Add(41, 1.5).Add(42, 50.0).Add(43, 0.0).Add(44, 0.0)
            .Add(50, 0.0).Add(51, 0.0).Add(71, 0).Add(72, 1000).Add(73, 1).Add(74, 3).Add(75, 0).Add(76, 0).Add(77, 0).Add(78, 0)
            .Add(0, "ENDTAB");
    }

    private static void WriteLinetypes(DxfTags tags, bool net)
    {
        IReadOnlyList<DxfLinetype> drawn = DxfLinetype.In(net);
        Begin(tags, "LTYPE", DxfHandle.LinetypeTable, drawn.Count + 2);
        WriteLinetype(tags, new DxfLinetype(DxfHandle.ByBlock, "BYBLOCK", "", []));
        WriteLinetype(tags, new DxfLinetype(DxfHandle.ByLayer, "BYLAYER", "", []));
        foreach (DxfLinetype type in drawn) WriteLinetype(tags, type);
        tags.Add(0, "ENDTAB");
    }

    private static void WriteLinetype(DxfTags tags, DxfLinetype type)
    {
        Record(tags, "LTYPE", type.Handle, DxfHandle.LinetypeTable, "AcDbLinetypeTableRecord", type.Name)
            .Add(70, 0).Add(3, type.Description).Add(72, 65).Add(73, type.Dashes.Length).Add(40, type.Length);
        foreach (double dash in type.Dashes) tags.Add(49, dash).Add(74, 0);
    }

    private static void WriteLayers(DxfTags tags, IReadOnlyList<DxfLayer> layers)
    {
        Begin(tags, "LAYER", DxfHandle.LayerTable, layers.Count + 1);
        WriteLayer(tags, DxfHandle.LayerZero, new DxfLayer("0", 7, DxfLayer.Continuous, 25));
        int handle = DxfHandle.FirstLayer;
        foreach (DxfLayer layer in layers)
        {
            WriteLayer(tags, handle++, layer);
        }
        tags.Add(0, "ENDTAB");
    }

    private static void WriteLayer(DxfTags tags, int handle, DxfLayer layer) =>
        Record(tags, "LAYER", handle, DxfHandle.LayerTable, "AcDbLayerTableRecord", layer.Name)
            .Add(70, 0).Add(62, layer.Colour).Add(6, layer.Linetype).Add(370, layer.Weight);

    private static void WriteTextStyle(DxfTags tags)
    {
        Begin(tags, "STYLE", DxfHandle.StyleTable, 1);
        Record(tags, "STYLE", DxfHandle.TextStyle, DxfHandle.StyleTable, "AcDbTextStyleTableRecord", "STANDARD")
            .Add(70, 0).Add(40, 0.0).Add(41, 1.0).Add(50, 0.0).Add(71, 0).Add(42, 2.5).Add(3, "txt").Add(4, "")
            .Add(0, "ENDTAB");
    }

    // The format asks for one even if the drawing holds no dimension; its own handle has code 105.
    private static void WriteDimensionStyle(DxfTags tags)
    {
        Begin(tags, "DIMSTYLE", DxfHandle.DimStyleTable, 1).Add(100, "AcDbDimStyleTable").Add(71, 1);
        tags.Add(0, "DIMSTYLE").Handle(105, DxfHandle.DimStyle).Handle(330, DxfHandle.DimStyleTable)
            .Add(100, "AcDbSymbolTableRecord").Add(100, "AcDbDimStyleTableRecord").Add(2, "STANDARD").Add(70, 0)
            .Handle(340, DxfHandle.TextStyle).Add(0, "ENDTAB");
    }

    private static void WriteBlockRecords(DxfTags tags)
    {
        Begin(tags, "BLOCK_RECORD", DxfHandle.BlockRecordTable, 2);
        Record(tags, "BLOCK_RECORD", DxfHandle.ModelRecord, DxfHandle.BlockRecordTable, "AcDbBlockTableRecord", "*Model_Space")
            .Handle(340, DxfHandle.ModelLayout);
        Record(tags, "BLOCK_RECORD", DxfHandle.PaperRecord, DxfHandle.BlockRecordTable, "AcDbBlockTableRecord", "*Paper_Space")
            .Handle(340, DxfHandle.PaperLayout);
        tags.Add(0, "ENDTAB");
    }
}
