using System.Text.Json;
using Json.Schema;
using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>The schema against an independent validator, JsonSchema.Net.</summary>
public class JobSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(JobSchema.Text);

    // Faults that are told from more than one place of the file, or by the text of a length or a name: a schema cannot know them.
    private static readonly string[] BeyondSchema =
    [
        "key-twice", "length-unreadable", "number-too-large", "sheet-too-thick", "curve-points-repeat", "curve-not-on-centreline", "curve-side-range",
        "curve-absent", "panel-name", "panel-name-twice", "paper-margin", "paper-overlap", "curve-no-side", "side-end-bend", "slot-size", "corner-radius", "opening-name-twice",
        "panel-absent", "trim-by-itself", "joint-on", "joint-name-twice", "joint-name", "edge-absent", "pitch-too-small", "own-bend-deduction",
        "paper-roll-orientation", "nest-gap", "material-unlisted", "material-absent", "material-strengths", "material-elongation", "gauge-no-table", "gauge-unknown", "kerf-too-wide", "curve-file", "error-range", "freedom-curve", "freedom-even", "freedom-twice",
    ];

    public static TheoryData<string> Good => [.. Fixtures.Good];

    public static TheoryData<string> Broken =>
    [
        .. BrokenJobs.All
            .Where(j => !j.Code.StartsWith("mesh-", StringComparison.Ordinal) || j.Code == "mesh-file-kind") // The others are in the mesh file.
            .Where(j => !BeyondSchema.Contains(j.Code) && !j.Code.StartsWith("json-", StringComparison.Ordinal) && j.Code is not ("file-empty" or "not-a-number"))
            .Where(j => j.Name is not ("face not said" or "chord negative" or "bend misspelt" or "roll as wide as a hall" or "cost of shrinking NaN" or "columns of a drawing" or "bound too small" or "built of one letter twice")) // The one needs the thickness too, the last the unit; two are texts, one is no JSON, and that two letters differ no schema sees.
            .Select(j => j.Name),
    ];

    [Theory]
    [MemberData(nameof(Good))]
    public void Demo_job_is_valid(string name) => Assert.True(IsValid(Fixtures.Text(name)));

    [Fact]
    public void Starter_job_is_valid() => Assert.True(IsValid(StarterJob.Text));

    [Fact]
    public void Job_with_six_mistakes_is_not_valid() => Assert.False(IsValid(Fixtures.Text("jobs/six-mistakes.json")));

    [Theory]
    [MemberData(nameof(Broken))]
    public void Broken_shape_is_not_valid(string name) =>
        Assert.False(IsValid(BrokenJobs.All.Single(j => j.Name == name).Text.Replace("¶", "", StringComparison.Ordinal)));

    [Fact]
    public void Schema_is_itself_JSON_with_LF_ends_and_names_its_dialect()
    {
        using JsonDocument document = JsonDocument.Parse(JobSchema.Text);
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", document.RootElement.GetProperty("$schema").GetString());
        Assert.DoesNotContain('\r', JobSchema.Text);
    }

    private static bool IsValid(string text)
    {
        using JsonDocument job = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        return Schema.Evaluate(job.RootElement).IsValid;
    }
}
