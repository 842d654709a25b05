using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Reads the lines of an ASCII DXF file, R12 to 2018: those of the drawing and of the blocks that it inserts.</summary>
internal static class DxfCurves
{
    // Blocks in blocks: more than this is a ring.
    private const int Deepest = 16;

    /// <summary>Most lines of a drawing. Profiles have dozens; a whole plan of a building belongs in no job.</summary>
    public const int MostStrands = 20_000;

    // Kinds that may hold lines, but in ways of their own.
    private static readonly string[] Unread = ["REGION", "HATCH", "MLINE", "HELIX", "3DSOLID", "BODY", "SURFACE", "MESH", "3DFACE", "TRACE", "SOLID", "RAY", "XLINE"];

    /// <summary>The lines.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="unit">mm of a unit of the file, in place of what it says; null to go by that.</param>
    /// <param name="fallback">mm of a unit where the file does not say.</param>
    public static DrawingReading Read(byte[] bytes, double? unit, double fallback)
    {
        var faults = new FileFaults();
        if (DxfDocument.Read(bytes, faults) is not { } document) return new DrawingReading([], true, [], faults.InOrder());
        double? said = unit ?? Unit(document.Units);
        if (said is null && document.Units is not (null or 0))
            faults.Add("drawing-unit", 0, string.Create(CultureInfo.InvariantCulture, $"The file measures in a unit that no part is made in ($INSUNITS {document.Units})."), "Give \"fileUnits\": \"mm\" or \"in\", whichever its numbers are.");
        var strands = ImmutableArray.CreateBuilder<DrawnStrand>();
        var unread = new SortedDictionary<string, int>(StringComparer.Ordinal);
        double scale = said ?? fallback;
        Add(document.Entities, DrawingMap.Scale(scale, scale), null, 0);
        if (strands.Count >= MostStrands)
            faults.Add("drawing-too-much", 0, string.Create(CultureInfo.InvariantCulture, $"The drawing has more than {MostStrands:N0} lines."), "Save the curve alone in a file of its own.");
        return new DrawingReading(strands.ToImmutable(), said is not null, [.. unread.Select(u => (u.Key, u.Value))], faults.InOrder());

        void Add(ImmutableArray<DxfEntity> entities, DrawingMap map, string? layerOfInsert, int depth)
        {
            foreach (DxfEntity entity in entities)
            {
                if (strands.Count >= MostStrands || faults.Full) return;
                // On paper only, or invisible.
                if (entity.Whole(67) == 1 || entity.Whole(60) == 1) continue;
                // Layer 0 of a block is that of its insertion.
                string layer = layerOfInsert is not null && entity.Layer == "0" ? layerOfInsert : entity.Layer;
                if (entity.Kind == "INSERT") Insert(entity, map, layer, depth);
                else if (DxfShapes.Pieces(entity, map) is { } pieces)
                {
                    if (pieces.Length > 0) strands.Add(new DrawnStrand(pieces, entity.Kind, entity.Line, [layer], ""));
                }
                else if (Unread.Contains(entity.Kind)) unread[entity.Kind] = unread.GetValueOrDefault(entity.Kind) + 1;
            }
        }

        void Insert(DxfEntity insert, DrawingMap map, string layer, int depth)
        {
            if (depth == Deepest || !document.Blocks.TryGetValue(insert.Text(2, ""), out (DxfEntity Head, ImmutableArray<DxfEntity> Entities) block)) return;
            if (insert.Whole(70, 1) > 1 || insert.Whole(71, 1) > 1 || !DxfShapes.IsUpright(insert))
            {
                unread["INSERT"] = unread.GetValueOrDefault("INSERT") + 1;
                return;
            }
            DrawingMap own = DrawingMap.Move(insert.Number(10), insert.Number(20))
                .After(DrawingMap.Turn(insert.Number(50) * Math.PI / 180))
                .After(DrawingMap.Scale(insert.Number(41, 1), insert.Number(42, 1)))
                .After(DrawingMap.Move(-block.Head.Number(10), -block.Head.Number(20)));
            if (own.IsSound) Add(block.Entities, map.After(own), layer, depth + 1);
        }
    }

    // Values of $INSUNITS that a part may be measured in.
    private static double? Unit(int? code) => code switch
    {
        1 => ShopLength.MillimetresPerInch,
        2 => 12 * ShopLength.MillimetresPerInch,
        4 => 1,
        5 => 10,
        6 => 1000,
        8 => ShopLength.MillimetresPerInch * 1e-6,
        9 => ShopLength.MillimetresPerInch * 1e-3,
        10 => 36 * ShopLength.MillimetresPerInch,
        13 => 1e-3,
        14 => 100,
        21 => 1200.0 / 3937 * 1000,
        _ => null,
    };
}
