using System.Globalization;
using SurfaceUnroll.Files.Printers;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>How the bench is started.</summary>
/// <param name="Folder">Where jobs lie; full path.</param>
/// <param name="Port">0: any free one.</param>
/// <param name="Share">Serve the shop's own network too.</param>
/// <param name="Open">Open the page in the browser.</param>
public sealed record BenchOptions(string Folder, int Port = BenchOptions.UsualPort, bool Share = false, bool Open = true)
{
    /// <summary>Port where none is asked for.</summary>
    public const int UsualPort = 4747;

    /// <summary>Name of the file to open at once; null for the start page.</summary>
    public string? Job { get; init; }

    /// <summary>Where measured printers are kept; null: where this user's are.</summary>
    public PrinterStore? Printers { get; init; }

    /// <summary>What to write where the arguments cannot be used.</summary>
    public const string Usage = """
        surfaceunroll bench [FOLDER | JOB.json] [--port N] [--share] [--no-browser]

          FOLDER        where the jobs lie; else "SurfaceUnroll" in your documents
          JOB.json      a job to open at once
          --port N      port of the page, 4747 if it is free; 0 takes any
          --share       let phones in the shop's own network in, each with a code that is asked once
          --no-browser  print the address, do not open it
        """;

    /// <summary>Reads the arguments.</summary>
    /// <returns>The options, or what is wrong.</returns>
    public static (BenchOptions? Options, string? Problem) Read(IReadOnlyList<string> arguments)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        var options = new BenchOptions(Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.MyDocuments) is { Length: > 0 } documents ? documents : ".", "SurfaceUnroll"));
        bool named = false;
        for (int i = 0; i < arguments.Count; i++)
        {
            string argument = arguments[i];
            switch (argument)
            {
                case "--share":
                    options = options with { Share = true };
                    break;
                case "--no-browser":
                    options = options with { Open = false };
                    break;
                case "--port":
                    if (++i == arguments.Count || !int.TryParse(arguments[i], NumberStyles.None, CultureInfo.InvariantCulture, out int port) || port > 65535)
                        return (null, "--port needs a number from 0 to 65535.");
                    options = options with { Port = port };
                    break;
                default:
                    if (argument.StartsWith('-')) return (null, $"There is no option {argument}.");
                    if (named) return (null, $"Name one folder or one job; {argument} is a second.");
                    if (string.IsNullOrWhiteSpace(argument)) return (null, "The name of the folder is empty.");
                    named = true;
                    string full = Path.GetFullPath(argument);
                    bool job = File.Exists(full) || full.EndsWith(".json", StringComparison.OrdinalIgnoreCase);
                    if (job && !File.Exists(full)) return (null, $"There is no job {argument}.");
                    options = job ? options with { Folder = Path.GetDirectoryName(full)!, Job = Path.GetFileName(full) } : options with { Folder = full };
                    break;
            }
        }
        return (options, null);
    }
}
