using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>From the drawing of a blank to the drawing for cutting machines: cut lines moved by half the kerf, as lines and arcs, inner ones first.</summary>
public static class CutFitting
{
    // Cap height of the words about the kerf, and from the lowest line to them, mm.
    private const double NoteHeight = 2.5, NoteGap = 1.5;

    /// <summary>The drawing with its closed cut lines fitted, within <see cref="CutPathFit.Tolerance"/>. The piece comes free with the last of them, its outline.</summary>
    public static Drawing Of(Drawing drawing, CuttingSpec cutting)
    {
        Stroke[] cuts = [.. drawing.Strokes.Where(s => s.Role == Role.Cut)];
        Stroke? outline = cuts.Where(s => s.Closed).MaxBy(s => Math.Abs(Polygons.SignedArea(s.Points)));
        IEnumerable<Stroke> Fitted(Stroke stroke, bool inner) =>
            stroke.Closed ? KerfOffset.Of(stroke.Points, inner, 0.5 * cutting.Kerf).Select(loop => Fit(stroke, loop)) : [stroke];
        // A notch that closes leaves a line inside the outline, which is cut before it.
        IEnumerable<Stroke> outer = outline is null ? [] : Fitted(outline, inner: false).Reverse();
        Drawing fitted = drawing with
        {
            Strokes = [.. cuts.Where(s => s != outline).SelectMany(s => Fitted(s, inner: true)), .. outer, .. drawing.Strokes.Where(s => s.Role != Role.Cut)],
        };
        if (KerfWords(cutting) is { } words) fitted = fitted with { Letterings = [.. fitted.Letterings, Note(words, fitted.Bounds)] };
        return cutting.Lettering == CutLettering.Strokes ? Scribed(fitted) : fitted;
    }

    // Words of marks and notes as lines; what is for the eye alone stays text.
    private static Drawing Scribed(Drawing drawing)
    {
        static bool IsScribed(Lettering text) => text.Role is Role.Mark or Role.Note;
        return drawing with
        {
            Strokes = [.. drawing.Strokes, .. drawing.Letterings.Where(IsScribed).SelectMany(StrokeAlphabet.Lines)],
            Letterings = [.. drawing.Letterings.Where(text => !IsScribed(text))],
        };
    }

    /// <summary>Number of lines and arcs of all cut lines of a drawing.</summary>
    public static int Segments(Drawing drawing) => drawing.Strokes.Where(s => s.Role == Role.Cut).Sum(s => s.Closed ? s.Points.Length : s.Points.Length - 1);

    /// <summary>What is said about the kerf; null where there is none.</summary>
    public static string? KerfWords(CuttingSpec cutting) => cutting.Kerf == 0
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"Kerf {cutting.Kerf:0.###} mm: cut lines are moved by half of it. No offset in the machine.");

    private static Stroke Fit(Stroke stroke, ImmutableArray<Vec2> loop)
    {
        ImmutableArray<PathArc> path = CutPathFit.Of(loop);
        return stroke with { Points = [.. path.Select(arc => arc.From)], Bulges = path.All(arc => arc.Bulge == 0) ? [] : [.. path.Select(arc => arc.Bulge)] };
    }

    private static Lettering Note(string words, Box lines) => new(Role.Note, words, lines.Min - new Vec2(0, NoteGap + NoteHeight), NoteHeight);
}
