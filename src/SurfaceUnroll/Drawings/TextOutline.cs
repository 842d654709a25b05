using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>The rectangle that a line of text fills: its four corners counter-clockwise from the start of the line below it, mm.</summary>
/// <param name="Corners">Four points.</param>
public readonly record struct TextOutline(ImmutableArray<Vec2> Corners)
{
    // Depth of descenders below the baseline, in cap heights (Inter: 0.28).
    private const double Descent = 0.3;

    /// <summary>Outline of a lettering in its drawing.</summary>
    public static TextOutline Of(Lettering text) => Of(text.Text, text.At, text.Height, text.Angle, text.Anchor);

    /// <summary>Outline of a text on its page.</summary>
    public static TextOutline Of(PageText text) => Of(text.Text, text.At, text.Height, text.Angle, text.Anchor);

    /// <summary>Smallest upright box around it.</summary>
    public Box Bounds => Box.Around(Corners);

    /// <summary>True if the two rectangles have more than their rims in common (separating axes).</summary>
    public bool Overlaps(TextOutline other) => !Separates(Corners, other.Corners) && !Separates(other.Corners, Corners);

    private static bool Separates(ImmutableArray<Vec2> a, ImmutableArray<Vec2> b)
    {
        for (int i = 0; i < 2; i++)
        {
            Vec2 axis = a[i + 1] - a[i];
            if (a.Max(axis.Dot) <= b.Min(axis.Dot) || b.Max(axis.Dot) <= a.Min(axis.Dot)) return true;
        }
        return false;
    }

    private static TextOutline Of(string text, Vec2 at, double height, double angle, Anchor anchor)
    {
        double width = PageTextWidth.Of(text, height);
        double start = anchor switch { Anchor.Middle => -0.5 * width, Anchor.Right => -width, _ => 0 };
        double low = -Descent * height;
        Vec2 Corner(double x, double y) => at + new Vec2(x, y).Rotate(angle);
        return new TextOutline([Corner(start, low), Corner(start + width, low), Corner(start + width, height), Corner(start, height)]);
    }
}
