using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Fitness;

/// <summary>Finds curves that were measured in opposite directions.</summary>
internal static class CurveDirection
{
    private const int Samples = 32;

    /// <summary>True if the two curves follow each other better when one of them is run backwards.</summary>
    /// <remarks>Compares Σ (Aᵢ − Ā)·(Bᵢ − B̄) over equal fractions of length with the same sum for the reversed B.</remarks>
    public static bool Opposed(SpaceCurve front, SpaceCurve rear)
    {
        Vec3[] a = Centred(front), b = Centred(rear);
        double same = 0, reversed = 0;
        for (int i = 0; i <= Samples; i++)
        {
            same += a[i].Dot(b[i]);
            reversed += a[i].Dot(b[Samples - i]);
        }
        // Equal sums (a curve against one at right angles to it) leave the order as given.
        return reversed > same + 1e-9 * (Math.Abs(same) + Math.Abs(reversed));
    }

    /// <summary>How far a curve runs from left to right, mm; negative if it runs from right to left.</summary>
    public static double Rightward(SpaceCurve curve) => curve.End.Point.Y - curve.Start.Point.Y;

    private static Vec3[] Centred(SpaceCurve curve)
    {
        Vec3[] points = [.. Enumerable.Range(0, Samples + 1).Select(i => curve.AtLength(curve.Length * i / Samples).Point)];
        Vec3 mean = points.Aggregate(Vec3.Zero, (sum, p) => sum + p) / points.Length;
        return [.. points.Select(p => p - mean)];
    }
}
