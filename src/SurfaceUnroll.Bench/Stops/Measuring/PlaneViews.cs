using System.Collections.Immutable;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>The drawings of a curve: one for a flat curve, two for one in space.</summary>
internal static class PlaneViews
{
    /// <summary>The names of a profile's numbers.</summary>
    public static ImmutableArray<string> Profile { get; } = ["across", "up"];

    /// <summary>Those of a side view.</summary>
    public static ImmutableArray<string> SideOn { get; } = ["aft", "height"];

    /// <summary>Those of points in space.</summary>
    public static ImmutableArray<string> Space { get; } = ["aft (x)", "right (y)", "up (z)"];

    public static ImmutableArray<PlaneView> Of(MeasuredShape shape, JobText text)
    {
        string says = shape.Length > 0 ? $"Length along the curve: {ShopLength.Print(shape.Length, shape.Units)}." : "The curve appears once what is marked is mended.";
        string path = shape.Path;
        if (CurveKind.Of(text, path)?.Key == "plan")
        {
            PlaneView plan = Flat(text, JobPath.Under(path, "plan"), (shape.Spec as PlanSideSpec)?.Plan, shape.Plan, "From above", "right", "aft");
            var side = new PointList(text, JobPath.Under(path, "side"), SideOn) { Rising = true };
            return [plan, InPlane(side, "From the side", 0, 1, shape.Side, p => [p.X, p.Z]) with { Says = says }];
        }
        // A table of three columns is a curve in space too.
        if (CurveKind.Of(text, path)?.Key != "xyz" && shape.Spec is not SpaceSpec) return [Flat(text, path, shape.Spec, shape.Own, "In its own plane", "across", "up") with { Says = says }];
        var points = new PointList(text, JobPath.Under(path, "xyz"), Space);
        return
        [
            InPlane(points, "From the rear", 1, 2, shape.Own, p => [p.X, p.Y, p.Z]),
            InPlane(points, "From above", 1, 0, shape.Own, p => [p.X, p.Y, p.Z]) with { Says = says },
        ];
    }

    private static PlaneView Flat(JobText text, string path, CurveSpec? spec, ImmutableArray<ImmutableArray<Vec3>> pieces, string title, string right, string up)
    {
        var points = new PointList(text, JobPath.Under(path, "points"), Profile) { Mirror = text.Shown(JobPath.Under(path, "mirror")) == "true" };
        PlaneView view = CurveKind.Of(text, path)?.Key switch
        {
            "points" => InPlane(points, title, 0, 1, pieces, p => [p.Y, p.Z]) with { Mirror = points.Mirror },
            "chord" => Chord(points, path, spec as ChordSpec, pieces),
            _ => new PlaneView(title, right, up, Seen(pieces), [], points.Step) { Marks = Numbers(spec as RunSpec, pieces) },
        };
        return view with { Title = title, Right = right, Up = up };
    }

    private static PlaneView InPlane(PointList list, string title, int right, int up, ImmutableArray<ImmutableArray<Vec3>> pieces, Func<Vec3, ImmutableArray<double>> axes)
    {
        ImmutableArray<ImmutableArray<double>> places = list.Places(), curve = [.. pieces.SelectMany(p => p).Select(axes)];
        // Of a mirrored curve the right half holds the points.
        ImmutableArray<ImmutableArray<double>> half = list.Mirror ? RightHalf(curve) : curve;
        return new PlaneView(title, list.Axes[right], list.Axes[up], [.. pieces.Select(p => p.Select(axes).Select(c => new Vec2(c[right], c[up])).ToImmutableArray())],
            [
                .. places.Select((p, i) => (Place: p, Item: i)).Where(p => !p.Place.Any(double.IsNaN)).Select(p =>
                    new Handle(JobPath.Item(list.Path, p.Item), new Vec2(p.Place[right], p.Place[up]), $"Point {p.Item + 1}: {list.Shown(p.Place[right])} {list.Axes[right]}, {list.Shown(p.Place[up])} {list.Axes[up]}",
                        to => list.Moved(p.Item, right, up, to))
                    {
                        Remove = list.Count > 2 ? JobEdit.Remove(JobPath.Item(list.Path, p.Item)) : null,
                        Corner = list.Text.Shown(list.Number(p.Item, 2)) == "corner",
                    }),
            ], list.Step)
        { Add = half.Length > 1 ? near => list.Added(near, right, up, half) : null };
    }

    private static ImmutableArray<ImmutableArray<double>> RightHalf(ImmutableArray<ImmutableArray<double>> curve)
    {
        int middle = curve.Length / 2;
        if (middle == 0 || curve[middle][0] <= 0) return curve[middle..];
        // A straight that goes across the centreline is one piece.
        return [[0, curve[middle][1]], .. curve[middle..]];
    }

    // The crown is dragged for the rise, the right end for the chord.
    private static PlaneView Chord(PointList points, string path, ChordSpec? spec, ImmutableArray<ImmutableArray<Vec3>> pieces)
    {
        string chord = JobPath.Under(path, "chord"), rise = JobPath.Under(path, "rise");
        JobEdit To(string at, double mm) => JobEdit.Type(at, points.Shown(mm));
        ImmutableArray<Handle> handles = spec is null ? [] :
        [
            new Handle(rise, new Vec2(0, spec.Rise), $"Rise: {points.Shown(spec.Rise)}", to => To(rise, Math.Abs(to.Y) < points.Step ? points.Step : to.Y)),
            new Handle(chord, new Vec2(spec.Chord / 2, 0), $"Chord: {points.Shown(spec.Chord)}", to => To(chord, Math.Max(2 * to.X, points.Step))),
        ];
        return new PlaneView("", "", "", Seen(pieces), handles, points.Step);
    }

    private static ImmutableArray<ImmutableArray<Vec2>> Seen(ImmutableArray<ImmutableArray<Vec3>> pieces) =>
        [.. pieces.Select(p => p.Select(v => new Vec2(v.Y, v.Z)).ToImmutableArray())];

    // Steps that go straight on are one piece; then there are no numbers to give.
    private static ImmutableArray<(Vec2 At, string Text)> Numbers(RunSpec? run, ImmutableArray<ImmutableArray<Vec3>> pieces) => run?.Steps.Length != pieces.Length ? [] :
    [
        .. pieces.Select((p, i) => ((p.Length == 2 ? 0.5 * (Flat(p[0]) + Flat(p[1])) : Flat(p[p.Length / 2])), (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture))),
    ];

    private static Vec2 Flat(Vec3 p) => new(p.Y, p.Z);
}
