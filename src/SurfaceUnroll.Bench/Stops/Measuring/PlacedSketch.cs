using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>A stroke with a word beside it.</summary>
/// <param name="Kind">Class of its look.</param>
/// <param name="Path">The stroke.</param>
/// <param name="X">Place of the word.</param>
/// <param name="Y">Place of the word.</param>
/// <param name="Text">The word.</param>
public sealed record SketchMark(string Kind, string Path, string X, string Y, string Text);

/// <summary>A curve in space as lines on paper, seen from the rear, the right and above.</summary>
/// <param name="ViewBox">What of the paper is seen.</param>
/// <param name="Letter">Size of the letters.</param>
/// <param name="Floor">The level at height 0.</param>
/// <param name="Others">The other curves of the job.</param>
/// <param name="Upright">The curve before it was placed.</param>
/// <param name="Carried">From there to where it stands: aft, to the right, up.</param>
/// <param name="Curve">The curve where it stands.</param>
/// <param name="Marks">Directions and angles.</param>
/// <param name="Says">The same in words.</param>
public sealed record PlacedSketch(string ViewBox, string Letter, string Floor, string Others, string Upright, string Carried, string Curve, ImmutableArray<SketchMark> Marks, string Says)
{
    /// <summary>Nothing to show yet.</summary>
    public static PlacedSketch Empty() => new("0 0 3 2", "0", "", "", "", "", "", [], "The sketch appears once the curve can be drawn.");

    /// <summary>The sketch of one curve among the others.</summary>
    public static PlacedSketch Of(MeasuredShape shape, ImmutableArray<MeasuredShape> all)
    {
        ArgumentNullException.ThrowIfNull(shape);
        if (shape.Spec is not { } spec) return Empty();
        Placement at = spec.At;
        var frame = Frame.Of(at);
        ImmutableArray<ImmutableArray<Vec3>> placed = Placed(shape, frame), others = [.. all.Where(s => s.Spec is not null && s.Name != shape.Name).SelectMany(s => Placed(s, Frame.Of(s.Spec!.At)))];
        List<Vec3> seen = [.. placed.SelectMany(p => p), .. others.SelectMany(p => p), Vec3.Zero, at.Origin, .. shape.Own.SelectMany(p => p)];
        double size = Math.Max(1, seen.Max(p => (p - at.Origin).Length));
        double arm = 0.55 * Math.Max(1, shape.Own.SelectMany(p => p).Max(p => p.Length));
        double minX = seen.Min(p => p.X), maxX = seen.Max(p => p.X), minY = seen.Min(p => p.Y), maxY = seen.Max(p => p.Y), pad = 0.08 * size;
        ImmutableArray<Vec3> floor = [new(minX - pad, minY - pad, 0), new(maxX + pad, minY - pad, 0), new(maxX + pad, maxY + pad, 0), new(minX - pad, maxY + pad, 0), new(minX - pad, minY - pad, 0)];
        Box box = Box.Around([.. seen.Concat(floor).Select(OnPaper)]).Grow(0.12 * size);
        double width = Math.Max(box.Width, 1.5 * box.Height), letter = width / 24;
        var corner = box.Centre - new Vec2(width / 2, width / 3);
        ImmutableArray<Vec3> way = [Vec3.Zero, new(at.Origin.X, 0, 0), new(at.Origin.X, at.Origin.Y, 0), at.Origin];
        return new PlacedSketch(
            string.Create(CultureInfo.InvariantCulture, $"{corner.X:0.##} {corner.Y:0.##} {width:0.##} {width / 1.5:0.##}"), letter.ToString("0.##", CultureInfo.InvariantCulture),
            Path([floor]), Path(others), Path(shape.Own), Path([way]), Path(placed),
            [.. Directions(floor, pad), .. Angles(at, arm)], Words(at, shape.Units));
    }

    private static ImmutableArray<ImmutableArray<Vec3>> Placed(MeasuredShape shape, Frame frame) => [.. shape.Own.Select(p => p.Select(frame.Point).ToImmutableArray())];

    // From the rear, the right and above, parallel: aft comes down to the left, right goes down to the right, up is up.
    private static Vec2 OnPaper(Vec3 p) => new(0.82 * p.Y - 0.57 * p.X, 0.3 * p.X + 0.22 * p.Y - 0.93 * p.Z);

    private static IEnumerable<SketchMark> Directions(ImmutableArray<Vec3> floor, double pad)
    {
        yield return Word("name", [], floor[1] + new Vec3(1.2 * pad, 0.5 * (floor[2].Y - floor[1].Y), 0), "aft");
        yield return Word("name", [], floor[3] + new Vec3(0.5 * (floor[2].X - floor[3].X), 1.2 * pad, 0), "right");
    }

    // Each angle from where the direction was before that turn to where it is after it, in the order in which the placement turns.
    private static IEnumerable<SketchMark> Angles(Placement at, double arm)
    {
        Vec3 up = new(0, 0, arm), right = new(0, arm, 0);
        if (at.Lean != 0) yield return Arc("lean", at, t => at with { Roll = 0, Lean = t * at.Lean }, up, at.Lean);
        if (at.Turn != 0) yield return Arc("turn", at, t => new Placement(at.Origin, 0, 0, t * at.Turn), 1.15 * right, at.Turn);
        if (at.Roll != 0) yield return Arc("roll", at, t => at with { Roll = t * at.Roll }, 0.9 * right, at.Roll);
    }

    private static SketchMark Arc(string name, Placement at, Func<double, Placement> part, Vec3 arm, double angle)
    {
        Vec3[] arc = [.. Enumerable.Range(0, 25).Select(i => at.Origin + Frame.Of(part(i / 24.0)).Direction(arm))];
        Vec3 middle = arc[12] + 0.22 * (arc[12] - at.Origin);
        return Word(name, [at.Origin, .. arc, at.Origin], middle, string.Create(CultureInfo.InvariantCulture, $"{name} {angle * 180 / Math.PI:0.##}°"));
    }

    private static SketchMark Word(string kind, ImmutableArray<Vec3> stroke, Vec3 at, string text)
    {
        Vec2 place = OnPaper(at);
        return new SketchMark(kind, Path([stroke]), place.X.ToString("0.##", CultureInfo.InvariantCulture), place.Y.ToString("0.##", CultureInfo.InvariantCulture), text);
    }

    private static string Words(Placement at, LengthUnit units)
    {
        string Angle(string name, double radians) => string.Create(CultureInfo.InvariantCulture, $"{name} {radians * 180 / Math.PI:0.##}°");
        string Length(double mm, string plus, string minus) => $"{ShopLength.Print(Math.Abs(mm), units)} {(mm < 0 ? minus : plus)}";
        string[] parts =
        [
            .. at.Origin.X != 0 ? new[] { Length(at.Origin.X, "aft", "forward") } : [], .. at.Origin.Y != 0 ? new[] { Length(at.Origin.Y, "to the right", "to the left") } : [],
            .. at.Origin.Z != 0 ? new[] { Length(at.Origin.Z, "up", "down") } : [], .. at.Lean != 0 ? new[] { Angle("lean", at.Lean) } : [],
            .. at.Turn != 0 ? new[] { Angle("turn", at.Turn) } : [], .. at.Roll != 0 ? new[] { Angle("roll", at.Roll) } : [],
        ];
        return parts.Length == 0 ? "Upright at the place that all is measured from." : $"{string.Join(", ", parts)}. Dashed: upright, before it was placed.";
    }

    private static string Path(ImmutableArray<ImmutableArray<Vec3>> strokes)
    {
        var path = new StringBuilder();
        foreach (ImmutableArray<Vec3> stroke in strokes)
        {
            for (int i = 0; i < stroke.Length; i++)
            {
                Vec2 p = OnPaper(stroke[i]);
                path.Append(i == 0 ? 'M' : 'L').Append(CultureInfo.InvariantCulture, $"{p.X:0.##} {p.Y:0.##}");
            }
        }
        return path.ToString();
    }
}
