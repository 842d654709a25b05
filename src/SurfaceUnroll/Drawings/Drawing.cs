using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Patterns.CutPaths;

namespace SurfaceUnroll.Drawings;

/// <summary>What a stroke or text means. Writers turn roles into line styles and layers and decide nothing else.</summary>
public enum Role
{
    /// <summary>Where the metal is cut: wide continuous.</summary>
    Cut,

    /// <summary>Element line: narrow chain, never cut.</summary>
    Element,

    /// <summary>Centreline (ISO 128: narrow long-dashed dotted).</summary>
    Centre,

    /// <summary>Marks to punch or scribe.</summary>
    Mark,

    /// <summary>Words and numbers for the reader.</summary>
    Note,

    /// <summary>Line of equal stretch (continuous) or of equal shrink (dashed), fine: for the eye, never cut.</summary>
    Contour,

    /// <summary>Sharp bend: its middle, where the tool strikes, continuous; the lines between which the metal bends, dashed. Never cut (ISO 128-2: bending lines are narrow continuous).</summary>
    Bend,

    /// <summary>Finished edge where metal is left on beyond it: narrow long-dashed double-dotted (ISO 128-2: an outline that is to be). Never cut.</summary>
    Net,
}

/// <summary>A polyline with a meaning.</summary>
/// <param name="Role">Meaning.</param>
/// <param name="Points">At least two, mm; a closed stroke does not repeat its first point.</param>
/// <param name="Closed">The last point joins the first.</param>
public sealed record Stroke(Role Role, ImmutableArray<Vec2> Points, bool Closed = false)
{
    /// <summary>Drawn dashed where its role has both: a contour of shrink, the beginning and the end of a bend.</summary>
    public bool Dashed { get; init; }

    /// <summary>How each segment bends: the tangent of a quarter of the angle of its arc, positive where it turns left, 0 where it is straight. One for each segment; none
    /// where all are straight.</summary>
    public ImmutableArray<double> Bulges { get; init; } = [];

    /// <summary>Places that the smallest box around the stroke is also the smallest box around, mm.</summary>
    public IEnumerable<Vec2> Extremes => Bulges.IsEmpty ? Points : Arcs.SelectMany(arc => arc.Extremes);

    /// <summary>Its segments, also where they are straight.</summary>
    public IEnumerable<PathArc> Arcs => Enumerable.Range(0, Closed ? Points.Length : Points.Length - 1)
        .Select(i => new PathArc(Points[i], Points[(i + 1) % Points.Length], Bulges.IsEmpty ? 0 : Bulges[i]));
}

/// <summary>A line of text.</summary>
/// <param name="Role">Meaning.</param>
/// <param name="Text">One line.</param>
/// <param name="At">Anchor, mm.</param>
/// <param name="Height">Cap height, mm.</param>
/// <param name="Angle">Direction of writing, radians counter-clockwise.</param>
/// <param name="Anchor">Which point of the text stands at <paramref name="At"/>.</param>
public sealed record Lettering(Role Role, string Text, Vec2 At, double Height, double Angle = 0, Anchor Anchor = Anchor.Left);

/// <summary>Which point of a text's baseline stands at its place.</summary>
public enum Anchor
{
    /// <summary>Left end.</summary>
    Left,

    /// <summary>Middle.</summary>
    Middle,

    /// <summary>Right end.</summary>
    Right,
}

/// <summary>A 1:1 drawing in mm, x to the right and y up.</summary>
/// <param name="Title">Piece and job.</param>
/// <param name="Strokes">In drawing order; nothing is drawn twice.</param>
/// <param name="Letterings">In drawing order.</param>
public sealed record Drawing(string Title, ImmutableArray<Stroke> Strokes, ImmutableArray<Lettering> Letterings)
{
    /// <summary>Smallest box around all strokes.</summary>
    public Box Bounds => Box.Around(Strokes.SelectMany(s => s.Extremes));

    /// <summary>The drawing turned about its origin. Words that would stand on their heads are turned back.</summary>
    /// <param name="angle">Radians counter-clockwise.</param>
    public Drawing Turned(double angle) => this with
    {
        Strokes = [.. Strokes.Select(s => s with { Points = [.. s.Points.Select(p => p.Rotate(angle))] })],
        Letterings = [.. Letterings.Select(t => Upright(t with { At = t.At.Rotate(angle), Angle = t.Angle + angle }))],
    };

    // The same room, read from the other side.
    private static Lettering Upright(Lettering text)
    {
        double angle = Math.IEEERemainder(text.Angle, Math.Tau);
        if (Math.Abs(angle) <= 0.5 * Math.PI + 1e-9) return text with { Angle = angle };
        ImmutableArray<Vec2> corners = TextOutline.Of(text).Corners;
        return text with { At = corners[0] + corners[2] - text.At, Angle = angle - Math.CopySign(Math.PI, angle) };
    }
}
