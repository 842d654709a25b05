using System.Collections.Immutable;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>One curve of the job as it stands in the text, with the exact curve sampled for the pictures.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Written">What stands under it.</param>
/// <param name="Units">Of the job.</param>
public sealed record MeasuredShape(string Name, string Written, LengthUnit Units)
{
    // Enough that the corners of the strokes cannot be seen at the size of the pictures.
    private const int Steps = 48;

    /// <summary>Path in the job.</summary>
    public string Path => JobPath.Under("curves", Name);

    /// <summary>What was measured; null while there is a fault.</summary>
    public CurveSpec? Spec { get; init; }

    /// <summary>Places along each piece before it is placed, mm: (0, across, up) of a flat curve. Empty while there is a fault.</summary>
    public ImmutableArray<ImmutableArray<Vec3>> Own { get; init; } = [];

    /// <summary>The plan view as (0, across, up), where there is one.</summary>
    public ImmutableArray<ImmutableArray<Vec3>> Plan { get; init; } = [];

    /// <summary>The side view as (aft, 0, height), where there is one, as far as the plan reaches.</summary>
    public ImmutableArray<ImmutableArray<Vec3>> Side { get; init; } = [];

    /// <summary>What its file holds is not read yet.</summary>
    public bool Waits { get; init; }

    /// <summary>Length along the curve, mm.</summary>
    public double Length { get; init; }

    /// <summary>All curves of a job, those that did not change taken from before.</summary>
    /// <param name="state">The job. What a curve's file holds is known once the job is developed.</param>
    /// <param name="before">As they were.</param>
    public static ImmutableArray<MeasuredShape> All(DeskState state, ImmutableArray<MeasuredShape> before)
    {
        ArgumentNullException.ThrowIfNull(state);
        JobText text = state.Text;
        ImmutableArray<NamedCurve> read = state.IsSound ? state.Development!.Job.Curves : [];
        LengthUnit units = text.Units();
        if (text.Find("curves") is not { Kind: JobValueKind.Block } curves) return [];
        return
        [
            .. curves.Keys.Select(name =>
            {
                string written = text.Written(curves.Under(name)) ?? "";
                CurveSpec? filed = read.FirstOrDefault(c => c.Name == name)?.Spec;
                return before.FirstOrDefault(s => s.Name == name && s.Units == units && s.Written == written && !(s.Waits && filed is not null))
                    ?? Of(name, written, units, filed, before.FirstOrDefault(s => s.Name == name)?.Spec);
            }),
        ];
    }

    private static MeasuredShape Of(string name, string written, LengthUnit units, CurveSpec? filed, CurveSpec? last)
    {
        CurveSpec? known = CurveFragment.Read(written, units) ?? filed;
        // Until the file is read again the curve is drawn as it was.
        bool waits = known is null && JobText.Of(written).Find("") is { Keys: var keys } && (keys.Contains("file") || keys.Contains("section"));
        var shape = new MeasuredShape(name, written, units) { Waits = waits };
        if ((waits ? last : known) is not { } spec || Curve(spec) is not { } curve) return shape;
        shape = shape with { Spec = spec, Own = Sampled(curve), Length = curve.Length };
        if (spec is not PlanSideSpec both || Curve(both.Plan) is not { } plan) return shape;
        ImmutableArray<ImmutableArray<Vec3>> seen = Sampled(plan);
        // The side view by itself: what stands over a straight line that runs aft.
        double from = Math.Min(both.Side[0].X, seen.Min(s => s.Min(p => p.Z))), to = Math.Max(both.Side[^1].X, seen.Max(s => s.Max(p => p.Z)));
        var aft = new PointsSpec([new ProfilePoint(new Vec2(0, from), false), new ProfilePoint(new Vec2(0, to), false)], false, Fit.Straight, Placement.None);
        return shape with { Plan = seen, Side = Curve(both with { Plan = aft }) is { } side ? Sampled(side) : [] };
    }

    // In its own axes. A section is cut where its plane stands and taken back from there.
    private static SpaceCurve? Curve(CurveSpec spec) => spec is SectionSpec
        ? MeasuredCurve.Build(spec, "curve").Curve is { } cut ? new SpaceCurve([.. cut.Pieces.Select(p => p.Placed(Frame.Of(spec.At).Inverse))]) : null
        : MeasuredCurve.Build(spec with { At = Placement.None }, "curve").Curve;

    private static ImmutableArray<ImmutableArray<Vec3>> Sampled(SpaceCurve curve) =>
    [
        .. curve.Pieces.Select(piece => piece.IsStraight
            ? [piece.At(0).Point, piece.At(1).Point]
            : Enumerable.Range(0, Steps + 1).Select(i => piece.At((double)i / Steps).Point).ToImmutableArray()),
    ];
}
