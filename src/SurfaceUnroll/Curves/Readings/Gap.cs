using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>Where a reading should lie: the curves across the gap that it leaves.</summary>
/// <param name="Ways">Places along each.</param>
/// <param name="Width">Between the neighbours, mm.</param>
internal sealed record Gap(Vec2[][] Ways, double Width)
{
    /// <summary>Distance of a place from the nearer of the curves, mm.</summary>
    public double From(Vec2 place)
    {
        double least = double.PositiveInfinity;
        foreach (Vec2[] way in Ways)
        {
            for (int i = 0; i + 1 < way.Length; i++)
            {
                Vec2 a = way[i], d = way[i + 1] - a;
                double length = d.X * d.X + d.Y * d.Y, along = length > 0 ? Math.Clamp(((place.X - a.X) * d.X + (place.Y - a.Y) * d.Y) / length, 0, 1) : 0;
                double x = place.X - a.X - along * d.X, y = place.Y - a.Y - along * d.Y;
                least = Math.Min(least, x * x + y * y);
            }
        }
        return Math.Sqrt(least);
    }
}
