using System.Globalization;

namespace SurfaceUnroll.Cli;

/// <summary>Faults as text: <c>file:line:column  what is wrong</c>, and under it how to mend it.</summary>
internal static class FaultText
{
    /// <summary>Faults at places of a file, in the order of the file.</summary>
    public static void Write(TextWriter to, string path, IEnumerable<(int Line, int Column, string Message, string? Mend)> faults) =>
        WriteAll(to, faults.OrderBy(f => f.Line).ThenBy(f => f.Column)
            .Select(f => (Place(path, f.Line, f.Column), f.Message, f.Mend)));

    /// <summary>Faults of a file, in the order given.</summary>
    public static void WriteAll(TextWriter to, IEnumerable<(string Place, string Message, string? Mend)> faults)
    {
        int count = 0;
        foreach ((string place, string message, string? mend) in faults)
        {
            Write(to, place, message, mend);
            count++;
        }
        if (count > 1) to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} faults; nothing was written."));
    }

    /// <summary>What is doubtful, and may be what the faults come of.</summary>
    public static void Doubt(TextWriter to, string place, string message, string? mend) => Write(to, place, $"warning: {message}", mend);

    /// <summary>A place of a file.</summary>
    public static string Place(string path, int line, int column) => string.Create(CultureInfo.InvariantCulture, $"{path}:{line}:{column}");

    /// <summary>One fault of something that has no lines.</summary>
    public static void Write(TextWriter to, string place, string message, string? mend)
    {
        to.WriteLine($"{place}  {message}");
        if (mend is not null) to.WriteLine($"    mend: {mend}");
    }
}
