using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads how well the readings of one curve, or of a bent plate, were taken.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="block">The curve, or the plate.</param>
internal sealed class ErrorReader(Measures measures, JobBlock block)
{
    // Past these a reading is no reading, mm and degrees.
    private const double MostError = 50, MostAngle = 20;

    private readonly ImmutableSortedDictionary<string, double>.Builder _own = ReadingErrors.None.Own.ToBuilder();

    /// <summary>What was found.</summary>
    public ReadingErrors Errors => new(block.Find("error") is { } each ? Length(each, block.PathOf("error")) : 0, _own.ToImmutable());

    /// <summary>A point without the block of its error, which is kept: <c>[120, 40, { "error": 2 }]</c>.</summary>
    /// <param name="point">As it stands in the file.</param>
    /// <param name="path">Its path.</param>
    public JsonTree Point(JsonTree point, string path)
    {
        if (point is not JsonList { Items: [_, _, .., JsonObject last] } list) return point;
        if (JobBlock.Of(last, $"{path}[{Measures.Count(list.Items.Length - 1)}]", measures.Faults, "") is { } marked)
        {
            marked.CheckKeys(["error"]);
            if (marked.Need("error", "Write the error of this point, like { \"error\": 2 }.") is { } error) _own[Part(path)] = Length(error, marked.PathOf("error"));
        }
        return new JsonList(list.Place, list.Items[..^1]);
    }

    /// <summary>The error of a step of a run, and of its turn.</summary>
    public void Step(JobBlock step)
    {
        if (step.Find("error") is { } error) _own[Part(step.Path)] = Length(error, step.PathOf("error"));
        if (step.Has("arc") && step.Find("turnError") is { } turn) _own[Part(step.PathOf("turn"))] = Angle(turn, step.PathOf("turnError"));
    }

    /// <summary>The errors of a placement: of its origin, and of its angles.</summary>
    public void Placement(JobBlock placement)
    {
        if (placement.Find("error") is { } error) _own["at"] = Length(error, placement.PathOf("error"));
        if (placement.Find("angleError") is { } angle) _own["at.angle"] = Angle(angle, placement.PathOf("angleError"));
    }

    private string Part(string path) => path[(block.Path.Length + 1)..];

    private double Length(JsonTree tree, string path)
    {
        double error = measures.Length(tree, path, Allowed.NotNegative);
        if (error > MostError)
            measures.Faults.Add("error-range", path, tree.Place, $"A standard error of {measures.Show(error)} is past what can be used here, {measures.Show(MostError)}.", "Write by how much such a reading is off as a rule: two of three are off by less.");
        return error;
    }

    private double Angle(JsonTree tree, string path)
    {
        double error = measures.Angle(tree, path);
        if (error < 0 || error > MostAngle * Math.PI / 180)
            measures.Faults.Add("error-range", path, tree.Place, "The standard error of an angle is 0 to 20 degrees.", "Write by how many degrees such an angle is off as a rule.");
        return error;
    }
}
