namespace SurfaceUnroll.Files.Dxf;

/// <summary>Handles of the fixed parts of the file; entities follow from <see cref="FirstEntity"/>, so the same drawing gives the same handles.</summary>
internal static class DxfHandle
{
    public const int
        BlockRecordTable = 0x1, LayerTable = 0x2, StyleTable = 0x3, LinetypeTable = 0x5, ViewTable = 0x6, UcsTable = 0x7,
        ViewportTable = 0x8, AppIdTable = 0x9, DimStyleTable = 0xA,
        RootDictionary = 0xC, GroupDictionary = 0xD, LayoutDictionary = 0xE,
        ByBlock = 0x14, ByLayer = 0x15, Continuous = 0x16, Chain = 0x17, Centre = 0x18, Dashed = 0x19, DoubleChain = 0x1A,
        LayerZero = 0x20, FirstLayer = 0x21,
        TextStyle = 0x28, AppId = 0x29, DimStyle = 0x2A, Viewport = 0x2B,
        ModelRecord = 0x30, ModelBlock = 0x31, ModelBlockEnd = 0x32, ModelLayout = 0x33,
        PaperRecord = 0x34, PaperBlock = 0x35, PaperBlockEnd = 0x36, PaperLayout = 0x37,
        FirstEntity = 0x100;
}
