using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.IO.Compression;
using System.Runtime.CompilerServices;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>The output files of developments: the same bytes that the command line writes, made when first asked for.</summary>
public sealed class PatternStore
{
    // The earliest time that a zip can tell: the same job gives the same archive.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    // Stands for a printer that prints true.
    private static readonly PrinterScale NoPrinter = new("", 1, 1, 0);

    private readonly ConditionalWeakTable<Development, ConcurrentDictionary<PrinterScale, Lazy<ImmutableArray<OutputFile>>>> _files = [];

    /// <summary>All files of a development.</summary>
    /// <param name="development">What was developed.</param>
    /// <param name="printer">The printer that the paper is corrected for; null: one that prints true.</param>
    public ImmutableArray<OutputFile> Files(Development development, PrinterScale? printer = null) =>
        _files.GetValue(development, _ => []).GetOrAdd(printer ?? NoPrinter, _ => new Lazy<ImmutableArray<OutputFile>>(() => PatternFiles.Of(For(development, printer)))).Value;

    /// <summary>A development whose paper is corrected for a printer; what is on the paper stays.</summary>
    public static Development For(Development development, PrinterScale? printer)
    {
        ArgumentNullException.ThrowIfNull(development);
        return printer is null ? development : development with { Job = development.Job with { Paper = development.Job.Paper with { Printer = printer } } };
    }

    /// <summary>The files in one archive.</summary>
    public static byte[] Zip(ImmutableArray<OutputFile> files, string job, string jobName)
    {
        using var buffer = new MemoryStream();
        using (var archive = new ZipArchive(buffer, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(archive, jobName + ".json", System.Text.Encoding.UTF8.GetBytes(job));
            foreach (OutputFile file in files) Add(archive, file.Name, file.Content);
        }
        return buffer.ToArray();
    }

    private static void Add(ZipArchive archive, string name, ReadOnlyMemory<byte> content)
    {
        ZipArchiveEntry entry = archive.CreateEntry(name);
        entry.LastWriteTime = NoTime;
        using Stream stream = entry.Open();
        stream.Write(content.Span);
    }
}
