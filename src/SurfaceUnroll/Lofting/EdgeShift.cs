using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>How far one edge of one strip moves when the sheet moves to its middle surface, mm in job space.</summary>
/// <param name="Left">At the left element line.</param>
/// <param name="Middle">At the middle one.</param>
/// <param name="Right">At the right one.</param>
internal readonly record struct EdgeShift(Vec3 Left, Vec3 Middle, Vec3 Right)
{
    // A tip's sideways shift is faded out along a curved edge over this many times itself, so that the edge never runs backwards.
    private const double FadeLengths = 4;

    // Shifts below this (mm) are rounding, not a gap between a tip and its neighbours.
    private const double Negligible = 1e-9;

    // Cosine between the sides of a fold beyond which a mitre would run away: folds sharper than 170° keep their two separate edges.
    private const double SharpestFold = -0.985;

    // Spread of a fan's normals (radians, or a product of such) below which they count as one.
    private const double Parallel = 1e-6;

    /// <summary>Shifts of one edge of every strip.</summary>
    /// <param name="strips">Strips of the measured sheet.</param>
    /// <param name="offset">mm along the outside normal.</param>
    /// <param name="frontEdge">The front edge, or the rear one.</param>
    public static ImmutableArray<EdgeShift> Along(ImmutableArray<Strip> strips, double offset, bool frontEdge)
    {
        EdgeShift[] shifts = [.. strips.Select(s => new EdgeShift(offset * s.Left.Normal, offset * s.Middle.Normal, offset * s.Right.Normal))];
        var pulls = new List<(int Strip, int Step, Vec3 Pull)>();
        for (int i = 0; i < strips.Length; i++)
        {
            if (!IsTip(strips[i]))
            {
                if (i + 1 < strips.Length && !IsTip(strips[i + 1])) MeetAtCrease(i);
                continue;
            }
            int last = i;
            while (last + 1 < strips.Length && IsTip(strips[last + 1])) last++;
            Vec3 tip = offset * TipDirection(strips.AsSpan()[i..(last + 1)]);
            if (i > 0) pulls.Add((i - 1, -1, tip - shifts[i - 1].Right));
            if (last + 1 < strips.Length) pulls.Add((last + 1, +1, tip - shifts[last + 1].Left));
            for (int k = i; k <= last; k++) shifts[k] = new EdgeShift(tip, tip, tip);
            i = last;
        }
        foreach ((int strip, int step, Vec3 pull) in pulls) Fade(strip, step, pull);
        return [.. shifts];

        // Two strips that meet in a sharp bend both end at the mitre, the offset away from both their planes.
        void MeetAtCrease(int left)
        {
            Vec3 n0 = strips[left].Right.Normal, n1 = strips[left + 1].Left.Normal;
            if (n0.Cross(n1).Length < Parallel || n0.Dot(n1) < SharpestFold) return;
            Vec3 mitre = (offset / (1 + n0.Dot(n1))) * (n0 + n1);
            pulls.Add((left, -1, mitre - shifts[left].Right));
            pulls.Add((left + 1, +1, mitre - shifts[left + 1].Left));
        }

        bool IsTip(Strip s) => frontEdge ? s.FrontStill : s.RearStill;
        Vec3 Place(Station s) => frontEdge ? s.Front : s.Rear;
        Vec3 Tangent(Station s) => frontEdge ? s.FrontTangent : s.RearTangent;

        // The edge beside a tip keeps to its own tangent plane but must end at the tip: its end is pulled there, and the pull fades out
        // along the edge, over the whole of a straight one so that it stays straight.
        void Fade(int start, int step, Vec3 pull)
        {
            if (pull.Length < Negligible) return;
            double reach = FadeLengths * pull.Length, straight = 0;
            for (int k = start; InEdge(k) && Tangent(strips[k].Middle).AngleTo(Tangent(strips[start].Middle)) < 1e-9; k += step)
                straight += (Place(strips[k].Right) - Place(strips[k].Left)).Length;
            reach = Math.Max(reach, straight);
            double done = 0;
            for (int k = start; InEdge(k) && done < reach; k += step)
            {
                Strip s = strips[k];
                double half = (Place(s.Middle) - Place(step > 0 ? s.Left : s.Right)).Length;
                double whole = half + (Place(step > 0 ? s.Right : s.Left) - Place(s.Middle)).Length;
                Vec3 near = Share(done), middle = Share(done + half), far = Share(done + whole);
                shifts[k] = new EdgeShift(
                    shifts[k].Left + (step > 0 ? near : far), shifts[k].Middle + middle, shifts[k].Right + (step > 0 ? far : near));
                done += whole;
            }

            Vec3 Share(double distance) => Math.Max(0, 1 - distance / reach) * pull;
        }

        bool InEdge(int k) => k >= 0 && k < strips.Length && !IsTip(strips[k]);
    }

    /// <summary>Unit tangents of the moved edge: the measured tangent plus the change of the shift along the edge, by the parabola through the three shifts.</summary>
    public ImmutableArray<Vec3> Tangents(Vec3 p0, Vec3 p1, Vec3 p2, Vec3 t0, Vec3 t1, Vec3 t2)
    {
        double h0 = (p1 - p0).Length, h1 = (p2 - p1).Length;
        if (h0 <= 0 || h1 <= 0) return [t0, t1, t2];
        Vec3 d0 = (Middle - Left) / h0, d1 = (Right - Middle) / h1;
        Vec3 bend = (d1 - d0) / (h0 + h1);
        return [(t0 + d0 - h0 * bend).Unit, (t1 + d0 + h0 * bend).Unit, (t2 + d1 + h1 * bend).Unit];
    }

    // The vector m with n·m = 1 for every normal n of the fan: a tip moved by offset·m lies the offset away from each tangent plane. The fan's two
    // outer planes belong to its neighbours as well, which must meet at the tip, so they are met exactly; what that leaves open, the place along the
    // line in which the two planes cut, is settled by least squares over the fan.
    private static Vec3 TipDirection(ReadOnlySpan<Strip> fan)
    {
        Vec3 first = fan[0].Left.Normal, last = fan[^1].Right.Normal, axis = first.Cross(last);
        if (axis.Length < Parallel) return ClosedTip(fan, first);
        Vec3 mitre = (first + last) / (1 + first.Dot(last));
        double miss = 0, weight = 0;
        foreach (Strip strip in fan)
        {
            double along = axis.Dot(strip.Middle.Normal);
            miss += along * (1 - mitre.Dot(strip.Middle.Normal));
            weight += along * along;
        }
        // Normals of a flat or prismatic fan say nothing about the place along the axis.
        return weight > Parallel * fan.Length * axis.Dot(axis) ? mitre + (miss / weight) * axis : mitre;
    }

    // A fan that comes back to the plane it set out from: flat, or a full cone whose tip is the least-squares solution over all its normals.
    private static Vec3 ClosedTip(ReadOnlySpan<Strip> fan, Vec3 normal)
    {
        Vec3 c0 = Vec3.Zero, c1 = Vec3.Zero, c2 = Vec3.Zero, right = Vec3.Zero;
        foreach (Strip strip in fan)
        {
            Vec3 n = strip.Middle.Normal;
            (c0, c1, c2, right) = (c0 + n.X * n, c1 + n.Y * n, c2 + n.Z * n, right + n);
        }
        // Cramer's rule on the symmetric 3 × 3 system; its determinant falls with the fourth power of the fan's spread.
        double det = c0.Dot(c1.Cross(c2)), size = fan.Length;
        return det > Parallel * size * size * size
            ? new Vec3(right.Dot(c1.Cross(c2)) / det, c0.Dot(right.Cross(c2)) / det, c0.Dot(c1.Cross(right)) / det)
            : normal;
    }
}
