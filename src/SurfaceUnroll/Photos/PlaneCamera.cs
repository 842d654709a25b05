using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>How places of a flat thing, mm, come to stand in a photo, pixels: perspective, then the bow of the lens.</summary>
/// <remarks>Seen without bow at a distance r from the middle of the lens, in half diagonals, a place stands at r (1 + bow r²): the first term of D. C. Brown's series
/// (Close-range camera calibration, 1971). A bow &lt; 0 draws straight lines as a barrel, &gt; 0 as a cushion.</remarks>
/// <param name="Seen">From millimetres, less <paramref name="Origin"/> and in <paramref name="Size"/>, to half diagonals from the middle of the lens, y down.</param>
/// <param name="Bow">Share by which the corner of the photo is moved outwards.</param>
/// <param name="Origin">Middle of the reference, mm.</param>
/// <param name="Size">Half the size of the reference, mm.</param>
/// <param name="Middle">Middle of the photo, pixels.</param>
/// <param name="HalfDiagonal">Of the photo, pixels.</param>
public sealed record PlaneCamera(Homography Seen, double Bow, Vec2 Origin, double Size, Vec2 Middle, double HalfDiagonal)
{
    /// <summary>How many numbers a camera has: see <see cref="Numbers"/>.</summary>
    internal const int Count = 11;

    /// <summary>Where the bow of the lens has its middle, from that of the photo, in half diagonals, y down.</summary>
    public Vec2 Astray { get; init; }

    // A bow at which 1 + 3 bow r² is nought would fold the corner of the photo onto itself; no lens comes near.
    internal const double StrongestBow = 0.3;

    /// <summary>Where a place on the flat is seen, pixels.</summary>
    public Vec2 ToPhoto(Vec2 p) => InPhoto(Seen.Map((1 / Size) * (p - Origin)));

    /// <summary>The place on the flat that is seen at a pixel, mm.</summary>
    public Vec2 ToPlane(Vec2 q) => Origin + Size * Seen.Back(WithoutBow(q));

    /// <summary>Pixels of a millimetre near a pixel: the smaller and the larger of all directions.</summary>
    public (double Least, double Most) PixelsPerMillimetre(Vec2 q)
    {
        Vec2 at = ToPlane(q), x = ToPlane(q + new Vec2(1, 0)) - at, y = ToPlane(q + new Vec2(0, 1)) - at;
        double sum = x.Dot(x) + y.Dot(y), area = x.Cross(y), root = Math.Sqrt(Math.Max(sum * sum - 4 * area * area, 0));
        return (1 / Math.Sqrt(0.5 * (sum + root)), 1 / Math.Sqrt(Math.Max(0.5 * (sum - root), 1e-300)));
    }

    /// <summary>The eight numbers of the perspective, then the bow, then both of its middle.</summary>
    internal double[] Numbers => [.. Seen.Numbers, Bow, Astray.X, Astray.Y];

    /// <summary>The same photo and reference with other numbers.</summary>
    internal PlaneCamera With(ReadOnlySpan<double> numbers) => this with { Seen = Homography.Of(numbers), Bow = numbers[8], Astray = new Vec2(numbers[9], numbers[10]) };

    /// <summary>What is known of a lens before a photo has told anything, as residuals of spread 1.</summary>
    internal static IEnumerable<double> LensResiduals(double[] numbers) => [numbers[8] / HandErrors.Bow, numbers[9] / HandErrors.Astray, numbers[10] / HandErrors.Astray];

    /// <summary>In half diagonals from the middle of the lens, the bow taken out.</summary>
    internal Vec2 WithoutBow(Vec2 q)
    {
        Vec2 bent = (1 / HalfDiagonal) * (q - Middle) - Astray;
        double far = bent.Length, r = far;
        if (far == 0 || Bow == 0) return bent;
        // Newton on r (1 + bow r²) = far: at bows that lenses have, four rounds leave less than rounding.
        for (int i = 0; i < 6; i++) r -= (r * (1 + Bow * r * r) - far) / Math.Max(1 + 3 * Bow * r * r, 0.1);
        return (r / far) * bent;
    }

    private Vec2 InPhoto(Vec2 straight) => Middle + HalfDiagonal * (Astray + (1 + Bow * straight.Dot(straight)) * straight);
}
