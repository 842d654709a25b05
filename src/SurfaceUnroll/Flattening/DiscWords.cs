using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Names places of a mesh as its file does, for messages.</summary>
internal sealed class DiscWords(TriangleMesh mesh, MeshNumbers? numbers)
{
    /// <summary>How many of several are named in a message.</summary>
    public const int Named = 5;

    /// <summary>For example <c>vertex 17 at (12.5, 0, 3) mm</c>.</summary>
    public string Vertex(int vertex)
    {
        string place = Place(mesh.Places[vertex]);
        if (numbers is null) return string.Create(CultureInfo.InvariantCulture, $"vertex {vertex + 1} at {place}");
        return numbers.Vertices.IsEmpty ? $"the one at {place}" : string.Create(CultureInfo.InvariantCulture, $"vertex {numbers.Vertices[vertex]} at {place}");
    }

    /// <summary>For example <c>face 12 at (12.5, 0, 3) mm</c>, the place its middle.</summary>
    public string Face(int face)
    {
        (int a, int b, int c) = mesh.Faces[face];
        return string.Create(CultureInfo.InvariantCulture, $"face {Number(face)} at {Place((mesh.Places[a] + mesh.Places[b] + mesh.Places[c]) / 3)}");
    }

    /// <summary>The numbers of the first few faces: <c>3, 5, 8, …</c></summary>
    public string Faces(IReadOnlyCollection<int> faces)
    {
        string first = string.Join(", ", faces.Take(Named).Select(f => Number(f).ToString(CultureInfo.InvariantCulture)));
        return faces.Count > Named ? first + ", …" : first;
    }

    /// <summary>The middle between two vertices.</summary>
    public string Between(int a, int b) => Place(0.5 * (mesh.Places[a] + mesh.Places[b]));

    /// <summary>A count and the right form of what is counted: <c>1 face</c>, <c>7 faces</c>.</summary>
    public static string Count(int count, string one, string more) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : more)}");

    /// <summary>A length, mm.</summary>
    public static string Length(double mm) => string.Create(CultureInfo.InvariantCulture, $"{mm:0.#} mm");

    private int Number(int face) => numbers?.Faces[face] ?? face + 1;

    private static string Place(Vec3 p) => string.Create(CultureInfo.InvariantCulture, $"({Plain(p.X):0.###}, {Plain(p.Y):0.###}, {Plain(p.Z):0.###}) mm");

    private static double Plain(double value) => Math.Round(value, 3) + 0.0; // Never −0.
}
