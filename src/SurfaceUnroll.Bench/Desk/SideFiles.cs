using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>Files that lie beside a job and are named in it: drawings, tables, scans.</summary>
/// <param name="folder">Folder of the job.</param>
/// <param name="endings">What they end in, each with its point, in small letters.</param>
public sealed class SideFiles(string folder, ImmutableArray<string> endings)
{
    /// <summary>Most bytes of one file.</summary>
    public const long Largest = 64 << 20;

    // Longer names are cut: some disks take no more than 255 bytes.
    private const int LongestName = 60;

    /// <summary>Their names as a job writes them, in order; those of folders below with / between.</summary>
    public ImmutableArray<string> Names => Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder, "*", Look).Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/')).Where(Fits).Order(StringComparer.OrdinalIgnoreCase)]
        : [];

    private static EnumerationOptions Look => new() { RecurseSubdirectories = true, MaxRecursionDepth = 2, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System };

    /// <summary>Puts a file beside the job, whole or not at all. The same bytes under the same name are put there once; a file of that name that holds something else stays.</summary>
    /// <param name="name">As it was called where it came from; only its last part counts, so it leads nowhere else.</param>
    /// <param name="content">What it holds; at most <see cref="Largest"/>.</param>
    /// <returns>Its name in the job; null with the reason.</returns>
    public (string? Name, string? Problem) Keep(string name, byte[] content)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(content);
        string last = name.Split('/', '\\')[^1], ending = Path.GetExtension(last).ToLowerInvariant();
        if (!endings.Contains(ending)) return (null, $"“{last}” is not such a file. Choose one that ends in {string.Join(", ", endings[..^1])}{(endings.Length > 1 ? " or " : "")}{endings[^1]}.");
        if (content.Length == 0) return (null, $"“{last}” is empty. Save it again where it comes from.");
        if (content.Length > Largest) return (null, $"“{last}” has more than {Largest >> 20} MB. Save only what is needed in a file of its own.");
        string stem = Slug.Of(Path.GetFileNameWithoutExtension(last)) is { Length: > 0 } made ? made[..Math.Min(made.Length, LongestName)] : "file";
        Directory.CreateDirectory(folder);
        for (int i = 1; ; i++)
        {
            string own = (i == 1 ? stem : $"{stem}-{i.ToString(CultureInfo.InvariantCulture)}") + ending, path = Path.Combine(folder, own);
            if (Path.Exists(path))
            {
                if (Holds(path, content)) return (own, null);
                continue;
            }
            OutputFault? fault = OutputFolder.WriteNewFile(path, content);
            return fault is null ? (own, null) : (null, $"{fault.Message} {fault.Mend}");
        }
    }

    private static bool Holds(string path, byte[] content)
    {
        try
        {
            return File.Exists(path) && new FileInfo(path).Length == content.Length && File.ReadAllBytes(path).AsSpan().SequenceEqual(content);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private bool Fits(string name) => endings.Contains(Path.GetExtension(name).ToLowerInvariant());
}
