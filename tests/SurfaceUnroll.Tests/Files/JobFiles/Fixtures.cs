using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>The jobs that come with the project.</summary>
internal static class Fixtures
{
    /// <summary>Jobs that can be used, as paths below fixtures/ with forward slashes, in order.</summary>
    // Folders that end in -pattern hold what a run of a demo job wrote beside it.
    public static IEnumerable<string> Good => Directory.EnumerateFiles(Folder, "*.json", SearchOption.AllDirectories)
        .Where(path => !Path.GetDirectoryName(path)!.EndsWith("-pattern", StringComparison.Ordinal))
        .Select(f => Path.GetRelativePath(Folder, f).Replace('\\', '/'))
        .Where(f => f is not ("jobs/six-mistakes.json" or "published/flattening-energies.json"))
        .Order(StringComparer.Ordinal);

    /// <summary>Text of one of them.</summary>
    public static string Text(string name) => File.ReadAllText(PathOf(name));

    /// <summary>Where one of them lies.</summary>
    public static string PathOf(string name) => Path.Combine(Folder, name);

    /// <summary>One of them, read with the mesh files that it names.</summary>
    public static JobReading Read(string name) => JobFile.ReadIn(Text(name), Path.GetDirectoryName(Path.Combine(Folder, name))!);

    /// <summary>Text of a page of docs, lines ending in LF.</summary>
    public static string Page(string name) => File.ReadAllText(Path.Combine(Repository.Root, "docs", name)).ReplaceLineEndings("\n");

    /// <summary>Text of docs/job-file.md, lines ending in LF.</summary>
    public static string Guide => Page("job-file.md");

    private static string Folder => Path.Combine(Repository.Root, "fixtures");
}
