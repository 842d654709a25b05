using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>The last word on a layout, by the whole cut lines.</summary>
internal static class NestCheck
{
    // Rounding of turned and moved places, as a share of the size of the sheet.
    private const double Rounding = 1e-9;

    /// <summary>Every piece keeps the gap to the rim and to every other piece.</summary>
    /// <param name="sheet">With its pieces.</param>
    /// <param name="outlines">Cut lines by the numbers of the pieces.</param>
    public static bool IsSound(PackedSheet sheet, ImmutableArray<ImmutableArray<Vec2>> outlines)
    {
        NestField field = sheet.Field;
        double tolerance = Rounding * field.Length;
        Polygon[] laid = [.. sheet.Pieces.Select(p => Polygons.Of(outlines[p.Piece.Number].Select(q => q.Rotate(p.Turned.Turn) + p.Turned.Shift + p.At)))];
        var room = new Envelope(field.Gap - tolerance, field.Length - field.Gap + tolerance, field.Gap - tolerance, field.Width - field.Gap + tolerance);
        for (int i = 0; i < laid.Length; i++)
        {
            if (!room.Contains(laid[i].EnvelopeInternal)) return false;
            for (int k = 0; k < i; k++)
                if (!AreApart(laid[i], laid[k], field.Gap, tolerance)) return false;
        }
        return true;
    }

    private static bool AreApart(Polygon a, Polygon b, double gap, double tolerance)
    {
        if (a.EnvelopeInternal.Distance(b.EnvelopeInternal) >= gap && !a.EnvelopeInternal.Intersects(b.EnvelopeInternal)) return true;
        // At no gap they may touch: what is in both is then no wider than the rounding.
        return gap > tolerance ? a.Distance(b) >= gap - tolerance : Polygons.Shared(a, b).Area <= tolerance * (a.Length + b.Length);
    }
}
