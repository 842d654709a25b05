using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Patterns;

/// <summary>Size and bend of a strip.</summary>
/// <param name="FrontLength">Front edge, mm.</param>
/// <param name="RearLength">Rear edge, mm.</param>
/// <param name="FrontWidth">Width square to the element line at the front, mm.</param>
/// <param name="RearWidth">Width square to the element line at the rear, mm.</param>
/// <param name="Turn">Turn of the sheet's normal across the strip, radians; positive where the outside is convex.</param>
internal readonly record struct StripBend(double FrontLength, double RearLength, double FrontWidth, double RearWidth, double Turn)
{
    /// <summary>The bend of one strip.</summary>
    public static StripBend Of(Strip s)
    {
        StripEdge front = new(s, IsFront: true), rear = new(s, IsFront: false);
        Vec3 rightward = s.Middle.Normal.Cross(s.Middle.Ruling);
        double turn = s.Left.Normal.AngleTo(s.Right.Normal) * Math.Sign((s.Right.Normal - s.Left.Normal).Dot(rightward));
        return new StripBend(front.Length.ToRight, rear.Length.ToRight, front.Integral(Across).ToRight, rear.Integral(Across).ToRight, turn);
    }

    /// <summary>The bend at a line between two strips: both together, or the one that bends where the other is flat.</summary>
    public static StripBend At(StripBend? left, StripBend? right, double flatTurn)
    {
        if (left is not { } l) return right!.Value;
        if (right is not { } r || Math.Abs(r.Turn) <= flatTurn) return l;
        if (Math.Abs(l.Turn) <= flatTurn) return r;
        return new StripBend(
            l.FrontLength + r.FrontLength, l.RearLength + r.RearLength, l.FrontWidth + r.FrontWidth, l.RearWidth + r.RearWidth, l.Turn + r.Turn);
    }

    // Sine of the angle between edge and element line; a line of no length stands square to what it is taken for.
    private static double Across(Vec3 tangent, Station s)
    {
        double length = s.Ruling.Length;
        return length > 0 ? tangent.Cross(s.Ruling).Length / length : 1;
    }
}
