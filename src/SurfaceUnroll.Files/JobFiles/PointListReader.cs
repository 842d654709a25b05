using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads lists of measured points.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="errors">Takes the error that a point may have of its own.</param>
internal sealed class PointListReader(Measures measures, ErrorReader errors)
{
    /// <summary>Points nearer than this are one, mm: a hundredth of what a careful hand can measure.</summary>
    public const double SamePlace = 0.001;

    private const string Profile = "[across, up]";

    private readonly FaultList _faults = measures.Faults;

    /// <summary>Points of a profile; a third value may make a point a corner.</summary>
    public ImmutableArray<ProfilePoint> InPlane(JobBlock block, string key)
    {
        ImmutableArray<ProfilePoint> points = Read(block, key, "[[0, 120], [85, 85], [120, 0]]", ProfilePointAt);
        Repeats(block, key, [.. points.Select(p => new Vec3(0, p.Place.X, p.Place.Y))]);
        return points;
    }

    /// <summary>Points in space.</summary>
    public ImmutableArray<Vec3> InSpace(JobBlock block, string key)
    {
        ImmutableArray<Vec3> points = Read(block, key, "[[0, -120, 0], [0, 0, 120], [0, 120, 0]]",
            (tree, path) => measures.Tuple(tree, path, "[x, y, z]", 3) is [double x, double y, double z] ? new Vec3(x, y, z) : Unknown3);
        Repeats(block, key, points);
        return points;
    }

    /// <summary>Points of a side view, in order from front to rear.</summary>
    public ImmutableArray<Vec2> SideView(JobBlock block, string key)
    {
        ImmutableArray<Vec2> points = Read(block, key, "[[0, 0], [150, 12], [300, 60]]",
            (tree, path) => measures.Tuple(tree, path, "[aft, height]", 2) is [double aft, double height] ? new Vec2(aft, height) : Unknown2);
        for (int i = 1; i < points.Length; i++)
        {
            if (points[i].X - points[i - 1].X > SamePlace || double.IsNaN(points[i].X + points[i - 1].X)) continue;
            _faults.Add("curve-side-range", At(block, key, i), Place(block, key, i),
                $"Each place of the side view must lie aft of the one before it; here {measures.Show(points[i].X)} follows {measures.Show(points[i - 1].X)}.",
                "Put the points in order from front to rear, each aft distance once.");
        }
        return points;
    }

    private static Vec2 Unknown2 => new(double.NaN, double.NaN);

    private static Vec3 Unknown3 => new(double.NaN, double.NaN, double.NaN);

    private ImmutableArray<T> Read<T>(JobBlock block, string key, string example, Func<JsonTree, string, T> point)
    {
        string path = block.PathOf(key);
        if (measures.List(block.Find(key)!, path, example) is not { } list) return [];
        if (list.Items.Length < 2)
        {
            _faults.Add("curve-too-few-points", path, list.Place, $"A curve needs at least two points; here {(list.Items.IsEmpty ? "is none" : "is one")}.",
                "Measure both ends and, on a bent part, a point about every hand's width between them.");
        }
        return [.. list.Items.Select((item, i) => Own(item, $"{path}[{Measures.Count(i)}]"))];

        T Own(JsonTree item, string at) => point(errors.Point(item, at), at);
    }

    private ProfilePoint ProfilePointAt(JsonTree tree, string path)
    {
        bool corner = false;
        if (tree is JsonList { Items: [_, _, JsonText word] } marked)
        {
            corner = measures.Choice(word, path + "[2]", true, ("corner", true));
            tree = new JsonList(marked.Place, marked.Items[..2]);
        }
        return new ProfilePoint(measures.Tuple(tree, path, Profile, 2) is [double across, double up] ? new Vec2(across, up) : Unknown2, corner);
    }

    private void Repeats(JobBlock block, string key, ImmutableArray<Vec3> points)
    {
        for (int i = 1; i < points.Length; i++)
        {
            if (!((points[i] - points[i - 1]).Length <= SamePlace)) continue; // False for NaN too.
            _faults.Add("curve-points-repeat", At(block, key, i), Place(block, key, i),
                $"Point {Measures.Count(i + 1)} stands at the same place as point {Measures.Count(i)}.", "Take one of the two out.");
        }
    }

    private static string At(JobBlock block, string key, int index) => $"{block.PathOf(key)}[{Measures.Count(index)}]";

    private static TextPlace Place(JobBlock block, string key, int index) => ((JsonList)block.Find(key)!).Items[index].Place;
}
