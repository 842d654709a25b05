using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Checks how the faces of a mesh hang together. What can be told of borders is told of the largest piece: the others go anyway.</summary>
/// <param name="mesh">The mesh.</param>
/// <param name="shape">Its shape, perhaps welded, perhaps with faces left out.</param>
/// <param name="kept">Which face of the mesh each face of the shape is.</param>
/// <param name="words">Names places.</param>
internal sealed class ShapeCheck(TriangleMesh mesh, MeshShape shape, int[] kept, DiscWords words)
{
    // A second border as long as half of the first is the other end of a tube or ring. A tenth of it is a hole: a cone or ring
    // that narrow is hardly made of one sheet. Between the two, only the fabricator knows.
    private const double TubeFrom = 0.5, HoleUpTo = 0.1;

    private const string CutOpen = "Cut it open along a line from one border to the other, where you will have the seam.";

    private readonly MeshEdges _edges = shape.Edges;

    public IEnumerable<DiscFault> Check()
    {
        int[] bySize = BySize(out double[] areas);
        int largest = bySize[0];
        if (shape.Pieces > 1) yield return SeveralPieces(bySize, areas);
        if (shape.Edges.Shared.Length > 0) yield return SharedEdges();
        if (shape.BowTies.Length > 0) yield return BowTies();
        if (shape.Twists.Length > 0) yield return OneSided();
        if (Turned() is { } turned) yield return turned;
        bool oneSided = shape.Twists.ToArray().Any(side => shape.PieceOf(side / 3) == largest);
        if (shape.IsEntangled(largest) || oneSided) yield break; // Its borders cannot be told, or mean something else.
        BorderLoop[] borders = [.. shape.Borders.Where(b => b.Piece == largest).OrderByDescending(b => b.Length)];
        foreach (DiscFault fault in Borders(borders)) yield return fault;
        int handles = (2 - borders.Length - shape.EulerCharacteristic(largest)) / 2;
        if (handles > 0)
        {
            yield return new DiscFault("mesh-handle",
                $"The surface has {DiscWords.Count(handles, "handle", "handles")}, like the grip of a cup: a strip of it leads out and back in somewhere else.",
                "Cut the strip off, or cut it through, and close what is left open. In a scan it is often a bridge between two parts that lie close together.");
        }
    }

    private IEnumerable<DiscFault> Borders(BorderLoop[] borders)
    {
        if (borders.Length == 0)
        {
            yield return new DiscFault("mesh-closed", "The surface is closed all round, like a ball: it has no border.",
                "Cut away what is not sheet metal, or cut it open along the line where you will have the seam.");
            yield break;
        }
        double outer = borders[0].Length;
        BorderLoop[] ends = [.. borders.Skip(1).Where(b => b.Length >= TubeFrom * outer)], holes = [.. borders.Skip(1 + ends.Length)];
        if (ends.Length > 0)
        {
            yield return new DiscFault("mesh-tube",
                $"The surface is a tube or a ring: it has {DiscWords.Count(1 + ends.Length, "long border", "long borders")}, {DiscWords.Length(outer)} round from {words.Vertex(borders[0].Start)}"
                    + $" and {DiscWords.Length(ends[0].Length)} round from {words.Vertex(ends[0].Start)}.",
                CutOpen);
        }
        if (holes.Length > 0)
        {
            bool unclear = ends.Length == 0 && holes[0].Length > HoleUpTo * outer;
            string list = string.Join(", ", holes.Take(DiscWords.Named).Select(h => $"{DiscWords.Length(h.Length)} round from {words.Vertex(h.Start)}")) + (holes.Length > DiscWords.Named ? ", …" : "");
            yield return new DiscFault("mesh-hole",
                $"The surface has {DiscWords.Count(holes.Length, "hole", "holes")}: {list}. Its outer border is {DiscWords.Length(outer)} round.",
                "Fill it and cut the hole in the metal later." + (unclear ? " If it is the narrow end of a tube or cone, leave it open. " + CutOpen : ""));
        }
    }

    private DiscFault SeveralPieces(int[] bySize, double[] areas)
    {
        int[] faces = new int[shape.Pieces], first = new int[shape.Pieces];
        for (int f = shape.Faces - 1; f >= 0; f--)
        {
            faces[shape.PieceOf(f)]++;
            first[shape.PieceOf(f)] = f;
        }
        string list = string.Join("; ", bySize.Take(DiscWords.Named)
            .Select(p => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{DiscWords.Count(faces[p], "face", "faces")}, {areas[p]:0.#} mm², with {words.Face(kept[first[p]])}")));
        return new DiscFault("mesh-pieces", $"The mesh is in {DiscWords.Count(shape.Pieces, "piece", "pieces")}: {list}{(shape.Pieces > DiscWords.Named ? "; …" : "")}.",
            "Keep one, or give each a file and a panel of its own.");
    }

    private DiscFault SharedEdges()
    {
        (int side, int faces) = _edges.Shared[0];
        return new DiscFault("mesh-edge-shared",
            $"{DiscWords.Count(_edges.Shared.Length, "edge has", "edges have")} three or more faces; the first has {faces}, at {words.Between(_edges.From(side), _edges.To(side))}, among them {words.Face(kept[side / 3])}.",
            "A sheet has one face on either side of an edge: take out the faces that lie double or branch off.");
    }

    private DiscFault BowTies() => new("mesh-bow-tie",
        $"At {DiscWords.Count(shape.BowTies.Length, "vertex", "vertices")} the sheet hangs together by a point only, like a bow-tie: first {words.Vertex(_edges.From(shape.BowTies[0]))}.",
        "Fill the gap beside it with a face, or take the smaller of the two parts out.");

    private DiscFault OneSided() => new("mesh-one-sided",
        $"The surface has one side only, like a strip joined with half a twist: going round it, one comes back on the other side, for example over {words.Face(kept[shape.Twists[0] / 3])}.",
        "Cut it where it closes on itself, and join it without the twist if that is wrong.");

    private DiscFault? Turned()
    {
        var turned = new List<int>();
        for (int f = 0; f < shape.Faces; f++)
        {
            if (shape.IsTurned(f)) turned.Add(kept[f]);
        }
        return turned.Count == 0 ? null : new DiscFault("mesh-face-turned",
            $"{DiscWords.Count(turned.Count, "face is", "faces are")} turned over against {(turned.Count == 1 ? "its neighbours" : "their neighbours")}, first {words.Face(turned[0])} (faces {words.Faces(turned)}).",
            "Make the normals consistent over the whole mesh: mesh editors can turn all faces one way.");
    }

    // Pieces from the one with the largest area on.
    private int[] BySize(out double[] areas)
    {
        double[] sums = new double[shape.Pieces];
        for (int f = 0; f < shape.Faces; f++)
        {
            (int a, int b, int c) = mesh.Faces[kept[f]];
            sums[shape.PieceOf(f)] += 0.5 * (mesh.Places[b] - mesh.Places[a]).Cross(mesh.Places[c] - mesh.Places[a]).Length;
        }
        areas = sums;
        return [.. Enumerable.Range(0, sums.Length).OrderByDescending(p => sums[p])];
    }
}
