using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Plates;

/// <summary>A plate, or why there is none.</summary>
/// <param name="Plate">Null exactly if a notice is an error.</param>
/// <param name="Notices">What was found.</param>
internal sealed record PlateReading(Plate? Plate, ImmutableArray<Notice> Notices);

/// <summary>Makes plates of their curves.</summary>
/// <param name="job">Sheet, curves and units.</param>
/// <param name="spec">The panel.</param>
/// <param name="where">Its path in the job file.</param>
/// <param name="offset">From the measured face to the middle surface along the outside normal, mm.</param>
internal sealed class PlateBuilder(Job job, PanelSpec spec, string where, double offset)
{
    // A flat plate whose curves leave its plane by more than this, mm, is none.
    private const double MostOffPlane = 0.5;

    /// <summary>The plate.</summary>
    /// <param name="curves">The curves of the job by name; those of the plate are among them.</param>
    public PlateReading Build(IReadOnlyDictionary<string, SpaceCurve> curves) => spec.Flat is { } flat ? Flat(flat, curves) : Bent(spec.Bent!, curves);

    private PlateReading Flat(FlatSpec flat, IReadOnlyDictionary<string, SpaceCurve> curves)
    {
        (string Name, SpaceCurve Curve)[] own = [.. flat.Curves.Select(name => (name, curves[name]))];
        Vec3[] places = [.. own.SelectMany(c => Places(c.Curve))];
        Vec3 a = places[0], b = places.MaxBy(p => (p - a).Length);
        Vec3 along = (b - a).Unit, c = places.MaxBy(p => (p - a).Cross(along).Length);
        Vec3 normal = (b - a).Cross(c - a).Unit;
        if ((c - a).Cross(along).Length < 1e-6 * (b - a).Length) return Failed("plate-no-area", ".flat", $"The curves of “{spec.Name}” lie on one line, so that they bound no plate.", "Add a curve that goes round the other side.");
        Vec3 worst = places.MaxBy(p => Math.Abs((p - a).Dot(normal)));
        double off = Math.Abs((worst - a).Dot(normal));
        if (off > MostOffPlane)
        {
            string place = $"x {Size(worst.X)}, y {Size(worst.Y)}, z {Size(worst.Z)}";
            return Failed("plate-not-flat", ".flat", $"The curves of “{spec.Name}” do not lie in one plane: at {place} they leave it by {Size(off)}.",
                "Check where the curves stand (lean, turn, roll, origin); or make the plate a bent one, or a loft.");
        }
        Vec3 outside = Outside(normal, flat.Outside);
        if (outside == Vec3.Zero)
        {
            return Failed("plate-outside", ".outside", $"“{spec.Name}” stands edge on to the way that its outside is said to face, so that this does not tell which face it is.",
                "Name a way that it faces more squarely.");
        }
        bool level = Math.Abs(outside.Z) > Math.Sqrt(0.5);
        Vec3 up = level ? new Vec3(-1, 0, 0) : new Vec3(0, 0, 1);
        up = (up - up.Dot(outside) * outside).Unit;
        var shape = new FlatShape(new Frame(a, up.Cross(outside), up, outside));
        Box box = Box.Around(own.SelectMany(o => shape.Trace(o.Curve)));
        shape = new FlatShape(shape.Axes with { Origin = a + box.Centre.X * shape.Axes.X + box.Max.Y * shape.Axes.Y });
        return Finish(shape, [.. own.Select(o => (o.Name, shape.Trace(o.Curve)))], ".flat");
    }

    // The unit normal of the two that faces a way; without one up, or aft for a plate that stands. Zero if it faces neither way.
    private static Vec3 Outside(Vec3 normal, Way? way)
    {
        Vec3 wanted = way is { } asked ? Ways.Of(asked) : Math.Abs(normal.Z) > Math.Sqrt(0.5) ? Ways.Of(Way.Up) : Ways.Of(Way.Aft);
        double faces = normal.Dot(wanted);
        if (Math.Abs(faces) > 1e-3) return Math.Sign(faces) * normal;
        // A plate that stands fore and aft shows its right face unless the job says otherwise.
        return way is null ? Math.Sign(normal.Y) * normal : Vec3.Zero;
    }

    private PlateReading Bent(BentSpec bent, IReadOnlyDictionary<string, SpaceCurve> curves)
    {
        var frame = Frame.Of(Stands(job, bent));
        var builder = new SideBuilder(job.Sheet, bent.BendRadius ?? job.Sheet.Thickness, offset);
        var words = new SideNotices(job, spec, where + ".bent.side");
        SideLaying laid = builder.Lay(Profile(bent));
        if (laid.Side is not { } side) return new PlateReading(null, [.. laid.Faults.Select(words.Of)]);
        if (bent.Width is { } width)
        {
            double half = 0.5 * width;
            Vec2[] corners = [new(-half, -side.Length), new(half, -side.Length), new(half, 0), new(-half, 0)];
            return Finish(new BentShape(frame, side), [("front", [corners[3], corners[2]]), ("right", [corners[2], corners[1]]), ("rear", [corners[0], corners[1]]), ("left", [corners[3], corners[0]])], ".bent", words.Crossing(side, offset) is { } crossing ? [crossing] : []);
        }
        if (!side.RunsAft)
        {
            return Failed("side-turns-back", ".bent.side", $"The side of “{spec.Name}” stands upright or turns back somewhere, so that a plan seen from above does not tell where on it the outline runs.",
                "Give \"width\" instead of \"plan\": a plate as long as its side and equally wide all along.");
        }
        var notices = ImmutableArray.CreateBuilder<Notice>();
        var plan = new List<(string Name, SpaceCurve Curve)>();
        foreach (PlanCurve part in bent.Plan)
        {
            if (part.Own is null)
            {
                plan.Add((part.Name, curves[part.Name]));
                continue;
            }
            CurveReading reading = MeasuredCurve.Build(part.Own, where + ".bent.plan", job.Units);
            notices.AddRange(reading.Notices);
            if (reading.Curve is not { } flat) return new PlateReading(null, notices.ToImmutable());
            plan.Add((part.Name, new SpaceCurve([.. flat.Pieces.Select(p => p.Placed(Frame.LaidFlat).Placed(frame))])));
        }
        double[] aft = [.. plan.SelectMany(c => Places(c.Curve)).Select(p => (p - frame.Origin).Dot(frame.X))];
        var shape = new BentShape(frame, side.Reaching(aft.Min(), aft.Max()));
        return Finish(shape, [.. plan.Select(c => (c.Name, shape.Trace(c.Curve)))], ".bent.plan", notices);
    }

    /// <summary>Where the plan and side of a bent plate stand. The side view of a curve stands where the curve does, unless the plate says otherwise.</summary>
    public static Placement Stands(Job job, BentSpec bent) => bent is { Side: SideOfCurve of } && bent.At == Placement.None ? Curve(job, of).At : bent.At;

    private static PlanSideSpec Curve(Job job, SideOfCurve side) => (PlanSideSpec)job.Curves.First(c => c.Name == side.Curve).Spec;

    private SideProfile Profile(BentSpec bent)
    {
        if (bent.Side is not SideOfCurve of) return bent.Side;
        PlanSideSpec curve = Curve(job, of);
        return new SidePoints([.. curve.Side.Select((p, i) => new SidePoint(p, curve.SideFit == Fit.Straight && i > 0 && i < curve.Side.Length - 1, null))], curve.SideFit);
    }

    private PlateReading Finish(PlateShape shape, IReadOnlyList<(string Name, ImmutableArray<Vec2> Path)> curves, string part, IEnumerable<Notice>? notices = null)
    {
        var plate = new Plate(shape, PlateOutline.Of(curves));
        if (!Polygons.IsSimple(plate.Outline))
        {
            return Failed("plate-crosses-itself", part, $"The outline of “{spec.Name}” crosses itself, or bounds no metal.",
                "Check that its curves go once round the plate and meet at their ends; an end that is left open is closed by a straight line.");
        }
        return new PlateReading(plate, [.. notices ?? []]);
    }

    // Ends, and places close enough together to tell where a curve reaches.
    private static IEnumerable<Vec3> Places(SpaceCurve curve) =>
        curve.Pieces.SelectMany(p => Enumerable.Range(0, 65).Select(i => p.At(i / 64.0).Point));

    private PlateReading Failed(string code, string part, string message, string mend) => new(null, [new Notice(code, Severity.Error, where + part, message, mend)]);

    private string Size(double mm) => ShopLength.Print(mm, job.Units, 1);
}
