using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>The drawing of a sheet of the stock: its rim, and the drawings of its pieces where they lie.</summary>
public static class NestDrawing
{
    /// <summary>Draws a sheet in its own frame.</summary>
    /// <param name="sheet">With its placements.</param>
    /// <param name="pieces">Drawings of all pieces by their numbers, each in its flat frame.</param>
    /// <param name="title">Of the drawing.</param>
    public static Drawing Of(NestedSheet sheet, ImmutableArray<Drawing> pieces, string title)
    {
        (double length, double width) = (sheet.Stock.Length, sheet.Stock.Width);
        var rim = new Stroke(Role.Note, [Vec2.Zero, new Vec2(length, 0), new Vec2(length, width), new Vec2(0, width)], Closed: true);
        Drawing laid = Laid(sheet.Placements, pieces, title);
        return laid with { Strokes = [rim, .. laid.Strokes] };
    }

    /// <summary>Pieces where they lie.</summary>
    /// <param name="placements">Of pieces.</param>
    /// <param name="pieces">Drawings of all pieces by their numbers, each in its flat frame.</param>
    /// <param name="title">Of the drawing.</param>
    public static Drawing Laid(ImmutableArray<NestPlacement> placements, ImmutableArray<Drawing> pieces, string title)
    {
        Drawing[] laid = [.. placements.Select(p => Moved(pieces[p.Panel].Turned(p.Turn), p.Move))];
        return new Drawing(title, [.. laid.SelectMany(d => d.Strokes)], [.. laid.SelectMany(d => d.Letterings)]);
    }

    private static Drawing Moved(Drawing drawing, Vec2 by) => drawing with
    {
        Strokes = [.. drawing.Strokes.Select(s => s with { Points = [.. s.Points.Select(p => p + by)] })],
        Letterings = [.. drawing.Letterings.Select(t => t with { At = t.At + by })],
    };
}
