using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Trims;

/// <summary>Halves the sides of triangles near a curved trimming surface until it runs straight enough through each of them: a plate has few triangles, and large ones.</summary>
/// <param name="surface">The surface.</param>
/// <param name="clearance">The cut runs this far from it at most, mm.</param>
internal sealed class TrimRefinement(TrimSurface surface, double clearance)
{
    // The distance may leave what runs evenly from end to end of a side by this much, mm. A shorter side is not halved.
    private const double Straight = 0.006, Shortest = 1;

    // Halvings one after another; a side of 4 m is halved this often down to the shortest.
    private const int MostPasses = 13;

    private readonly Dictionary<Vec3, double> _known = [];

    /// <summary>The panel with a mesh that can be cut along the surface.</summary>
    public PanelDevelopment Of(PanelDevelopment panel)
    {
        for (int i = 0; i < MostPasses && Halved(panel.Mesh) is { } halved; i++)
            panel = panel with { Mesh = halved.Mesh, Map = panel.Map?.At(halved.From), DrawnMap = panel.DrawnMap?.At(halved.From) };
        return panel;
    }

    private double Value(Vec3 place)
    {
        if (!_known.TryGetValue(place, out double value)) _known[place] = value = surface.At(place).Distance;
        return value;
    }

    // Null if no side needs it.
    private CutMesh? Halved(SheetMesh mesh)
    {
        HashSet<(int, int)> marked = [.. mesh.Faces.SelectMany(f => Marked(mesh, f))];
        if (marked.Count == 0) return null;
        List<VertexBlend> from = [.. Enumerable.Range(0, mesh.Face.Length).Select(VertexBlend.Same)];
        var middles = new Dictionary<(int, int), int>();
        foreach ((int a, int b) in marked.Order())
        {
            middles[(a, b)] = from.Count;
            from.Add(VertexBlend.Between(a, b, 0.5));
        }
        return CutMesh.Of(mesh, from, mesh.Faces.SelectMany(Parts), mesh.Chains.Select(Chain));

        int? Middle(int a, int b) => middles.TryGetValue((Math.Min(a, b), Math.Max(a, b)), out int middle) ? middle : null;

        IEnumerable<(int, int, int)> Parts((int A, int B, int C) f)
        {
            // Turned so that the sides that are halved come first.
            int?[] m = [Middle(f.A, f.B), Middle(f.B, f.C), Middle(f.C, f.A)];
            int halved = m.Count(x => x is not null);
            while (halved is 1 or 2 && (m[0] is null || (halved == 2 && m[1] is null))) (f, m) = ((f.B, f.C, f.A), [m[1], m[2], m[0]]);
            return halved switch
            {
                0 => [f],
                1 => [(f.A, m[0]!.Value, f.C), (m[0]!.Value, f.B, f.C)],
                2 => [(m[0]!.Value, f.B, m[1]!.Value), (f.A, m[0]!.Value, m[1]!.Value), (f.A, m[1]!.Value, f.C)],
                _ => [(f.A, m[0]!.Value, m[2]!.Value), (m[0]!.Value, f.B, m[1]!.Value), (m[2]!.Value, m[1]!.Value, f.C), (m[0]!.Value, m[1]!.Value, m[2]!.Value)],
            };
        }

        EdgeChain Chain(EdgeChain chain)
        {
            var path = ImmutableArray.CreateBuilder<int>();
            for (int i = 0; i < chain.Vertices.Length; i++)
            {
                if (i > 0 && Middle(chain.Vertices[i - 1], chain.Vertices[i]) is { } middle) path.Add(middle);
                path.Add(chain.Vertices[i]);
            }
            return chain with { Vertices = path.ToImmutable() };
        }
    }

    private IEnumerable<(int, int)> Marked(SheetMesh mesh, (int A, int B, int C) face)
    {
        (int, int)[] sides = [(face.A, face.B), (face.B, face.C), (face.C, face.A)];
        (int A, int B) longest = sides.MaxBy(s => Length(mesh, s));
        foreach ((int a, int b) in sides)
            if (Bends([mesh.Face[a], mesh.Face[b]], Length(mesh, (a, b)))) yield return (Math.Min(a, b), Math.Max(a, b));
        // The surface may come in between the sides.
        if (Bends([mesh.Face[face.A], mesh.Face[face.B], mesh.Face[face.C]], Length(mesh, longest))) yield return (Math.Min(longest.A, longest.B), Math.Max(longest.A, longest.B));
    }

    private static double Length(SheetMesh mesh, (int A, int B) side) => (mesh.Face[side.B] - mesh.Face[side.A]).Length;

    // True if the surface may run through the middle of some corners, but not straight.
    private bool Bends(ReadOnlySpan<Vec3> corners, double length)
    {
        if (length <= Shortest) return false;
        (Vec3 middle, double mean, double nearest) = (Vec3.Zero, 0, double.PositiveInfinity);
        foreach (Vec3 corner in corners)
        {
            double value = Value(corner);
            (middle, mean, nearest) = (middle + 1.0 / corners.Length * corner, mean + value / corners.Length, Math.Min(nearest, Math.Abs(value)));
        }
        // No place is farther from a corner than the longest side, and the distance changes by about as much as the way.
        if (nearest > length + clearance) return false;
        double atMiddle = Value(middle);
        return Math.Abs(atMiddle) <= length + clearance && Math.Abs(atMiddle - mean) > Straight;
    }
}
