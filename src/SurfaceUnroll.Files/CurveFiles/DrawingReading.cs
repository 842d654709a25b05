using System.Collections.Immutable;
using SurfaceUnroll.Curves;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>One line of a drawing file, whatever it is made of.</summary>
/// <param name="Pieces">As (0, across, up), mm; each starts where the one before it ends.</param>
/// <param name="Kind">In the words of the file, for messages.</param>
/// <param name="Line">Where it stands in the file, from 1.</param>
/// <param name="Layers">The layer, or the groups around it from the outermost in.</param>
/// <param name="Id">Its own name; empty if it has none.</param>
internal sealed record DrawnStrand(ImmutableArray<CurvePiece> Pieces, string Kind, int Line, ImmutableArray<string> Layers, string Id);

/// <summary>What came of reading a drawing file.</summary>
/// <param name="Strands">Lines, arcs and splines in the order of the file.</param>
/// <param name="SaysUnit">The file says what its numbers are, or was told.</param>
/// <param name="PassedOver">Kinds of things that may hold lines but were not read, each with how many.</param>
/// <param name="Faults">What keeps the file from being used.</param>
internal sealed record DrawingReading(ImmutableArray<DrawnStrand> Strands, bool SaysUnit, ImmutableArray<(string Kind, int Count)> PassedOver, ImmutableArray<FileFault> Faults);

/// <summary>One thing that keeps a file from being used.</summary>
/// <param name="Code">Stable id in kebab-case.</param>
/// <param name="Line">From 1; 0 where it has no line.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Mend">How to mend it.</param>
internal sealed record FileFault(string Code, int Line, string Message, string Mend);

/// <summary>Gathers the faults of a file, up to as many as anyone reads.</summary>
internal sealed class FileFaults
{
    private const int Most = 20;

    private readonly List<FileFault> _faults = [];

    public bool Any => _faults.Count > 0;

    public bool Full => _faults.Count >= Most;

    public void Add(string code, int line, string message, string mend)
    {
        if (!Full) _faults.Add(new FileFault(code, line, message, mend));
    }

    public ImmutableArray<FileFault> InOrder() => [.. _faults.OrderBy(f => f.Line)];

    /// <summary>A few characters of a file for a message.</summary>
    public static string Show(string text)
    {
        const int most = 24;
        return "“" + string.Concat(text.Take(most).Select(c => char.IsControl(c) ? '?' : c)) + (text.Length > most ? "…”" : "”");
    }
}
