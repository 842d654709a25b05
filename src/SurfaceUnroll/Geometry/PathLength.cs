namespace SurfaceUnroll.Geometry;

/// <summary>Length of a path from place to place.</summary>
internal static class PathLength
{
    /// <summary>Length from the first place to each, mm; as many as there are places.</summary>
    public static double[] Running(IEnumerable<Vec3> path)
    {
        var sums = new List<double>();
        Vec3? last = null;
        foreach (Vec3 p in path)
        {
            sums.Add(last is { } before ? sums[^1] + (p - before).Length : 0);
            last = p;
        }
        return [.. sums];
    }

    /// <summary>Length of the whole, mm.</summary>
    public static double Of(IEnumerable<Vec3> path)
    {
        (double sum, Vec3? last) = (0, null);
        foreach (Vec3 p in path)
        {
            if (last is { } before) sum += (p - before).Length;
            last = p;
        }
        return sum;
    }
}
