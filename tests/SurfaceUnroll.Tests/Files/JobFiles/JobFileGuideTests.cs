using System.Text.RegularExpressions;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
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
        Assert.All(examples, example => Assert.Empty(JobFile.Read(WholeJob(example), Open).Faults));
    }

    [Fact]
    public void Blank_of_the_worked_example_is_as_long_as_the_guide_says()
    {
        string example = Example().Matches(Guide).Select(m => m.Groups[1].Value).Single(e => e.Contains("36.5", StringComparison.Ordinal));
        PanelDevelopment channel = Assert.Single(Developer.Develop(JobFile.Read(example).Job!).Panels);
        BendLength bend = channel.Bends[0].Length;
        Assert.Equal((3.5, 3.98, 3.02), (Math.Round(bend.Setback, 9), Math.Round(bend.Allowance, 2), Math.Round(bend.Deduction, 2)));
        double length = Box.Around(channel.Cut).Height;
        Assert.Equal(194.0, length, 0.05);
        Assert.Equal(40 + 120 + 40 - 2 * bend.Deduction, length, 1e-9);
    }

    [Fact]
    public void Every_picture_of_the_guide_is_there() =>
        Assert.All(Picture().Matches(Guide).Select(m => m.Groups[1].Value), name => Assert.StartsWith("<?xml", Fixtures.Page(name), StringComparison.Ordinal));

    private static byte[]? Open(string name) => name.EndsWith(".dxf", StringComparison.Ordinal)
        ? System.Text.Encoding.ASCII.GetBytes(CurveFiles.DxfCurveTests.Text(CurveFiles.DxfCurveTests.Entity("LINE", (8, "front"), (10, "0"), (20, "0"), (11, "9"), (21, "0"))))
        : TestMeshes.Obj(TestMeshes.Sheet());

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
        bool isPart = key is "\"panels\"" or "\"paper\"" or "\"sheet\"" or "\"joints\"" or "\"materials\"" or "\"shop\"" or "\"cutting\"" or "\"built\"";
        string[] filled = [.. curves.Where(c => isPart || !c.StartsWith(key, StringComparison.Ordinal)), .. isPart ? Array.Empty<string>() : [example]];
        string rest = key == "\"panels\"" ? example : isPart ? $"{panels}, {example}" : panels;
        return $"{{ \"units\": \"mm\", \"measured\": \"outside\", \"curves\": {{ {string.Join(", ", filled)} }}, {rest} }}";
    }

    [GeneratedRegex(@"!\[[^\]]*\]\((images/[^)]+)\)")]
    private static partial Regex Picture();

    [GeneratedRegex("```jsonc\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}
