using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>How the vertices of a sheet hang together.</summary>
internal sealed class MeshLinks
{
    private readonly Dictionary<(int Low, int High), int> faces = [];

    public MeshLinks(SheetMesh mesh)
    {
        var near = new SortedSet<int>?[mesh.Flat.Length];
        double[] areas = new double[mesh.Flat.Length];
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            double third = 0.5 * (mesh.Flat[b] - mesh.Flat[a]).Cross(mesh.Flat[c] - mesh.Flat[a]) / 3;
            foreach ((int from, int to) in Sides((a, b, c)))
            {
                (int, int) key = Key(from, to);
                faces[key] = faces.GetValueOrDefault(key) + 1;
                (near[from] ??= []).Add(to);
                (near[to] ??= []).Add(from);
                areas[from] += third;
            }
        }
        Neighbours = [.. near.Select(n => n is null ? [] : n.ToImmutableArray())];
        Areas = [.. areas];
        Rim = [.. mesh.Faces.SelectMany(Sides).Where(side => OnRim(side.From, side.To))];
    }

    /// <summary>For each vertex those that share an edge with it, in order of their numbers; none where no face uses it.</summary>
    public ImmutableArray<ImmutableArray<int>> Neighbours { get; }

    /// <summary>A third of the faces round each vertex, on the blank, mm².</summary>
    public ImmutableArray<double> Areas { get; }

    /// <summary>Edges of one face only, the sheet on their left.</summary>
    public ImmutableArray<(int From, int To)> Rim { get; }

    /// <summary>True if the edge between two vertices belongs to one face only.</summary>
    public bool OnRim(int a, int b) => faces.GetValueOrDefault(Key(a, b)) == 1;

    /// <summary>The edges of a face, counter-clockwise.</summary>
    public static IEnumerable<(int From, int To)> Sides((int A, int B, int C) face) => [(face.A, face.B), (face.B, face.C), (face.C, face.A)];

    private static (int, int) Key(int a, int b) => (Math.Min(a, b), Math.Max(a, b));
}
