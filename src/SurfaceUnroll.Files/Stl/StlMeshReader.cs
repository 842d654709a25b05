using System.Buffers.Binary;
using System.Globalization;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Stl;

/// <summary>Reads the triangles of an STL file, binary or text.</summary>
/// <remarks>STL repeats every corner in every triangle. Equal ones are welded; if borders then still run along each other, corners on them within
/// <see cref="MeshWeld.Nearness"/> of the size of the part are welded too. Triangles of which nothing is left by that are left out.</remarks>
public static class StlMeshReader
{
    private const int Header = 84, Facet = 50;

    // So many bytes tell text from binary: text has no control characters but blanks and line ends.
    private const int Sample = 512;

    private const string Anew = "Write the surface as an STL anew from the program that made it.";

    /// <summary>Reads a file.</summary>
    /// <returns>The mesh, or its faults. Never throws for what the file holds.</returns>
    public static MeshReading Read(ReadOnlySpan<byte> bytes)
    {
        // Many binary files begin with the word "solid" as well; the length tells for sure.
        long promised = bytes.Length >= Header ? BinaryPrimitives.ReadUInt32LittleEndian(bytes[80..]) : 0;
        if (bytes.Length >= Header && bytes.Length == Header + Facet * promised) return Binary(bytes, promised);
        bool text = bytes[..Math.Min(bytes.Length, Sample)].IndexOfAnyInRange((byte)0, (byte)8) < 0;
        if (text && StlText.Begins(bytes)) return StlText.Read(bytes);
        if (text || bytes.Length < Header) return MeshFaults.Refusal("mesh-not-a-mesh", "The file is neither a binary nor a text STL.", Anew);
        return MeshFaults.Refusal("mesh-cut-short",
            string.Create(CultureInfo.InvariantCulture, $"The STL promises {promised} triangles, which take {Header + Facet * promised} bytes, but holds {bytes.Length} bytes."), Anew);
    }

    private static MeshReading Binary(ReadOnlySpan<byte> bytes, long count)
    {
        var faults = new MeshFaults();
        if (count == 0) return MeshFaults.NoFaces();
        if (count > MeshFaults.MostTriangles)
        {
            faults.TooMany(0);
            return faults.Refusal();
        }
        var corners = new List<Vec3>(3 * (int)count);
        for (int f = 0; f < count && !faults.Full; f++)
        {
            ReadOnlySpan<byte> facet = bytes.Slice(Header + Facet * f + 12, 36); // After the normal, which the corners tell as well.
            for (int c = 0; c < 3; c++)
            {
                var corner = new Vec3(Single(facet, 3 * c), Single(facet, 3 * c + 1), Single(facet, 3 * c + 2));
                corners.Add(corner);
                double largest = Math.Max(Math.Abs(corner.X), Math.Max(Math.Abs(corner.Y), Math.Abs(corner.Z))); // NaN if any is.
                if (!faults.Usable(largest, 0, string.Create(CultureInfo.InvariantCulture, $" in triangle {f + 1}"))) break;
            }
        }
        return faults.Any ? faults.Refusal() : StlWeld.Join(corners);
    }

    private static float Single(ReadOnlySpan<byte> facet, int i) => BinaryPrimitives.ReadSingleLittleEndian(facet[(4 * i)..]);
}
