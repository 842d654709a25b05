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

    // Examples are a whole job, one curve, the panels or the paper.
    private static string WholeJob(string example)
    {
        const string curves = "\"front\": { \"chord\": 9, \"rise\": 1 }, \"middle\": { \"chord\": 9, \"rise\": 3 }, \"rear\": { \"chord\": 9, \"rise\": 2 }", panels = "\"panels\": [{ \"name\": \"a\", \"loft\": [\"front\", \"rear\"] }]";
        if (example.StartsWith('{')) return example;
        if (example.StartsWith("\"panels\"", StringComparison.Ordinal)) return $"{{ \"units\": \"mm\", \"curves\": {{ {curves} }}, {example} }}";
        if (example.StartsWith("\"paper\"", StringComparison.Ordinal)) return $"{{ \"units\": \"mm\", \"curves\": {{ {curves} }}, {panels}, {example} }}";
        string others = string.Join(", ", curves.Split("}, ").Where(c => !c.StartsWith(example.Split(':')[0], StringComparison.Ordinal)).Select(c => c.TrimEnd('}') + "}"));
        return $"{{ \"units\": \"mm\", \"curves\": {{ {others}, {example} }}, {panels} }}";
    }

    [GeneratedRegex("```jsonc\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}
