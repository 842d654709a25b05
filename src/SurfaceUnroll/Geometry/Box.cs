namespace SurfaceUnroll.Geometry;

/// <summary>An upright rectangle, mm.</summary>
/// <param name="Min">Lower left.</param>
/// <param name="Max">Upper right.</param>
public readonly record struct Box(Vec2 Min, Vec2 Max)
{
    /// <summary>mm.</summary>
    public double Width => Max.X - Min.X;

    /// <summary>mm.</summary>
    public double Height => Max.Y - Min.Y;

    /// <summary>Centre.</summary>
    public Vec2 Centre => 0.5 * (Min + Max);

    /// <summary>This box grown by <paramref name="margin"/> on every side.</summary>
    public Box Grow(double margin) => new(Min - new Vec2(margin, margin), Max + new Vec2(margin, margin));

    /// <summary>True if a place lies in the box or on its border.</summary>
    public bool Contains(Vec2 p) => p.X >= Min.X && p.X <= Max.X && p.Y >= Min.Y && p.Y <= Max.Y;

    /// <summary>True if a place lies in the box and not on its border.</summary>
    public bool Surrounds(Vec2 p) => p.X > Min.X && p.X < Max.X && p.Y > Min.Y && p.Y < Max.Y;

    /// <summary>True if two boxes have more than their borders in common.</summary>
    public bool Meets(Box other) => Min.X < other.Max.X && other.Min.X < Max.X && Min.Y < other.Max.Y && other.Min.Y < Max.Y;

    /// <summary>Smallest box around at least one point.</summary>
    public static Box Around(IEnumerable<Vec2> points)
    {
        double minX = double.PositiveInfinity, minY = minX, maxX = double.NegativeInfinity, maxY = maxX;
        foreach (Vec2 p in points)
        {
            minX = Math.Min(minX, p.X);
            minY = Math.Min(minY, p.Y);
            maxX = Math.Max(maxX, p.X);
            maxY = Math.Max(maxY, p.Y);
        }
        return new Box(new Vec2(minX, minY), new Vec2(maxX, maxY));
    }
}
