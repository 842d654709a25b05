using System.Diagnostics;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>bench</c>: starts the layout bench, a program of its own that lies beside this one.</summary>
internal static class OpeningBench
{
    private const string Name = "SurfaceUnroll.Bench";

    public static int Run(string[] arguments, Screen screen)
    {
        string[] places = [.. Places()];
        if (places.FirstOrDefault(File.Exists) is not { } program)
        {
            FaultText.Write(screen.Error, "bench", "The program of the layout bench is not here.",
                $"It belongs into {Path.GetDirectoryName(places[0])}; in the source tree, build it with: dotnet build src/{Name}");
            return ExitStatus.Failed;
        }
        bool library = program.EndsWith(".dll", StringComparison.Ordinal);
        var start = new ProcessStartInfo(library ? "dotnet" : program, library ? [program, .. arguments] : arguments) { UseShellExecute = false };
        // Ctrl+C goes to both; the bench ends by it, and this one with the bench.
        Console.CancelKeyPress += (_, e) => e.Cancel = true;
        try
        {
            using Process process = Process.Start(start)!;
            process.WaitForExit();
            return process.ExitCode;
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            FaultText.Write(screen.Error, program, $"The layout bench cannot be started: {e.Message}", library ? "Install the .NET runtime, or publish the bench with it." : "Check its rights.");
            return ExitStatus.Failed;
        }
    }

    // Published: in a folder "bench" beside the command. In the source tree: where it was built, in the same way as this program.
    internal static IEnumerable<string> Places()
    {
        string home = AppContext.BaseDirectory, executable = OperatingSystem.IsWindows() ? Name + ".exe" : Name;
        yield return Path.Combine(home, "bench", executable);
        yield return Path.Combine(home, "bench", Name + ".dll");
        if (new DirectoryInfo(home) is { Parent: { Name: var configuration, Parent.Parent.Parent: { } sources } } own)
            yield return Path.Combine(sources.FullName, Name, "bin", configuration, own.Name, Name + ".dll");
    }
}
