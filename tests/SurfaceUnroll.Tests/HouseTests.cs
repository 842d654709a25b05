using System.Text.RegularExpressions;

namespace SurfaceUnroll.Tests;

/// <summary>The rules of the house: data flows one way through the folders, folders are namespaces, files stay short.</summary>
public partial class HouseTests
{
    private const int LongestFile = 400;

    private static readonly string Root = Repository.Root;

    /// <summary>What each folder of the computing library may use. Jobs holds the job's records, which every stage reads, and the one
    /// pipeline that runs all stages; so it may use all, and all may use it.</summary>
    private static readonly Dictionary<string, string[]> MayUse = new()
    {
        ["Geometry"] = [],
        ["Units"] = [],
        ["Curves"] = ["Geometry", "Units", "Jobs"],
        ["Lofting"] = ["Geometry", "Units", "Jobs", "Curves"],
        ["Flattening"] = ["Geometry", "Units", "Jobs", "Curves", "Lofting"],
        ["Fitness"] = ["Geometry", "Units", "Jobs", "Curves", "Lofting", "Flattening"],
        ["Forming"] = ["Geometry", "Units", "Jobs", "Curves", "Lofting", "Fitness", "Flattening"],
        ["Plates"] = ["Geometry", "Units", "Jobs", "Curves", "Forming"],
        ["Patterns"] = ["Geometry", "Units", "Jobs", "Curves", "Lofting", "Fitness", "Flattening", "Forming", "Plates", "Drawings"],
        ["Drawings"] = ["Geometry", "Units", "Jobs", "Forming", "Patterns"],
        ["Photos"] = ["Geometry", "Units", "Jobs", "Curves"],
        ["Uncertainty"] = ["Geometry", "Units", "Jobs", "Curves", "Patterns"],
        ["Jobs"] = ["Geometry", "Units", "Curves", "Lofting", "Fitness", "Flattening", "Forming", "Plates", "Patterns", "Drawings", "Uncertainty"],
    };

    public static TheoryData<string> Folders =>
        [.. Directory.GetDirectories(Path.Combine(Root, "src", "SurfaceUnroll")).Select(d => Path.GetFileName(d)).Where(d => d is not ("bin" or "obj"))];

    [Theory]
    [MemberData(nameof(Folders))]
    public void Folder_uses_only_what_comes_before_it(string folder)
    {
        Assert.True(MayUse.ContainsKey(folder), $"{folder} is a new folder: say in {nameof(MayUse)} what it may use.");
        string[] allowed = [folder, .. MayUse[folder]];
        foreach (string file in Sources(Path.Combine("src", "SurfaceUnroll", folder)))
        {
            IEnumerable<string> used = File.ReadLines(file)
                .Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal))
                .SelectMany(line => Mention().Matches(line)).Select(m => m.Groups[1].Value);
            Assert.All(used, name => Assert.True(allowed.Contains(name), $"{Short(file)} uses {name}"));
        }
    }

    [Fact]
    public void Computing_library_neither_reads_nor_writes_nor_prints()
    {
        foreach (string file in Sources(Path.Combine("src", "SurfaceUnroll")))
            Assert.False(Outside().IsMatch(File.ReadAllText(file)), $"{Short(file)} reaches outside");
    }

    [Fact]
    public void Namespaces_are_folders()
    {
        foreach (string file in Sources("src"))
        {
            if (NamespaceLine().Match(File.ReadAllText(file)) is not { Success: true } match) continue;
            string[] parts = Short(file).Split('/');
            Assert.Equal(string.Join('.', parts[1..^1]), match.Groups[1].Value);
        }
    }

    [Fact]
    public void No_file_is_long()
    {
        foreach (string file in Sources("src").Concat(Sources("tests")))
            Assert.True(File.ReadLines(file).Count() <= LongestFile, $"{Short(file)} has more than {LongestFile} lines");
    }

    private static IEnumerable<string> Sources(string folder) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories)
            .Where(f => !Short(f).Split('/').Any(part => part is "bin" or "obj"));

    private static string Short(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');

    [GeneratedRegex(@"\bSurfaceUnroll\.(\w+)")]
    private static partial Regex Mention();

    [GeneratedRegex(@"\bSystem\.IO\b|\bFile\.|\bConsole\.|\bProcess\.|\bHttpClient\b|\bDateTime(Offset)?\.(Utc)?Now\b")]
    private static partial Regex Outside();

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();
}
