using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>Whether any camera sees a flat thing so as a photo shows it. A homography fits every four-sided figure; a camera has square pixels, looks through the middle of its photo, and has a focal length that lenses
/// have: so what stands at right angles on the flat must do so in its rays, and what is as long across as up must be so (Z. Zhang &amp; L.-W. He, Whiteboard scanning and image enhancement, 2007, equations 13 to 20).</summary>
/// <remarks>Seen from straight above every focal length says the same of the shape. Seen aslant along one of its sides, a thing may be longer and the lens longer too: hence the judgement over all lenses of a range.</remarks>
internal static class PlausibleView
{
    /// <summary>Focal lengths of all lenses that photos are taken with, in half diagonals of the photo: from the widest of a phone to a long telephoto lens, 11 to 130 mm on 24 by 36 mm.</summary>
    public static readonly (double Least, double Most) AnyLens = (0.5, 6);

    /// <summary>Of the lenses that most photos are taken with: the main one of a phone, and up to twofold zoom, 19 to 54 mm on 24 by 36 mm.</summary>
    public static readonly (double Least, double Most) UsualLens = (0.9, 2.5);

    // Where lenses look, from the middle of the photo, in half diagonals: a lens that is moved against shake looks beside it by a hundredth or so (common practice, no source).
    private const double LooksBeside = 0.02;

    // Steps of focal length, each a hundredth or so.
    private const int Steps = 160;

    /// <summary>True if some lens of a range explains the photo: χ² of a right angle and of a ratio of sides is then no more than chance makes it once in a thousand.</summary>
    /// <param name="scale">What the reference tells.</param>
    /// <param name="lens">Range.</param>
    /// <param name="stretch">By how much more the flat thing is wide, against its height, than was told.</param>
    /// <param name="slack">Standard error that is granted to both on top of what is known of the homography, as a share.</param>
    public static bool Explains(PhotoScale scale, (double Least, double Most) lens, double stretch, double slack) =>
        Views(scale, lens, slack).Any(v =>
        {
            double a = v.Square, b = v.Shape - Math.Log(stretch), det = v.Squares * v.Shapes - v.Both * v.Both;
            return a * a * v.Shapes - 2 * a * b * v.Both + b * b * v.Squares <= ChiSquare.TwoHardly * det;
        });

    /// <summary>By how much more the flat thing may be wide, against its height, than was told; null where no lens of the range sees right angles there.</summary>
    public static (double Least, double Most)? Stretch(PhotoScale scale, (double Least, double Most) lens, double slack)
    {
        View[] seen = [.. Views(scale, lens, slack).Where(v => v.Square * v.Square < ChiSquare.OneHardly * v.Squares)];
        return seen.Length == 0 ? null : (Math.Exp(seen.Min(v => v.Shape)), Math.Exp(seen.Max(v => v.Shape)));
    }

    // Cosine between what is across and what is up, logarithm of their ratio; and the covariance of both.
    private readonly record struct View(double Square, double Shape, double Squares, double Shapes, double Both);

    private static IEnumerable<View> Views(PhotoScale scale, (double Least, double Most) lens, double slack)
    {
        double[] numbers = scale.Camera.Numbers;
        ImmutableArray<ImmutableArray<double>> errors = scale.ErrorFactor;
        int count = errors[0].Length;
        double[][] ahead = [.. Enumerable.Range(0, count).Select(k => Off(k, 0.5))], behind = [.. Enumerable.Range(0, count).Select(k => Off(k, -0.5))];
        double[] Off(int k, double share) => [.. numbers.Select((v, i) => v + share * errors[i][k])];
        for (int step = 0; step <= Steps; step++)
        {
            double focal = lens.Least * Math.Pow(lens.Most / lens.Least, (double)step / Steps), squares = slack * slack, shapes = slack * slack, both = 0;
            void Add((double Square, double Shape) a, (double Square, double Shape) b)
            {
                (double square, double shape) = (a.Square - b.Square, a.Shape - b.Shape);
                squares += square * square;
                shapes += shape * shape;
                both += square * shape;
            }
            for (int k = 0; k < count; k++) Add(Rays(ahead[k], focal, 0, 0), Rays(behind[k], focal, 0, 0));
            Add(Rays(numbers, focal, 0.5 * LooksBeside, 0), Rays(numbers, focal, -0.5 * LooksBeside, 0));
            Add(Rays(numbers, focal, 0, 0.5 * LooksBeside), Rays(numbers, focal, 0, -0.5 * LooksBeside));
            (double s, double h) = Rays(numbers, focal, 0, 0);
            yield return new View(s, h, squares, shapes, both);
        }
    }

    // The first two columns of the homography, as rays of a lens that looks (x, y) beside the middle.
    private static (double Square, double Shape) Rays(double[] n, double focal, double x, double y)
    {
        (double ax, double ay, double az) = ((n[0] - x * n[6]) / focal, (n[3] - y * n[6]) / focal, n[6]);
        (double bx, double by, double bz) = ((n[1] - x * n[7]) / focal, (n[4] - y * n[7]) / focal, n[7]);
        double a = Math.Sqrt(ax * ax + ay * ay + az * az), b = Math.Sqrt(bx * bx + by * by + bz * bz);
        return ((ax * bx + ay * by + az * bz) / (a * b), Math.Log(a / b));
    }
}
