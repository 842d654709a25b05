using System.Collections.Immutable;

namespace SurfaceUnroll.Photos;

/// <summary>A photo as amounts of light, row by row from the top. Places in it are pixels to the right and down from its upper left corner; the first pixel reaches from 0 to 1 both ways.</summary>
/// <param name="Width">Pixels.</param>
/// <param name="Height">Pixels.</param>
/// <param name="Light">0 black to 65,535 white, in proportion to the light and not to how bright it looks: an edge that the lens has blurred keeps its middle only so.</param>
public sealed record GreyPhoto(int Width, int Height, ImmutableArray<ushort> Light)
{
    /// <summary>Half the diagonal, pixels: the unit of distances from the middle in which the bow of a lens is told.</summary>
    public double HalfDiagonal => 0.5 * Math.Sqrt((double)Width * Width + (double)Height * Height);

    /// <summary>True if a place lies in the photo.</summary>
    public bool Holds(double x, double y) => x >= 0 && y >= 0 && x <= Width && y <= Height;

    /// <summary>Light at a place, between the middles of pixels in proportion; outside, of the nearest pixel.</summary>
    public double At(double x, double y)
    {
        double u = Math.Clamp(x - 0.5, 0, Width - 1), v = Math.Clamp(y - 0.5, 0, Height - 1);
        int column = Math.Min((int)u, Width - 2), row = Math.Min((int)v, Height - 2);
        u -= column;
        v -= row;
        ReadOnlySpan<ushort> light = Light.AsSpan();
        int at = row * Width + column;
        double upper = light[at] + u * (light[at + 1] - light[at]), lower = light[at + Width] + u * (light[at + Width + 1] - light[at + Width]);
        return upper + v * (lower - upper);
    }
}
