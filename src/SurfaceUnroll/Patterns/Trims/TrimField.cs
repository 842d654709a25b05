using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Plates;

namespace SurfaceUnroll.Patterns.Trims;

/// <summary>On which side of a trimming surface a place lies.</summary>
/// <param name="Value">Signed distance, mm: 0 on the new edge, positive where metal stays.</param>
/// <param name="IsClear">The way to keep tells the sides apart.</param>
internal sealed record TrimField(Func<Vec3, double> Value, bool IsClear)
{
    // Cosine between the surface's normal and the way to keep below which the way runs along the surface.
    private const double Along = 0.02;

    // The same in the mean along a cut through a surface that faces both ways.
    private const double Either = 0.1;

    /// <summary>The (across, up) plane of a placement.</summary>
    public static TrimField Of(TrimSpec trim, Placement plane)
    {
        var frame = Frame.Of(plane);
        double faces = frame.X.Dot(Ways.Of(trim.Keep));
        Vec3 normal = Math.Sign(faces) * frame.X;
        return new TrimField(p => (p - frame.Origin).Dot(normal) - trim.Clearance, Math.Abs(faces) > Along);
    }

    /// <summary>The measured face of another panel.</summary>
    /// <param name="trim">What is asked for.</param>
    /// <param name="surface">That panel.</param>
    /// <param name="pieces">What is trimmed: where it meets the surface, or comes nearest to it, the way to keep tells the sides apart.</param>
    public static TrimField Of(TrimSpec trim, TrimSurface surface, IReadOnlyCollection<SheetMesh> pieces)
    {
        Vec3 way = Ways.Of(trim.Keep);
        (double sum, double whole, double nearest, double atNearest) = (0, 0, double.PositiveInfinity, 0);
        foreach (SheetMesh mesh in pieces)
        {
            (double Distance, Vec3 Normal)[] near = [.. mesh.Face.Select(surface.At)];
            foreach ((double distance, Vec3 normal) in near)
                if (Math.Abs(distance) < nearest) (nearest, atNearest) = (Math.Abs(distance), normal.Dot(way));
            foreach ((int a, int b, int c) in mesh.Faces)
            {
                (double least, double most) = (Math.Min(near[a].Distance, Math.Min(near[b].Distance, near[c].Distance)), Math.Max(near[a].Distance, Math.Max(near[b].Distance, near[c].Distance)));
                if (least * most >= 0) continue;
                // By the length of the cut: a short side of the triangle is about as long.
                double faces = (near[a].Normal + near[b].Normal + near[c].Normal).Unit.Dot(way), weight = Math.Sqrt((mesh.Face[b] - mesh.Face[a]).Cross(mesh.Face[c] - mesh.Face[a]).Length);
                (sum, whole) = (sum + weight * faces, whole + weight);
            }
        }
        double mean = whole > 0 ? sum / whole : atNearest, side = Math.Sign(mean);
        return new TrimField(p => side * surface.At(p).Distance - trim.Clearance, Math.Abs(mean) > Either);
    }

    /// <summary>The same for places that lie beside those that are meant.</summary>
    /// <param name="shift">From the place that is meant to the one that will be asked about.</param>
    public TrimField Beside(Vec3 shift) => this with { Value = p => Value(p - shift) };

    /// <summary>Share of the way from one place to another, on different sides, at which the value is zero.</summary>
    public double Root(Vec3 from, Vec3 to, double atFrom, double atTo)
    {
        // Of a plane the first guess is exact; regula falsi with the Illinois weights (Dowell and Jarratt, 1971) for others: an end that stays twice running counts half.
        (double lo, double hi) = (0, 1);
        double share = 0.5;
        int stayed = 0;
        for (int i = 0; i < 60; i++)
        {
            share = lo + (hi - lo) * atFrom / (atFrom - atTo);
            double value = Value(Vec3.Lerp(from, to, share));
            if (Math.Abs(value) <= 1e-10) break;
            if (value > 0 == atFrom > 0)
            {
                (lo, atFrom) = (share, value);
                if (stayed > 0) atTo *= 0.5;
                stayed = 1;
            }
            else
            {
                (hi, atTo) = (share, value);
                if (stayed < 0) atFrom *= 0.5;
                stayed = -1;
            }
        }
        return share;
    }
}
