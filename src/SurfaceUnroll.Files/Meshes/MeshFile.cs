using SurfaceUnroll.Files.Stl;
using SurfaceUnroll.Files.Wavefront;

namespace SurfaceUnroll.Files.Meshes;

/// <summary>Reads mesh files of every kind that is known here.</summary>
public static class MeshFile
{
    /// <summary>Largest mesh file, bytes: four times what the most triangles take in any usual writing.</summary>
    public const long LargestFile = 512 << 20;

    /// <summary>True if a file name has an ending of a mesh file that can be read.</summary>
    public static bool Knows(string name) => IsObj(name) || IsStl(name);

    /// <summary>Reads a mesh by the ending of its file's name; what is neither is read as OBJ.</summary>
    public static MeshReading Read(string name, ReadOnlySpan<byte> bytes) => IsStl(name) ? StlMeshReader.Read(bytes) : ObjMeshReader.Read(bytes);

    private static bool IsObj(string name) => name.EndsWith(".obj", StringComparison.OrdinalIgnoreCase);

    private static bool IsStl(string name) => name.EndsWith(".stl", StringComparison.OrdinalIgnoreCase);
}
