using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Trims;

/// <summary>Halves the sides of triangles near a curved trimming surface until the cut runs straight enough through each of them: a plate has few triangles, and large ones.</summary>
internal sealed class TrimRefinement
{
    // The cut may leave a straight line through a triangle by this much, mm. A shorter side is not halved.
    private const double Straight = 0.006, Shortest = 1;

    private static readonly double[] Quarters = [0.25, 0.5, 0.75];

    // Halvings one after another; a side of 4 m is halved this often down to the shortest.
    private const int MostPasses = 13;

    private readonly TrimSurface _surface;

    // Which side of the surface is kept is not known yet: with a clearance the cut may run on either.
    private readonly TrimField[] _cuts;

    private readonly Dictionary<Vec3, double> _known = [];

    /// <summary>Refinement for one trim.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="clearance">The cut runs this far from it, mm.</param>
    public TrimRefinement(TrimSurface surface, double clearance)
    {
        _surface = surface;
        double[] distances = clearance == 0 ? [0] : [clearance, -clearance];
        _cuts = [.. distances.Select(d => new TrimField(p => Distance(p) - d, IsClear: true))];
    }

    /// <summary>The panel with a mesh that can be cut along the surface.</summary>
    public PanelDevelopment Of(PanelDevelopment panel)
    {
        for (int i = 0; i < MostPasses && Halved(panel.Mesh) is { } halved; i++)
            panel = panel with { Mesh = halved.Mesh, Map = panel.Map?.At(halved.From), DrawnMap = panel.DrawnMap?.At(halved.From) };
        return panel;
    }

    private double Distance(Vec3 place)
    {
        if (!_known.TryGetValue(place, out double distance)) _known[place] = distance = _surface.At(place).Distance;
        return distance;
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
        double length = Length(mesh, longest);
        if (length <= Shortest) yield break;
        foreach (TrimField cut in _cuts)
        {
            // No place is farther from a corner than the longest side, and the distance changes by about as much as the way.
            if (Math.Min(Math.Abs(cut.Value(mesh.Face[face.A])), Math.Min(Math.Abs(cut.Value(mesh.Face[face.B])), Math.Abs(cut.Value(mesh.Face[face.C])))) > length) continue;
            foreach ((int a, int b) in sides)
                if (Length(mesh, (a, b)) > Shortest && MeetsTwice(cut, mesh.Face[a], mesh.Face[b])) yield return (Math.Min(a, b), Math.Max(a, b));
            if (Bends(cut, mesh.Face[face.A], mesh.Face[face.B], mesh.Face[face.C])) yield return (Math.Min(longest.A, longest.B), Math.Max(longest.A, longest.B));
        }
    }

    private static double Length(SheetMesh mesh, (int A, int B) side) => (mesh.Face[side.B] - mesh.Face[side.A]).Length;

    // True if the cut may meet a side more often than its ends tell.
    private static bool MeetsTwice(TrimField cut, Vec3 a, Vec3 b)
    {
        (double atA, double atB) = (cut.Value(a), cut.Value(b));
        if (atA * atB >= 0) return Bulges(cut, Vec3.Lerp(a, b, 0.5), atA, atB);
        double share = cut.Root(a, b, atA, atB);
        return atA * cut.Value(Vec3.Lerp(a, b, 0.5 * share)) < 0 || atB * cut.Value(Vec3.Lerp(a, b, 0.5 * (1 + share))) < 0;
    }

    // True if the cut does not run straight through a triangle, or comes in between its sides.
    private static bool Bends(TrimField cut, Vec3 a, Vec3 b, Vec3 c)
    {
        double[] at = [cut.Value(a), cut.Value(b), cut.Value(c)];
        Vec3[] corners = [a, b, c];
        Vec3[] met = [.. Enumerable.Range(0, 3).Where(i => at[i] == 0 || at[i] * at[(i + 1) % 3] < 0)
            .Select(i => at[i] == 0 ? corners[i] : Vec3.Lerp(corners[i], corners[(i + 1) % 3], cut.Root(corners[i], corners[(i + 1) % 3], at[i], at[(i + 1) % 3])))];
        // A cut that bends both ways may come back to the line half way.
        return met.Length == 2 ? Quarters.Any(share => Math.Abs(cut.Value(Vec3.Lerp(met[0], met[1], share))) > Straight) : Bulges(cut, 1.0 / 3 * (a + b + c), at);
    }

    // Between places on one side of the cut it can come in only if the distance leaves what runs evenly between them by as much as they lie off it.
    private static bool Bulges(TrimField cut, Vec3 middle, params ReadOnlySpan<double> around)
    {
        double atMiddle = cut.Value(middle), mean = 0, nearest = Math.Abs(atMiddle);
        foreach (double at in around) (mean, nearest) = (mean + at / around.Length, Math.Min(nearest, Math.Abs(at)));
        double bulge = Math.Abs(atMiddle - mean);
        return bulge > Straight && nearest <= bulge;
    }
}
