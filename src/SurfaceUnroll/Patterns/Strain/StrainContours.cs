using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>A line on the blank along which the metal is stretched or shrunk by the same amount.</summary>
/// <param name="Level">Stretch positive, shrink negative, as a fraction.</param>
/// <param name="Points">At least two, mm on the blank; a closed line does not repeat its first point.</param>
/// <param name="Closed">The last point joins the first; an open line ends on the rim.</param>
public sealed record StrainContour(double Level, ImmutableArray<Vec2> Points, bool Closed)
{
    /// <summary>Its level as it is written on the line.</summary>
    public string Label => StrainKinds.Percent(Level);
}

/// <summary>Lines of equal stretch and lines of equal shrink.</summary>
public static class StrainContours
{
    // A label stands only on a line this many times as long as itself.
    private const double LeastRun = 3.5;

    private const int LabelPlaces = 16;

    /// <summary>The lines at the levels of <see cref="StrainLevels"/>, from the largest shrink to the largest stretch.</summary>
    /// <param name="mesh">Its flat places are used.</param>
    /// <param name="map">Strain at its vertices.</param>
    public static ImmutableArray<StrainContour> Of(SheetMesh mesh, StrainMap map)
    {
        var links = new MeshLinks(mesh);
        ImmutableArray<double> stretch = map.Field(StrainKind.Stretch), shrink = map.Field(StrainKind.Shrink);
        return
        [
            .. from level in StrainLevels.Of(map)
               from line in IsoLines.Of(mesh, links, level > 0 ? stretch : shrink, Math.Abs(level))
               select new StrainContour(level, line.Points, line.Closed),
        ];
    }

    /// <summary>The lines as strokes of a drawing: solid for stretch, dashed for shrink.</summary>
    public static IEnumerable<Stroke> ContourStrokes(IEnumerable<StrainContour> contours) =>
        contours.Select(c => new Stroke(Role.Contour, c.Points, c.Closed) { Dashed = c.Level < 0 });

    /// <summary>For each line long enough to carry its level, the places where that may stand: on the line, straightest part first.</summary>
    /// <param name="contours">The lines.</param>
    /// <param name="height">Cap height, mm.</param>
    public static IEnumerable<IEnumerable<Lettering>> LabelChoices(IEnumerable<StrainContour> contours, double height)
    {
        foreach (StrainContour contour in contours)
        {
            double width = PageTextWidth.Of(contour.Label, height);
            var run = new Polyline(contour.Points, contour.Closed);
            if (run.Length < LeastRun * width) continue;
            yield return Enumerable.Range(0, LabelPlaces)
                .Select(i => Chord(run, (i + 0.5) / LabelPlaces * run.Length, width))
                .OrderByDescending(chord => Math.Round((chord.To - chord.From).Length / width, 3))
                .Select(chord => OnChord(contour.Label, chord.From, chord.To, height));
        }
    }

    // Where a text that is centred on a place of the line begins and ends, both on the line.
    private static (Vec2 From, Vec2 To) Chord(Polyline run, double at, double width) =>
        (run.At(at - 0.5 * width), run.At(at + 0.5 * width));

    private static Lettering OnChord(string text, Vec2 from, Vec2 to, double height)
    {
        Vec2 along = (to - from).Unit;
        if (along.X < -1e-9 || (along.X <= 1e-9 && along.Y < 0)) along = -along;
        return new Lettering(
            Role.Contour, text, 0.5 * (from + to) - 0.5 * height * along.Left, height, Math.Atan2(along.Y, along.X), Anchor.Middle);
    }
}
