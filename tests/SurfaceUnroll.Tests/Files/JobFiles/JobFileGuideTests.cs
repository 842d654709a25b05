using System.Text.RegularExpressions;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Tests.Flattening;

namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>What docs/job-file.md says is so.</summary>
public partial class JobFileGuideTests
{
    private static readonly string Guide = Fixtures.Guide;

    [Fact]
    public void Every_fault_is_explained_in_the_guide() =>
        Assert.All(BrokenJobs.All.Select(j => j.Code).Distinct(), code => Assert.Contains($"`{code}`", Guide, StringComparison.Ordinal));

    [Fact]
    public void Every_example_in_the_guide_can_be_used()
    {
        string[] examples = [.. Example().Matches(Guide).Select(m => m.Groups[1].Value)];
        Assert.True(examples.Length >= 7);
        Assert.All(examples, example => Assert.Empty(JobFile.Read(WholeJob(example), _ => TestMeshes.Obj(TestMeshes.Sheet())).Faults));
    }

    // Examples are a whole job, a part of one, or one curve; the rest of the job is filled in.
    private static string WholeJob(string example)
    {
        if (example.StartsWith('{')) return example;
        string[] curves =
        [
            .. new[] { "front", "middle", "rear", "arch", "apron", "profile", "sill", "back" }.Select((name, i) => $"\"{name}\": {{ \"chord\": 9, \"rise\": {i + 1} }}"),
            "\"hoop\": { \"plan\": { \"chord\": 9, \"rise\": 1 }, \"side\": [[0, 0], [9, 1]] }",
        ];
        const string panels = """
            "panels": [{ "name": "cover", "loft": ["front", "rear"], "trims": [{ "name": "seat", "plane": {}, "keep": "up" }] }, { "name": "front plate", "flat": "arch" }, { "name": "base", "flat": "hoop" }]
            """;
        string key = example[..example.IndexOf(':', StringComparison.Ordinal)];
        bool isPart = key is "\"panels\"" or "\"paper\"" or "\"sheet\"" or "\"joints\"";
        string[] filled = [.. curves.Where(c => isPart || !c.StartsWith(key, StringComparison.Ordinal)), .. isPart ? Array.Empty<string>() : [example]];
        string rest = key == "\"panels\"" ? example : isPart ? $"{panels}, {example}" : panels;
        return $"{{ \"units\": \"mm\", \"measured\": \"outside\", \"curves\": {{ {string.Join(", ", filled)} }}, {rest} }}";
    }

    [GeneratedRegex("```jsonc\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}
