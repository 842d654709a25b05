using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>A way to measure a curve.</summary>
/// <param name="Key">The key of the job that makes a curve of this kind.</param>
/// <param name="Name">What it is called in the shop.</param>
/// <param name="How">How the measure is taken.</param>
/// <param name="Start">Measures to begin with, as JSON without the braces.</param>
public sealed record CurveKind(string Key, string Name, string How, string Start)
{
    /// <summary>All kinds.</summary>
    public static IReadOnlyList<CurveKind> All() =>
    [
        new("points", "Table of points", "Lay a square or a contour gauge on the profile. For each point note how far across it lies from the centreline, and how far up.",
            "\"points\": [ [-120, 0], [-85, 85], [0, 120], [85, 85], [120, 0] ], \"fit\": \"smooth\""),
        new("run", "Straights and arcs", "Go along the edge from left to right with a straight-edge and a radius gauge: how long each straight is, how large each radius, how far it turns.",
            "\"run\": [ { \"line\": 50 }, { \"arc\": 120, \"turn\": 180 }, { \"line\": 50 } ]"),
        new("chord", "Chord and rise", "For a plain arc: lay a straight-edge from end to end and measure its length, then the height of the arc over its middle.",
            "\"chord\": 240, \"rise\": 60"),
        new("plan", "Plan and side view", "For a hoop that is not flat: trace it from above, then stand a square beside it and note the height at places from front to rear.",
            "\"plan\": { \"run\": [ { \"line\": 150 }, { \"arc\": 120, \"turn\": 180 }, { \"line\": 150 } ] }, \"side\": [ [0, 0], [150, 5], [270, 40] ]"),
        new("xyz", "Points in space", "From one corner of the bench: how far aft, how far to the right and how high each point lies.",
            "\"xyz\": [ [0, -120, 0], [0, 0, 120], [0, 120, 0] ]"),
    ];

    /// <summary>The kind of the curve at a path; null if it has none yet.</summary>
    public static CurveKind? Of(JobText text, string path)
    {
        ArgumentNullException.ThrowIfNull(text);
        return All().FirstOrDefault(k => text.Find(JobPath.Under(path, k.Key)) is not null);
    }
}
