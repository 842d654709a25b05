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

    private readonly ConditionalWeakTable<Development, Lazy<ImmutableArray<OutputFile>>> _files = [];

    /// <summary>All files of a development.</summary>
    public ImmutableArray<OutputFile> Files(Development development) =>
        _files.GetValue(development, d => new Lazy<ImmutableArray<OutputFile>>(() => PatternFiles.Of(d))).Value;

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
