using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>The OBJECTS section: the root dictionary, the (empty) groups, and the two layouts that AC1015 readers look for.</summary>
internal static class DxfObjects
{
    public static void Write(DxfTags tags, Box bounds)
    {
        tags.Add(0, "SECTION").Add(2, "OBJECTS");
        BeginDictionary(tags, DxfHandle.RootDictionary, owner: 0)
            .Add(3, "ACAD_GROUP").Handle(350, DxfHandle.GroupDictionary)
            .Add(3, "ACAD_LAYOUT").Handle(350, DxfHandle.LayoutDictionary);
        BeginDictionary(tags, DxfHandle.GroupDictionary, DxfHandle.RootDictionary);
        BeginDictionary(tags, DxfHandle.LayoutDictionary, DxfHandle.RootDictionary)
            .Add(3, "Layout1").Handle(350, DxfHandle.PaperLayout)
            .Add(3, "Model").Handle(350, DxfHandle.ModelLayout);
        WriteLayout(tags, "Model", DxfHandle.ModelLayout, DxfHandle.ModelRecord, 0, bounds);
        WriteLayout(tags, "Layout1", DxfHandle.PaperLayout, DxfHandle.PaperRecord, 1, new Box(Vec2.Zero, new Vec2(420, 297)));
        tags.Add(0, "ENDSEC");
    }

    private static DxfTags BeginDictionary(DxfTags tags, int handle, int owner) =>
        tags.Add(0, "DICTIONARY").Handle(5, handle).Handle(330, owner).Add(100, "AcDbDictionary").Add(281, 1);

    private static void WriteLayout(DxfTags tags, string name, int handle, int record, int tab, Box limits)
    {
        tags.Add(0, "LAYOUT").Handle(5, handle).Handle(330, DxfHandle.LayoutDictionary)
            .Add(100, "AcDbPlotSettings").Add(1, "").Add(2, "none_device").Add(4, "A3").Add(6, "")
            .Add(40, 7.5).Add(41, 20.0).Add(42, 7.5).Add(43, 20.0).Add(44, 420.0).Add(45, 297.0)
            .Add(46, 0.0).Add(47, 0.0).Add(48, 0.0).Add(49, 0.0).Add(140, 0.0).Add(141, 0.0)
            // Scale 1:1, mm; model space carries its own flag.
            .Add(142, 1.0).Add(143, 1.0).Add(70, tab == 0 ? 1712 : 688).Add(72, 1).Add(73, 0).Add(74, 5).Add(7, "").Add(75, 16)
            .Add(147, 1.0).Add(148, 0.0).Add(149, 0.0)
            .Add(100, "AcDbLayout").Add(1, name).Add(70, 1).Add(71, tab)
            .At(10, limits.Min).At(11, limits.Max).AtZero(12, Vec2.Zero).AtZero(14, limits.Min).AtZero(15, limits.Max)
            .Add(146, 0.0).AtZero(13, Vec2.Zero).AtZero(16, new Vec2(1, 0)).AtZero(17, new Vec2(0, 1)).Add(76, 0).Handle(330, record);
    }
}
