using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>Places of marks from the distances between them.</summary>
internal static class TapedPlaces
{
    /// <summary>The first mark at the origin, the second on the across axis to the right, all others on the side on which the photo has them; null where the distances do not reach all.</summary>
    /// <remarks>Each mark is struck as the crossing of two arcs; where more than two distances lead to it, all of them count by least squares. What little the distances contradict each
    /// other is settled later, together with the taps.</remarks>
    public static Vec2[]? Of(MarkReference marks)
    {
        int n = marks.Marks.Length;
        double?[,] length = new double?[n, n];
        foreach (TapedDistance d in marks.Distances) length[d.From, d.To] = length[d.To, d.From] = d.Length;
        // Marks are struck from any two that have a distance between them; then all is moved to the first two.
        for (int a = 0; a < n; a++)
            for (int b = a + 1; b < n; b++)
                if (length[a, b] is { } between && Struck(marks, length, a, b, between) is { } places) return Turned(places);
        return null;
    }

    private static Vec2[]? Struck(MarkReference marks, double?[,] length, int a, int b, double between)
    {
        int n = marks.Marks.Length;
        var places = new Vec2?[n];
        (places[a], places[b]) = (Vec2.Zero, new Vec2(between, 0));
        for (bool more = true; more;)
        {
            more = false;
            for (int i = 0; i < n; i++)
            {
                if (places[i] is not null) continue;
                int[] known = [.. Enumerable.Range(0, n).Where(k => places[k] is not null && length[i, k] is not null)];
                if (known.Length < 2 || Crossing(marks, length, places, i, known) is not { } place) continue;
                (places[i], more) = (place, true);
            }
        }
        if (places.Any(p => p is null)) return null;
        Vec2[] start = [.. places.Select(p => p!.Value)];
        return Settled(marks, start, a, b);
    }

    // Of the two crossings of the arcs round the pair that sees the mark most nearly at a right angle, the one on the side of the photo.
    private static Vec2? Crossing(MarkReference marks, double?[,] length, Vec2?[] places, int i, int[] known)
    {
        (Vec2? best, double squarest) = (null, 0.02);
        foreach (int p in known)
            foreach (int q in known)
            {
                if (q <= p) continue;
                (Vec2 from, Vec2 to, double r, double s) = (places[p]!.Value, places[q]!.Value, length[i, p]!.Value, length[i, q]!.Value);
                double d = (to - from).Length, along = (r * r - s * s + d * d) / (2 * d), up = r * r - along * along;
                if (d == 0 || up <= 0) continue;
                double square = Math.Sqrt(up) * d / (r * s);
                if (square <= squarest) continue;
                Vec2 axis = (to - from).Unit;
                Vec2 tapP = marks.Marks[p].Tap, tapQ = marks.Marks[q].Tap;
                // To the left on the flat is to the left in the photo, where the sign is the other way as pixels count down.
                double side = (tapQ - tapP).Cross(marks.Marks[i].Tap - tapP) < 0 ? 1 : -1;
                (best, squarest) = (from + along * axis + side * Math.Sqrt(up) * axis.Left, square);
            }
        return best;
    }

    private static Vec2[]? Settled(MarkReference marks, Vec2[] start, int a, int b)
    {
        double size = (start[b] - start[a]).Length;
        int[] free = [.. Enumerable.Range(0, start.Length).Where(i => i != a && i != b)];
        Vec2[] Places(double[] v)
        {
            Vec2[] at = [.. start];
            at[b] = start[b] + new Vec2(size * v[0], 0);
            for (int k = 0; k < free.Length; k++) at[free[k]] = start[free[k]] + size * new Vec2(v[2 * k + 1], v[2 * k + 2]);
            return at;
        }
        double[] Residuals(double[] v)
        {
            Vec2[] at = Places(v);
            return [.. marks.Distances.Select(d => ((at[d.From] - at[d.To]).Length - d.Length) / marks.Spread)];
        }
        return LeastSquares.Solve(Residuals, new double[2 * start.Length - 3]) is { } fit ? Places(fit.Values) : null;
    }

    private static Vec2[] Turned(Vec2[] places)
    {
        Vec2 along = (places[1] - places[0]).Unit;
        return [.. places.Select(p => new Vec2(along.Dot(p - places[0]), along.Cross(p - places[0])))];
    }
}
