using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>A plane in which a job is its own mirror image.</summary>
/// <param name="Point">On the plane, mm.</param>
/// <param name="Normal">Unit.</param>
internal readonly record struct MirrorPlane(Vec3 Point, Vec3 Normal)
{
    // Measured points that were mirrored by hand agree to rounding only; this is far below any measurement and far above rounding.
    private const double Tolerance = 1e-9;

    /// <summary>The plane that mirrors both curves end for end, or null.</summary>
    public static MirrorPlane? Of(SpaceCurve front, SpaceCurve rear)
    {
        // A quarter and three quarters along are mirror images too, and lie apart even on a closed curve.
        Vec3 a = front.AtLength(0.25 * front.Length).Point, b = front.AtLength(0.75 * front.Length).Point;
        if ((b - a).Length < Tolerance * front.Length) return null;
        var plane = new MirrorPlane(0.5 * (a + b), (b - a).Unit);
        return plane.Mirrors(front) && plane.Mirrors(rear) ? plane : null;
    }

    /// <summary>Mirror image of a place.</summary>
    public Vec3 Image(Vec3 p) => p - (2 * (p - Point).Dot(Normal)) * Normal;

    /// <summary>True if a curve that runs so crosses the plane squarely.</summary>
    public bool IsSquareTo(Vec3 direction) => direction.Cross(Normal).Length <= 1e-7 * direction.Length;

    /// <summary>Mirror images of pieces of the left half, run from the middle to the right.</summary>
    public IEnumerable<CurvePiece> Images(IEnumerable<CurvePiece> pieces)
    {
        var frame = new Frame(Image(Vec3.Zero), Direction(new(1, 0, 0)), Direction(new(0, 1, 0)), Direction(new(0, 0, 1)));
        return pieces.Reverse().Select(p => new ReversedPiece(p.Placed(frame)));
    }

    /// <summary>Mirror image of a strip: what was its left is now its right.</summary>
    public Strip Image(Strip strip) =>
        new(Image(strip.Right), Image(strip.Middle), Image(strip.Left), strip.FrontStill, strip.RearStill);

    private Station Image(Station s) =>
        new(Image(s.Front), Image(s.Rear), -Direction(s.FrontTangent), -Direction(s.RearTangent), Direction(s.Normal), s.Twist);

    private Vec3 Direction(Vec3 v) => v - (2 * v.Dot(Normal)) * Normal;

    private bool Mirrors(SpaceCurve curve)
    {
        int count = curve.Pieces.Length;
        double tolerance = Tolerance * (curve.Length + curve.Start.Point.Length);
        for (int i = 0; i < count; i++)
        {
            // Six places fix a cubic and more; the derivative is compared as well, so that the coordinate is mirrored and not only the shape.
            for (int k = 0; k <= 5; k++)
            {
                CurveSample left = curve.Pieces[i].At(k / 5.0), right = curve.Pieces[count - 1 - i].At(1 - k / 5.0);
                if ((Image(left.Point) - right.Point).Length > tolerance) return false;
                if ((Direction(left.D1) + right.D1).Length > 100 * tolerance) return false;
            }
        }
        return true;
    }
}
