using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>A closed line of sides along which a mesh ends.</summary>
/// <param name="Piece">Piece of the mesh that ends there.</param>
/// <param name="Start">Its first vertex.</param>
/// <param name="Length">mm.</param>
internal readonly record struct BorderLoop(int Piece, int Start, double Length);

/// <summary>How a mesh hangs together: pieces, which way their faces are turned, corners at which fans meet, borders.</summary>
internal sealed class MeshShape
{
    private readonly ImmutableArray<Vec3> _places;
    private readonly int[] _pieceOf;
    private readonly bool[] _turned;
    private readonly bool[] _entangled;
    private readonly int[] _twists;

    /// <param name="places">Vertices.</param>
    /// <param name="faces">Of three different vertices each.</param>
    public MeshShape(ImmutableArray<Vec3> places, ReadOnlySpan<(int A, int B, int C)> faces)
    {
        _places = places;
        Edges = MeshEdges.Of(places.Length, faces);
        _pieceOf = Piece();
        (_turned, _twists) = Turn();
        BowTies = Fans();
        _entangled = new bool[Pieces];
        foreach ((int side, _) in Edges.Shared) _entangled[PieceOf(side / 3)] = true;
        foreach (int side in BowTies) _entangled[PieceOf(side / 3)] = true;
        Borders = Walk();
    }

    public MeshEdges Edges { get; }

    /// <summary>Number of faces.</summary>
    public int Faces => Edges.Sides / 3;

    /// <summary>How many pieces there are; faces with a vertex in common are of one piece.</summary>
    public int Pieces { get; private set; }

    /// <summary>Piece of a face.</summary>
    public int PieceOf(int face) => _pieceOf[face];

    /// <summary>True if a face is turned against most of the faces that hang together with it.</summary>
    public bool IsTurned(int face) => _turned[face];

    /// <summary>A side of each part across which it is turned over against itself, as on a strip with half a twist.</summary>
    public ReadOnlySpan<int> Twists => _twists;

    /// <summary>A side that starts from each vertex at which several fans of faces meet.</summary>
    public ImmutableArray<int> BowTies { get; }

    /// <summary>Borders of the pieces that have neither shared edges nor bow-ties; those of the others cannot be told.</summary>
    public ImmutableArray<BorderLoop> Borders { get; }

    /// <summary>True if a piece has shared edges or bow-ties.</summary>
    public bool IsEntangled(int piece) => _entangled[piece];

    /// <summary>True if any piece has shared edges or bow-ties.</summary>
    public bool AnyEntangled => Array.IndexOf(_entangled, true) >= 0;

    /// <summary>Vertices − edges + faces of a piece that is not entangled.</summary>
    public int EulerCharacteristic(int piece)
    {
        (int faces, int borderSides, int vertices) = (0, 0, 0);
        bool[] seen = new bool[_places.Length];
        for (int s = 0; s < Edges.Sides; s++)
        {
            if (PieceOf(s / 3) != piece) continue;
            if (s % 3 == 0) faces++;
            if (Edges.Twin(s) == MeshEdges.None) borderSides++;
            if (!seen[Edges.From(s)]) vertices++;
            seen[Edges.From(s)] = true;
        }
        return vertices - (3 * faces + borderSides) / 2 + faces;
    }

    // Numbers the pieces in the order of their first faces.
    private int[] Piece()
    {
        int[] root = new int[_places.Length];
        for (int v = 0; v < root.Length; v++) root[v] = v;
        int Find(int v)
        {
            while (root[v] != v) v = root[v] = root[root[v]];
            return v;
        }
        for (int s = 0; s < Edges.Sides; s++)
        {
            (int a, int b) = (Find(Edges.From(s)), Find(Edges.To(s)));
            root[Math.Max(a, b)] = Math.Min(a, b);
        }
        int[] number = new int[_places.Length], piece = new int[Faces];
        for (int f = 0; f < piece.Length; f++)
        {
            ref int known = ref number[Find(Edges.From(3 * f))];
            if (known == 0) known = ++Pieces;
            piece[f] = known - 1;
        }
        return piece;
    }

    // Goes from face to face over common edges. What hangs together so is turned as most of its faces are.
    private (bool[] Turned, int[] Twists) Turn()
    {
        var turned = new bool[Faces];
        var twists = new List<int>();
        var reached = new bool[Faces];
        var part = new List<int>();
        for (int first = 0; first < Faces; first++)
        {
            if (reached[first]) continue;
            part.Clear();
            part.Add(first);
            reached[first] = true;
            (int twist, int over) = (-1, 0);
            for (int i = 0; i < part.Count; i++)
            {
                int face = part[i];
                if (turned[face]) over++;
                for (int s = 3 * face; s < 3 * face + 3; s++)
                {
                    int twin = Edges.Twin(s);
                    if (twin < 0) continue;
                    bool should = turned[face] ^ Edges.From(s) == Edges.From(twin);
                    if (reached[twin / 3])
                    {
                        if (turned[twin / 3] != should) twist = s;
                        continue;
                    }
                    (reached[twin / 3], turned[twin / 3]) = (true, should);
                    part.Add(twin / 3);
                }
            }
            if (twist >= 0) twists.Add(twist);
            foreach (int face in part) turned[face] = twist < 0 && turned[face] ^ 2 * over > part.Count;
        }
        return (turned, [.. twists]);
    }

    // A vertex is sound if walking from face to face around it comes by all of its faces.
    private ImmutableArray<int> Fans()
    {
        int[] faces = new int[_places.Length], first = new int[_places.Length];
        bool[] shared = new bool[_places.Length];
        for (int s = Edges.Sides - 1; s >= 0; s--)
        {
            faces[Edges.From(s)]++;
            first[Edges.From(s)] = s;
            if (Edges.Twin(s) == MeshEdges.Many) shared[Edges.From(s)] = shared[Edges.To(s)] = true;
        }
        var ties = ImmutableArray.CreateBuilder<int>();
        for (int v = 0; v < faces.Length; v++)
        {
            if (faces[v] > 0 && !shared[v] && Around(v, first[v]) < faces[v]) ties.Add(first[v]);
        }
        return ties.ToImmutable();
    }

    private int Around(int vertex, int start)
    {
        int count = 1;
        for (int side = start; (side = Edges.Twin(side)) >= 0; count++)
        {
            side = OtherAt(vertex, side);
            if (side == start) return count;
        }
        for (int side = OtherAt(vertex, start); (side = Edges.Twin(side)) >= 0; count++) side = OtherAt(vertex, side);
        return count;
    }

    // Of the two sides of a face at a vertex, the one that is not this one.
    private int OtherAt(int vertex, int side) => Edges.From(side) == vertex ? MeshEdges.Previous(side) : MeshEdges.Next(side);

    private ImmutableArray<BorderLoop> Walk()
    {
        var borders = ImmutableArray.CreateBuilder<BorderLoop>();
        var walked = new bool[Edges.Sides];
        for (int first = 0; first < walked.Length; first++)
        {
            if (walked[first] || Edges.Twin(first) != MeshEdges.None || IsEntangled(PieceOf(first / 3))) continue;
            double length = 0;
            (int side, int vertex) = (first, Edges.From(first));
            while (!walked[side])
            {
                walked[side] = true;
                length += (_places[Edges.To(side)] - _places[Edges.From(side)]).Length;
                vertex = Edges.From(side) == vertex ? Edges.To(side) : Edges.From(side); // The far end, however the face is turned.
                side = OtherAt(vertex, side);
                while (Edges.Twin(side) >= 0) side = OtherAt(vertex, Edges.Twin(side));
            }
            borders.Add(new BorderLoop(PieceOf(first / 3), Edges.From(first), length));
        }
        return borders.ToImmutable();
    }
}
