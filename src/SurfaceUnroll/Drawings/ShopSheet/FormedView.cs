using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>One thing to paint of a formed piece.</summary>
/// <param name="Points">On the picture, mm of the piece, y up.</param>
/// <param name="Grey">0 black to 1 white.</param>
/// <param name="LineWidth">mm on paper; 0 for a filled facet.</param>
/// <param name="Nearness">To the eye, mm: larger is nearer.</param>
public readonly record struct FormedShape(ImmutableArray<Vec2> Points, double Grey, double LineWidth, double Nearness);

/// <summary>Formed pieces seen from far off, in greys.</summary>
/// <param name="Shapes">From back to front.</param>
/// <param name="Right">Unit vector in job space that points right on the picture.</param>
/// <param name="Up">The same upward.</param>
/// <param name="ToEye">The same to the eye.</param>
/// <param name="From">Where the eye stands, in words.</param>
public sealed record FormedView(ImmutableArray<FormedShape> Shapes, Vec3 Right, Vec3 Up, Vec3 ToEye, string From)
{
    // A place this part of the picture's size behind a facet is hidden by it; less may be its own facet, whose depth is that of its middle.
    private const double Behind = 0.06;

    /// <summary>Smallest box around all shapes, mm of the piece.</summary>
    public Box Bounds { get; } = Box.Around(Shapes.SelectMany(s => s.Points));

    /// <summary>A place of job space on the picture, mm of the piece.</summary>
    public Vec2 Project(Vec3 p) => new(Right.Dot(p), Up.Dot(p));

    /// <summary>Something clearly nearer to the eye lies over a place.</summary>
    public bool Hides(Vec3 p)
    {
        Vec2 at = Project(p);
        double depth = ToEye.Dot(p) + Behind * (Bounds.Width + Bounds.Height);
        return Shapes.Any(s => s.LineWidth == 0 && s.Nearness > depth && Polygon(s.Points, at));
    }

    // Even-odd rule.
    private static bool Polygon(ImmutableArray<Vec2> loop, Vec2 p)
    {
        bool inside = false;
        for (int i = 0, j = loop.Length - 1; i < loop.Length; j = i++)
        {
            (Vec2 a, Vec2 b) = (loop[j], loop[i]);
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + (p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)) inside = !inside;
        }
        return inside;
    }
}
