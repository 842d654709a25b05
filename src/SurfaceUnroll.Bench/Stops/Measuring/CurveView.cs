using System.Collections.Immutable;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>One drawing of a curve: its line, and the measured points that can be moved.</summary>
/// <param name="Title">From where it is seen.</param>
/// <param name="Line">Of the curve, mm, x to the right, y up.</param>
/// <param name="List">Path of the list of points; null if there is none to move.</param>
/// <param name="Across">Which value of a point is shown to the right.</param>
/// <param name="Up">Which one is shown upwards.</param>
public sealed record CurveView(string Title, ImmutableArray<Vec2> Line, string? List = null, int Across = 0, int Up = 1)
{
    /// <summary>The drawings of a curve; none before it can be built.</summary>
    /// <param name="job">The job as it was last sound.</param>
    /// <param name="text">Its text now.</param>
    /// <param name="path">Path of the curve.</param>
    /// <param name="name">Its name.</param>
    public static ImmutableArray<CurveView> Of(Job job, JobText text, string path, string name)
    {
        if (CurveShape.Of(job, name, placed: false) is not { } shape) return [];
        string At(string key) => JobPath.Under(path, key);
        ImmutableArray<Vec2> Seen(Func<Vec3, Vec2> from) => [.. shape.Points.Select(from)];
        static Vec2 Front(Vec3 p) => new(p.Y, p.Z);
        static Vec2 Above(Vec3 p) => new(p.Y, p.X);
        return CurveKind.Of(text, path)?.Key switch
        {
            "points" => [new("Profile", Seen(Front), At("points"))],
            "run" or "chord" => [new("Profile", Seen(Front))],
            "plan" =>
            [
                new("From above", Seen(Above), text.Find(At("plan.points")) is null ? null : At("plan.points")),
                new("From the side", Seen(p => new Vec2(p.X, p.Z)), At("side")),
            ],
            "xyz" => [new("From the front", Seen(Front), At("xyz"), 1, 2), new("From above", Seen(Above), At("xyz"), 1, 0)],
            _ => [],
        };
    }
}
