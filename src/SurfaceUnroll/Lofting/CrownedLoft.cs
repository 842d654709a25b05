using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>The sheet through three or more curves, smooth lengthwise.</summary>
/// <remarks>Each column is a C2 cubic spline through its places on the curves, all columns over the same knots (the mean distances between the curves), so the sheet passes
/// through every curve and is as smooth across as the curves are: a skinned surface in the sense of Piegl and Tiller, The NURBS Book, section 10.3.</remarks>
public static class CrownedLoft
{
    // Largest gap between a column and its chords, mm, and bounds to the number of rows between two curves.
    private const double Sagitta = 0.008;
    private const int FewestRows = 6, MostRows = 48;

    // Most places of a grid: what a laptop flattens in a few tenths of a second. On a large sheet that is bent a lot lengthwise the chords of its columns then miss the gap above by some
    // hundredths of a millimetre; the edges of the pattern are drawn through their places as curves.
    private const int MostPlaces = 8000;

    /// <summary>The sheet as a grid, moved from its measured face to the middle surface.</summary>
    /// <param name="curves">Three or more, front to rear, all from left to right.</param>
    /// <param name="offset">mm along the outside normal; negative moves inward.</param>
    /// <returns>Rows pass through every curve.</returns>
    public static SheetGrid Through(ImmutableArray<SpaceCurve> curves, double offset)
    {
        var matching = new CurveColumns(curves);
        LoftColumn[] columns = [.. matching.Shares01.Select(matching.At)];
        double[] steps = [.. Enumerable.Range(0, curves.Length - 1).Select(i => Math.Max(1e-9, columns.Average(c => (c.Places[i + 1] - c.Places[i]).Length)))];
        SplineColumn[] splines = [.. columns.Select(c => new SplineColumn(steps, c))];
        (int Span, double T)[] rows = [.. Rows(steps, splines)];
        var places = ImmutableArray.CreateBuilder<Vec3>(rows.Length * columns.Length);
        foreach ((int span, double t) in rows)
            foreach (SplineColumn spline in splines)
                places.Add(spline.Place(span, t) + spline.Shift(span, t, offset));
        return new SheetGrid(rows.Length, columns.Length, places.MoveToImmutable(), IsMirrored(curves));
    }

    private static bool IsMirrored(ImmutableArray<SpaceCurve> curves) =>
        MirrorPlane.Of(curves[0], curves[1]) is { } first && Enumerable.Range(1, curves.Length - 2).All(i =>
            MirrorPlane.Of(curves[0], curves[i + 1]) is { } other && first.Normal.AngleTo(other.Normal) < 1e-6);

    // Between two curves as many rows as the most bent column asks for, or the same share of them everywhere if that is too many.
    private static IEnumerable<(int Span, double T)> Rows(double[] steps, SplineColumn[] splines)
    {
        int[] wanted = [.. steps.Select((_, i) => Math.Clamp((int)Math.Ceiling(Math.Sqrt(splines.Max(s => s.Bend(i)) / (8 * Sagitta))), FewestRows, MostRows))];
        double share = Math.Min(1, (double)MostPlaces / (splines.Length * wanted.Sum()));
        for (int i = 0; i < steps.Length; i++)
        {
            int count = Math.Max(FewestRows, (int)(share * wanted[i]));
            for (int k = 0; k < count; k++) yield return (i, (double)k / count);
        }
        yield return (steps.Length - 1, 1);
    }

    // One column: the spline of its places, and those of the derivatives across on either side.
    private sealed class SplineColumn(double[] steps, LoftColumn column)
    {
        private readonly CubicPiece[] _place = Spline(steps, column.Places), _before = Spline(steps, column.Before), _after = Spline(steps, column.After);

        public Vec3 Place(int span, double t) => _place[span].At(t).Point;

        /// <summary>Largest second derivative over a span's parameter from 0 to 1, mm: eight times the gap to its chord.</summary>
        public double Bend(int span) => Math.Max(_place[span].At(0).D2.Length, _place[span].At(1).D2.Length);

        /// <summary>To the parallel surface; along a crease to where the parallel surfaces of both sides meet.</summary>
        public Vec3 Shift(int span, double t, double offset)
        {
            if (offset == 0) return Vec3.Zero;
            Vec3 along = _place[span].At(t).D1;
            Vec3 left = along.Cross(_before[span].At(t).Point).Unit, right = along.Cross(_after[span].At(t).Point).Unit;
            if (left == Vec3.Zero) left = right;
            if (right == Vec3.Zero) right = left;
            return offset / (1 + left.Dot(right)) * (left + right);
        }

        private static CubicPiece[] Spline(double[] steps, ImmutableArray<Vec3> values)
        {
            double[] x = Slopes(v => v.X), y = Slopes(v => v.Y), z = Slopes(v => v.Z);
            return [.. steps.Select((h, i) => CubicPiece.Hermite(values[i], h * new Vec3(x[i], y[i], z[i]), values[i + 1], h * new Vec3(x[i + 1], y[i + 1], z[i + 1])))];

            double[] Slopes(Func<Vec3, double> part) => SplineSlopes.Open(steps, [.. values.Select(part)], SplineEnd.Parabola, SplineEnd.Parabola);
        }
    }
}
