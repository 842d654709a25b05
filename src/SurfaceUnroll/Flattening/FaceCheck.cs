using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Checks the faces of a mesh one by one.</summary>
internal static class FaceCheck
{
    // A triangle a metre long and a micrometre high has 5e-7 of its side squared. Thinner by far, its angles are rounding.
    private const double Thinnest = 1e-9;

    /// <summary>Faces that have a vertex twice, and faces without area.</summary>
    public static IEnumerable<DiscFault> Check(TriangleMesh mesh, DiscWords words)
    {
        (List<int> repeats, List<int> thin) = ([], []);
        for (int f = 0; f < mesh.Faces.Length; f++)
        {
            if (Repeats(mesh.Faces[f])) repeats.Add(f);
            else if (IsThin(mesh, f)) thin.Add(f);
        }
        if (repeats.Count > 0)
        {
            yield return new DiscFault("mesh-face-repeats",
                $"{DiscWords.Count(repeats.Count, "face has", "faces have")} the same vertex twice, first {words.Face(repeats[0])} (faces {words.Faces(repeats)}).",
                "Take these faces out: they cover nothing.");
        }
        if (thin.Count > 0)
        {
            yield return new DiscFault("mesh-face-thin",
                $"{DiscWords.Count(thin.Count, "face has", "faces have")} no area, {(thin.Count == 1 ? "its" : "their")} corners in one line: first {words.Face(thin[0])} (faces {words.Faces(thin)}).",
                "Merge close vertices or remesh around there: a triangle without area has no angles to lay flat by.");
        }
    }

    /// <summary>The faces of three different vertices.</summary>
    public static int[] Whole(ImmutableArray<(int A, int B, int C)> faces)
    {
        var whole = new List<int>(faces.Length);
        for (int f = 0; f < faces.Length; f++)
        {
            if (!Repeats(faces[f])) whole.Add(f);
        }
        return [.. whole];
    }

    private static bool Repeats((int A, int B, int C) face) => face.A == face.B || face.B == face.C || face.C == face.A;

    private static bool IsThin(TriangleMesh mesh, int face)
    {
        (int a, int b, int c) = mesh.Faces[face];
        return IsThin(mesh.Places[a], mesh.Places[b], mesh.Places[c]);
    }

    /// <summary>True if a triangle has no area to speak of.</summary>
    public static bool IsThin(Vec3 a, Vec3 b, Vec3 c) => !(Slimness(a, b, c) > Thinnest);

    /// <summary>Area of a triangle over its longest side squared; NaN where all corners are one place.</summary>
    public static double Slimness(Vec3 a, Vec3 b, Vec3 c)
    {
        (Vec3 ab, Vec3 bc, Vec3 ca) = (b - a, c - b, a - c);
        double longest = Math.Max(ab.Dot(ab), Math.Max(bc.Dot(bc), ca.Dot(ca)));
        return 0.5 * ab.Cross(ca).Length / longest;
    }
}
