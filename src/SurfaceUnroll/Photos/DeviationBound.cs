using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>The stated error of a traced curve: in 95 of 100 photos the largest distance between the traced curve and the true one, laid on each other as well as they fit, is no larger.</summary>
/// <remarks>Errors of the camera's numbers, drawn from what the least squares knows of them (Student's t, W. S. Gosset, 1908), move every place of the curve; what turns and shifts it as a whole is taken off; the
/// largest of what is left, square to the curve, is put in order over many draws. The draws are the same at every run.</remarks>
internal static class DeviationBound
{
    // The 95th hundredth of so many draws is itself sure to half a hundredth.
    private const int Draws = 2000;

    private const double Covered = 0.95;

    // A largest of so many places along the curve is the largest of all: its error is smooth.
    private const int Places = 40;

    /// <summary>The bound, mm.</summary>
    /// <param name="line">The curve in the axes of the reference, mm.</param>
    /// <param name="noise">Standard error of picking, mm.</param>
    /// <param name="scale">What is known of the camera.</param>
    public static double Of(ImmutableArray<Vec2> line, double noise, PhotoScale scale)
    {
        Vec2[] at = Even(line);
        Vec2[] normals = [.. at.Select((_, i) => (at[Math.Min(at.Length - 1, i + 1)] - at[Math.Max(0, i - 1)]).Unit.Left)];
        double[][] moved = Moved(at, normals, scale);
        double[][] rigid = Rigid(at, normals);
        var normal = new NormalDraws(1);
        double[] largest = new double[Draws], off = new double[at.Length], draw = new double[moved[0].Length];
        for (int d = 0; d < Draws; d++)
        {
            double student = normal.Student(scale.Freedom);
            for (int k = 0; k < draw.Length; k++) draw[k] = student * normal.Next();
            for (int i = 0; i < off.Length; i++)
            {
                double sum = noise * normal.Next();
                double[] row = moved[i];
                for (int k = 0; k < row.Length; k++) sum += row[k] * draw[k];
                off[i] = sum;
            }
            foreach (double[] way in rigid)
            {
                double share = 0;
                for (int i = 0; i < off.Length; i++) share += way[i] * off[i];
                for (int i = 0; i < off.Length; i++) off[i] -= share * way[i];
            }
            for (int i = 0; i < off.Length; i++) largest[d] = Math.Max(largest[d], Math.Abs(off[i]));
        }
        Array.Sort(largest);
        return largest[(int)Math.Ceiling(Covered * Draws) - 1];
    }

    private static Vec2[] Even(ImmutableArray<Vec2> line)
    {
        double length = PathLength(line), done = 0;
        var even = new List<Vec2> { line[0] };
        for (int i = 1; i < line.Length; i++)
        {
            double part = (line[i] - line[i - 1]).Length;
            while (part > 0 && even.Count < Places - 1 && done + part >= even.Count * length / (Places - 1))
                even.Add(Vec2.Lerp(line[i - 1], line[i], (even.Count * length / (Places - 1) - done) / part));
            done += part;
        }
        even.Add(line[^1]);
        return [.. even];
    }

    private static double PathLength(ImmutableArray<Vec2> line) => line.Zip(line.Skip(1), (a, b) => (b - a).Length).Sum();

    // By how much each place moves along its normal for one spread of each independent error, mm.
    private static double[][] Moved(Vec2[] at, Vec2[] normals, PhotoScale scale)
    {
        double[] numbers = scale.Camera.Numbers;
        Vec2[] pixels = [.. at.Select(scale.Camera.ToPhoto)];
        double[][] moved = [.. at.Select(_ => new double[scale.ErrorFactor[0].Length])];
        for (int k = 0; k < scale.ErrorFactor[0].Length; k++)
        {
            PlaneCamera Off(double share) => scale.Camera.With([.. numbers.Select((v, i) => v + share * scale.ErrorFactor[i][k])]);
            (PlaneCamera ahead, PlaneCamera behind) = (Off(0.5), Off(-0.5));
            for (int i = 0; i < at.Length; i++) moved[i][k] = normals[i].Dot(ahead.ToPlane(pixels[i]) - behind.ToPlane(pixels[i]));
        }
        return moved;
    }

    // Shifts and a turn as moves along the normals, made square to each other and of length 1; what a straight curve has too many is left out.
    private static double[][] Rigid(Vec2[] at, Vec2[] normals)
    {
        Vec2 middle = (1.0 / at.Length) * at.Aggregate((a, b) => a + b);
        double size = at.Max(p => (p - middle).Length);
        var ways = new List<double[]>();
        foreach (double[] way in (double[][])[[.. normals.Select(n => n.X)], [.. normals.Select(n => n.Y)], [.. normals.Select((n, i) => n.Dot((at[i] - middle).Left) / size)]])
        {
            double before = Math.Sqrt(way.Sum(v => v * v));
            foreach (double[] other in ways)
            {
                double share = way.Zip(other, (a, b) => a * b).Sum();
                for (int i = 0; i < way.Length; i++) way[i] -= share * other[i];
            }
            double left = Math.Sqrt(way.Sum(v => v * v));
            if (left > 1e-6 * Math.Max(before, 1)) ways.Add([.. way.Select(v => v / left)]);
        }
        return [.. ways];
    }
}
