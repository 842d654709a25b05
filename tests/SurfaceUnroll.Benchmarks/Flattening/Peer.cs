using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace SurfaceUnroll.Benchmarks.Flattening;

/// <summary>Another program that flattens meshes, called as <c>EXE MESH.obj OUT.obj</c>; it prints <c>seconds S</c>, its own time without files.</summary>
/// <param name="Name">For the table.</param>
/// <param name="Executable">Path.</param>
internal sealed partial record Peer(string Name, string Executable)
{
    /// <summary>Median of a few runs; null if the program fails or prints no time.</summary>
    /// <param name="mesh">File to read.</param>
    /// <param name="target">File that it writes.</param>
    /// <param name="runs">Most runs.</param>
    /// <param name="limit">No further run once this many seconds are spent.</param>
    public double? Time(string mesh, string target, int runs, double limit)
    {
        var seconds = new List<double>();
        while (seconds.Count < runs && seconds.Sum() < limit)
        {
            var start = new ProcessStartInfo(Executable, [mesh, target]) { RedirectStandardOutput = true };
            using Process process = Process.Start(start) ?? throw new InvalidOperationException(Executable);
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            if (process.ExitCode != 0 || Seconds().Match(output) is not { Success: true } match) return null;
            seconds.Add(double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture));
        }
        return Statistics.Median(seconds);
    }

    [GeneratedRegex(@"seconds\s+([0-9.eE+-]+)")]
    private static partial Regex Seconds();
}

/// <summary>Numbers about numbers.</summary>
internal static class Statistics
{
    /// <summary>The middle one, or the mean of the two in the middle.</summary>
    public static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return 0.5 * (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]);
    }
}
