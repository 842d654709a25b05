using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>How a smooth curve behaves at one of its ends.</summary>
internal enum CurveEnd
{
    /// <summary>Nothing is known: the end span is a parabola.</summary>
    Free,

    /// <summary>The curve goes on as its left-right mirror image, so it meets the plane y = 0 square.</summary>
    Mirrored,
}

/// <summary>C2 interpolating cubic splines through points in space, parametrised by the chords (the parameter grows by each span's chord).</summary>
internal static class CubicSpline
{
    /// <summary>One cubic per span through at least two points, neighbours distinct; two free points give a straight span, three a parabola.</summary>
    public static ImmutableArray<CurvePiece> Open(ReadOnlySpan<Vec3> points, CurveEnd start, CurveEnd end)
    {
        double[] steps = Chords(points);
        double[] Slopes(double[] values, SplineEnd mirrored) => SplineSlopes.Open(
            steps, values, start == CurveEnd.Free ? SplineEnd.Parabola : mirrored, end == CurveEnd.Free ? SplineEnd.Parabola : mirrored);
        (double[] x, double[] y, double[] z) = Components(points);
        return Assemble(points, steps, Slopes(x, SplineEnd.Level), Slopes(y, SplineEnd.Odd), Slopes(z, SplineEnd.Level));
    }

    /// <summary>One cubic per span of a closed curve, smooth at the join too; at least four points, the last equal to the first.</summary>
    public static ImmutableArray<CurvePiece> Periodic(ReadOnlySpan<Vec3> points)
    {
        double[] steps = Chords(points);
        (double[] x, double[] y, double[] z) = Components(points);
        return Assemble(points, steps, SplineSlopes.Periodic(steps, x), SplineSlopes.Periodic(steps, y), SplineSlopes.Periodic(steps, z));
    }

    private static ImmutableArray<CurvePiece> Assemble(ReadOnlySpan<Vec3> points, double[] steps, double[] dx, double[] dy, double[] dz)
    {
        var pieces = ImmutableArray.CreateBuilder<CurvePiece>(steps.Length);
        for (int i = 0; i < steps.Length; i++)
        {
            var d0 = new Vec3(dx[i], dy[i], dz[i]);
            var d1 = new Vec3(dx[i + 1], dy[i + 1], dz[i + 1]);
            pieces.Add(CubicPiece.Hermite(points[i], steps[i] * d0, points[i + 1], steps[i] * d1));
        }
        return pieces.MoveToImmutable();
    }

    private static double[] Chords(ReadOnlySpan<Vec3> points)
    {
        var chords = new double[points.Length - 1];
        for (int i = 0; i < chords.Length; i++) chords[i] = (points[i + 1] - points[i]).Length;
        return chords;
    }

    private static (double[] X, double[] Y, double[] Z) Components(ReadOnlySpan<Vec3> points)
    {
        double[] x = new double[points.Length], y = new double[points.Length], z = new double[points.Length];
        for (int i = 0; i < points.Length; i++) (x[i], y[i], z[i]) = points[i];
        return (x, y, z);
    }
}
