using System.Globalization;
using System.Text;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Stl;

/// <summary>Reads STL files written as text.</summary>
internal static class StlText
{
    private const string Anew = "Write the surface as an STL anew from the program that made it.";

    /// <summary>True if the first word is <c>solid</c>.</summary>
    public static bool Begins(ReadOnlySpan<byte> bytes) => Is(new MeshText(bytes).WordAnywhere(), "solid"u8);

    /// <summary>Reads a file.</summary>
    public static MeshReading Read(ReadOnlySpan<byte> bytes)
    {
        var faults = new MeshFaults();
        var corners = new List<Vec3>();
        var text = new MeshText(bytes);
        (int facets, int inFacet, bool open) = (0, 0, false);
        while (!faults.Full && facets <= MeshFaults.MostTriangles && text.WordAnywhere() is { IsEmpty: false } word)
        {
            if (Is(word, "vertex"u8))
            {
                if (inFacet++ < 3) corners.Add(Vertex(ref text, faults)); // More than three are a fault at the end of the facet.
            }
            else if (Is(word, "facet"u8))
            {
                inFacet = 0;
            }
            else if (Is(word, "endfacet"u8))
            {
                facets++;
                if (inFacet != 3) NotThree(faults, inFacet, text.Line);
            }
            else if (Is(word, "solid"u8) || Is(word, "endsolid"u8))
            {
                open = Is(word, "solid"u8);
                text.SkipLine(joined: false); // Past the name, which may be any words.
            }
        }
        if (facets > MeshFaults.MostTriangles) faults.TooMany(text.Line);
        else if (open && !faults.Any) faults.Add("mesh-cut-short", text.Line, "The STL ends without the word endsolid: a part of it is missing.", Anew);
        if (faults.Any) return faults.Refusal();
        return facets == 0 ? MeshFaults.NoFaces() : StlWeld.Join(corners);
    }

    private static void NotThree(MeshFaults faults, int corners, int line) => faults.Add("mesh-corners", line,
        string.Create(CultureInfo.InvariantCulture, $"A triangle has three corners; the one that ends here has {corners}."), Anew);

    private static Vec3 Vertex(ref MeshText text, MeshFaults faults)
    {
        Span<double> xyz = stackalloc double[3];
        for (int i = 0; i < 3; i++)
        {
            ReadOnlySpan<byte> word = text.WordAnywhere();
            if (!MeshText.Number(word, out xyz[i]))
            {
                string message = word.IsEmpty ? "The STL ends in the middle of a triangle." : $"{MeshFaults.Show(word)} is not a number.";
                faults.Add(word.IsEmpty ? "mesh-cut-short" : "mesh-number", text.Line, message, Anew);
                break;
            }
            if (!faults.Usable(xyz[i], text.Line, "")) break;
        }
        return new Vec3(xyz[0], xyz[1], xyz[2]);
    }

    private static bool Is(ReadOnlySpan<byte> word, ReadOnlySpan<byte> keyword) => Ascii.EqualsIgnoreCase(word, keyword);
}
