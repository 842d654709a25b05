using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Trims;

/// <summary>A mesh cut along a trimming surface: the new edge lies on it on the measured face, and is cut square through the sheet.</summary>
/// <param name="Mesh">What stays, with the new edge among its chains.</param>
/// <param name="From">For each vertex of it where it lies on the mesh before.</param>
/// <param name="LeftOver">Number of separate parts that were dropped with what was cut away.</param>
internal sealed record MeshTrim(SheetMesh Mesh, ImmutableArray<VertexBlend> From, int LeftOver)
{
    /// <summary>Its borders, the outer one first.</summary>
    public ImmutableArray<ImmutableArray<int>> Borders { get; } = MeshBorders.Of(Mesh);

    // Places this near to the surface, mm, lie on it.
    private const double OnIt = 1e-7;

    /// <summary>Cuts a mesh; null if nothing of it stays.</summary>
    /// <param name="mesh">Before.</param>
    /// <param name="field">What stays.</param>
    /// <param name="name">Name of the new edge.</param>
    public static MeshTrim? Cut(SheetMesh mesh, TrimField field, string name) => new Cutter(mesh, field).Run(name);

    private sealed class Cutter(SheetMesh mesh, TrimField field)
    {
        private readonly double[] _value = [.. mesh.Face.Select(p => field.Value(p) is var v && Math.Abs(v) <= OnIt ? 0 : v)];
        private readonly Dictionary<(int, int), int> _crossings = [];
        private readonly List<VertexBlend> _from = [.. Enumerable.Range(0, mesh.Formed.Length).Select(VertexBlend.Same)];
        private readonly List<(int A, int B, int C)> _faces = [];

        private bool Stays(int v) => v >= _value.Length || _value[v] >= 0;

        private bool IsOnCut(int v) => v >= _value.Length || _value[v] == 0;

        public MeshTrim? Run(string name)
        {
            foreach ((int a, int b, int c) in mesh.Faces) Clip(a, b, c);
            if (_faces.Count == 0) return null;
            int parts = KeepLargest();
            HashSet<int> used = [.. _faces.SelectMany(f => new[] { f.A, f.B, f.C })];
            List<EdgeChain> chains = [.. mesh.Chains.SelectMany(chain => Runs(chain, used))];
            chains.AddRange(CutChains(name));
            CutMesh left = CutMesh.Of(mesh, _from, _faces, chains);
            return new MeshTrim(left.Mesh, left.From, parts - 1);
        }

        // Sutherland and Hodgman, 1974, against one surface.
        private void Clip(int a, int b, int c)
        {
            if (new[] { a, b, c }.All(v => _value[v] <= 0)) return;
            var corners = new List<int>(4);
            foreach ((int from, int to) in (ReadOnlySpan<(int, int)>)[(a, b), (b, c), (c, a)])
            {
                if (Stays(from)) corners.Add(from);
                if (_value[from] * _value[to] < 0) corners.Add(Crossing(from, to));
            }
            for (int i = 1; i + 1 < corners.Count; i++) _faces.Add((corners[0], corners[i], corners[i + 1]));
        }

        private int Crossing(int a, int b)
        {
            (int low, int high) = (Math.Min(a, b), Math.Max(a, b));
            if (_crossings.TryGetValue((low, high), out int known)) return known;
            _from.Add(VertexBlend.Between(low, high, field.Root(mesh.Face[low], mesh.Face[high], _value[low], _value[high])));
            return _crossings[(low, high)] = _from.Count - 1;
        }

        // Of parts that hang together by whole sides the one of the largest area stays; returns how many there were.
        private int KeepLargest()
        {
            int[] part = [.. Enumerable.Range(0, _faces.Count)];
            var beside = new Dictionary<(int, int), int>();
            for (int f = 0; f < _faces.Count; f++)
            {
                (int a, int b, int c) = _faces[f];
                foreach ((int from, int to) in (ReadOnlySpan<(int, int)>)[(a, b), (b, c), (c, a)])
                    if (!beside.TryAdd((Math.Min(from, to), Math.Max(from, to)), f)) part[Root(f)] = Root(beside[(Math.Min(from, to), Math.Max(from, to))]);
            }
            (int A, int B, int C)[][] groups = [.. _faces.Select((face, f) => (face, Root: Root(f))).GroupBy(f => f.Root, f => f.face).Select(g => g.ToArray())];
            if (groups.Length == 1) return 1;
            (int A, int B, int C)[] largest = groups.MaxBy(g => g.Sum(f => (Flat(f.B) - Flat(f.A)).Cross(Flat(f.C) - Flat(f.A))))!;
            _faces.Clear();
            _faces.AddRange(largest);
            return groups.Length;

            int Root(int f)
            {
                while (part[f] != f) f = part[f] = part[part[f]];
                return f;
            }
        }

        private Vec2 Flat(int v) => _from[v].Of(mesh.Flat);

        // What stays of an edge, in one run or several of the same name.
        private IEnumerable<EdgeChain> Runs(EdgeChain chain, HashSet<int> used)
        {
            var runs = new List<List<int>>();
            List<int>? run = null;
            for (int i = 0; i < chain.Vertices.Length; i++)
            {
                int v = chain.Vertices[i];
                if (i > 0 && _value[chain.Vertices[i - 1]] * _value[v] < 0)
                {
                    int crossing = Crossing(chain.Vertices[i - 1], v);
                    if (run is null) runs.Add(run = []);
                    run.Add(crossing);
                    if (!Stays(v)) run = null;
                }
                if (!Stays(v))
                {
                    run = null;
                    continue;
                }
                if (run is null) runs.Add(run = []);
                run.Add(v);
            }
            // A closed edge that is cut runs on over the place where it began.
            if (runs.Count > 1 && chain.Vertices[0] == chain.Vertices[^1] && Stays(chain.Vertices[0]))
            {
                runs[^1].AddRange(runs[0].Skip(1));
                runs.RemoveAt(0);
            }
            runs.RemoveAll(r => !r.Any(used.Contains) || (r.Count < 2 && chain.Vertices.Length > 1));
            return runs.Select(r => new EdgeChain(chain.Name, [.. r]));
        }

        // Sides of faces along the cut that no other face shares, linked end to end. The metal lies on their left.
        private IEnumerable<EdgeChain> CutChains(string name)
        {
            HashSet<(int, int)> sides = [.. _faces.SelectMany(f => new[] { (f.A, f.B), (f.B, f.C), (f.C, f.A) })];
            HashSet<(int, int)> old = [.. mesh.Chains.SelectMany(c => c.Vertices.Zip(c.Vertices.Skip(1))).SelectMany(s => new[] { (s.First, s.Second), (s.Second, s.First) })];
            Dictionary<int, int> next = sides.Where(s => IsOnCut(s.Item1) && IsOnCut(s.Item2) && !sides.Contains((s.Item2, s.Item1)) && !old.Contains(s))
                .GroupBy(s => s.Item1).ToDictionary(g => g.Key, g => g.First().Item2);
            HashSet<int> entered = [.. next.Values];
            var chains = new List<List<int>>();
            while (next.Count > 0)
            {
                int start = next.Keys.Order().FirstOrDefault(v => !entered.Contains(v), next.Keys.Min());
                List<int> chain = [start];
                while (next.Remove(chain[^1], out int to)) chain.Add(to);
                chains.Add(chain);
            }
            return chains.Select(c => new EdgeChain(name, [.. c]));
        }
    }
}
