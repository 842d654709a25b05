using System.Diagnostics;
using System.Text.RegularExpressions;

namespace SurfaceUnroll.Bench.Tests;

/// <summary>The bench as a program of its own, as the command line starts it.</summary>
internal sealed partial class BenchProcess : IDisposable
{
    private readonly Process _process;

    private BenchProcess(Process process, string address, TimeSpan start)
    {
        _process = process;
        Address = address;
        Start = start;
    }

    /// <summary>Address of the page.</summary>
    public string Address { get; }

    /// <summary>From start to ready.</summary>
    public TimeSpan Start { get; }

    /// <summary>Starts it and waits until it is ready.</summary>
    /// <param name="folder">Of the jobs.</param>
    /// <param name="port">0: any.</param>
    /// <param name="more">More arguments.</param>
    public static BenchProcess Run(string folder, int port = 0, params string[] more)
    {
        // Beside the tests lies a copy of the program without the files that the browser asks for: run the one in its own folder.
        string configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;
        string program = Path.Combine(Repository.Root, "src", "SurfaceUnroll.Bench", "bin", configuration, "net10.0", "SurfaceUnroll.Bench.dll");
        var start = new ProcessStartInfo("dotnet", [program, folder, "--no-browser", "--port", port.ToString(System.Globalization.CultureInfo.InvariantCulture), .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetTempPath(),
        };
        var clock = Stopwatch.StartNew();
        Process process = Process.Start(start)!;
        while (process.StandardOutput.ReadLine() is { } line)
        {
            if (ReadyLine().Match(line) is not { Success: true } ready) continue;
            // What else it prints must not fill the pipe.
            _ = process.StandardOutput.ReadToEndAsync();
            _ = process.StandardError.ReadToEndAsync();
            return new BenchProcess(process, ready.Value, clock.Elapsed);
        }
        throw new InvalidOperationException($"The bench ended: {process.StandardError.ReadToEnd()}");
    }

    /// <summary>Ends it at once, as a power cut does.</summary>
    public void Kill()
    {
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited) Kill();
        _process.Dispose();
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex ReadyLine();
}
