using System.Globalization;

namespace SurfaceUnroll.Cli;

/// <summary>Faults as text: <c>file:line:column  what is wrong</c>, and under it how to mend it.</summary>
internal static class FaultText
{
    /// <summary>Faults at places of a file, in the order of the file.</summary>
    public static void Write(TextWriter to, string path, IEnumerable<(int Line, int Column, string Message, string? Mend)> faults)
    {
        int count = 0;
        foreach ((int line, int column, string message, string? mend) in faults.OrderBy(f => f.Line).ThenBy(f => f.Column))
        {
            Write(to, string.Create(CultureInfo.InvariantCulture, $"{path}:{line}:{column}"), message, mend);
            count++;
        }
        if (count > 1) to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} faults; nothing was written."));
    }

    /// <summary>One fault of something that has no lines.</summary>
    public static void Write(TextWriter to, string place, string message, string? mend)
    {
        to.WriteLine($"{place}  {message}");
        if (mend is not null) to.WriteLine($"    mend: {mend}");
    }
}
