using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns;

/// <summary>Sharp bends on the drawing: middle line, the two lines between which the metal bends, and what to set the brake to.</summary>
internal static class BendDrawing
{
    /// <summary>Lines closer than this run into each other on paper, mm: two widths of a narrow line.</summary>
    public const double Blot = 0.7;

    // How far along a bend its words may stand, off the middle first, where the centreline runs.
    private static readonly ImmutableArray<double> Shares = [.. Enumerable.Range(1, 39).Select(i => i / 40.0).OrderBy(share => Math.Abs(Math.Abs(share - 0.5) - 0.25))];

    /// <summary>The strokes of a piece's bends, broken where they would cross a hole.</summary>
    public static IEnumerable<Stroke> Strokes(PanelDevelopment panel, CutOutline outline) =>
        PatternLines.Broken(panel.Bends.SelectMany(Strokes), outline);

    /// <summary>Choices for the words of a bend, along its middle line on either side of it.</summary>
    public static IEnumerable<Lettering> Words(BendLine bend, double height, LengthUnit units)
    {
        if (bend.Centre.Length < 2) yield break;
        double beside = bend.Tangents.Select(t => DrawingPlaces.Distance(DrawingPlaces.HalfWay(bend.Centre), t)).Append(0).Max() + 0.85 * height;
        string turn = $"{BendWords.Name(bend)}  {BendWords.Turn(bend)}";
        foreach (string text in new[] { $"{turn}  R {BendWords.Radius(bend.InsideRadius, units)}", turn, $"{BendWords.Name(bend)} {BendWords.Way(bend)}", BendWords.Name(bend) })
        {
            foreach (double share in Shares)
            {
                (Vec2 at, Vec2 along) = DrawingPlaces.On(bend.Centre, share);
                double angle = DrawingPlaces.Upright(Math.Atan2(along.Y, along.X));
                Vec2 up = Vec2.FromAngle(angle).Left;
                yield return new Lettering(Role.Bend, text, at + beside * up, height, angle, Anchor.Middle);
                yield return new Lettering(Role.Bend, text, at - (beside + height) * up, height, angle, Anchor.Middle);
            }
        }
    }

    private static IEnumerable<Stroke> Strokes(BendLine bend)
    {
        if (bend.Centre.Length < 2) yield break;
        yield return new Stroke(Role.Bend, bend.Centre);
        // Of a slight bend the three lines are one on paper.
        foreach (ImmutableArray<Vec2> line in bend.Tangents.Where(t => t.Length > 1 && DrawingPlaces.Distance(DrawingPlaces.HalfWay(t), bend.Centre) >= Blot))
            yield return new Stroke(Role.Bend, line) { Dashed = true };
    }
}
