using System.Globalization;
using System.Text;

namespace SurfaceUnroll.Files.Meshes;

/// <summary>Gathers the faults of a mesh file, up to as many as anyone reads, and words those that every kind of file can have.</summary>
internal sealed class MeshFaults
{
    /// <summary>Most triangles of a mesh. A car body scanned at a millimetre has fewer, and two million take a gigabyte to flatten.</summary>
    public const int MostTriangles = 2_000_000;

    // Far past any part, in any unit, and small enough that products of four coordinates stay finite.
    private const double Largest = 1e9;

    private const int Most = 20;

    private readonly List<MeshFault> _faults = [];

    public bool Any => _faults.Count > 0;

    /// <summary>Enough faults to stop reading.</summary>
    public bool Full => _faults.Count >= Most;

    public void Add(string code, int line, string message, string mend)
    {
        if (!Full) _faults.Add(new MeshFault(code, line, message, mend));
    }

    /// <summary>Every fault in the order of the file.</summary>
    public MeshReading Refusal() => new(null, [.. _faults.OrderBy(f => f.Line)]);

    /// <summary>One fault of the file as a whole.</summary>
    public static MeshReading Refusal(string code, string message, string mend) => new(null, [new MeshFault(code, 0, message, mend)]);

    public void TooMany(int line) => Add("mesh-too-many", line, string.Create(CultureInfo.InvariantCulture, $"The mesh has more than {MostTriangles:N0} triangles."),
        "Thin it out first in a mesh editor, by collapsing edges: a few ten thousand triangles show any cover to a tenth of a millimetre.");

    public static MeshReading NoFaces() => Refusal("mesh-no-faces", "The mesh has no faces.", "If it is a cloud of points, make a surface of it first.");

    /// <summary>True if a coordinate can be used; a fault if not.</summary>
    public bool Usable(double value, int line, string where)
    {
        if (Math.Abs(value) <= Largest) return true; // False for NaN too.
        string what = double.IsFinite(value) ? string.Create(CultureInfo.InvariantCulture, $"of {value:G6} is far too large") : "is not a finite number";
        Add("mesh-number", line, $"A coordinate {what}{where}.", "Write the mesh anew from the program that made it.");
        return false;
    }

    /// <summary>A few characters of a file for a message, whatever bytes they are.</summary>
    public static string Show(ReadOnlySpan<byte> word)
    {
        const int most = 24;
        string text = Encoding.Latin1.GetString(word[..Math.Min(word.Length, most)]);
        return "“" + string.Concat(text.Select(c => char.IsControl(c) ? '?' : c)) + (word.Length > most ? "…”" : "”");
    }
}
