using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Jobs;

/// <summary>One of the six directions of the job.</summary>
public enum Way
{
    /// <summary>−x.</summary>
    Forward,

    /// <summary>+x.</summary>
    Aft,

    /// <summary>−y.</summary>
    Left,

    /// <summary>+y.</summary>
    Right,

    /// <summary>+z.</summary>
    Up,

    /// <summary>−z.</summary>
    Down,
}

/// <summary>A flat plate.</summary>
/// <param name="Curves">Names of the curves round it, each once, in any order and direction; a straight line closes what they leave open.</param>
/// <param name="Outside">The way its outside faces; null: up if it lies nearer level than upright, else aft.</param>
public sealed record FlatSpec(ImmutableArray<string> Curves, Way? Outside);

/// <summary>A plate that follows a side profile by sharp bends and rolled areas; straight from left to right.</summary>
/// <param name="Plan">Outline as seen from above: curves of the job, or one measured here. A straight line closes what they leave open.</param>
/// <param name="Side">Profile from front to rear.</param>
/// <param name="BendRadius">Inside radius of bends that have none of their own, mm; null: the thickness of the sheet.</param>
/// <param name="At">Placement of plan and side; curves of the job have their own and are taken as they stand in the plate's axes.</param>
public sealed record BentSpec(ImmutableArray<PlanCurve> Plan, SideProfile Side, double? BendRadius, Placement At)
{
    /// <summary>Width of a plate that has no plan: it runs the whole length of its side, centred, mm; null where there is a plan.</summary>
    public double? Width { get; init; }

    /// <summary>How well side and width were read.</summary>
    public ReadingErrors Errors { get; init; } = ReadingErrors.None;
}

/// <summary>A part of a plan outline.</summary>
/// <param name="Name">Name of the curve, and of the edge along it; "outline" for one measured in place.</param>
/// <param name="Own">Measured in place, lying flat: across = right, up = aft; null: a curve of the job.</param>
public sealed record PlanCurve(string Name, CurveSpec? Own);

/// <summary>Side profile of a bent plate on its measured face: height over aft distance, front to rear.</summary>
public abstract record SideProfile;

/// <summary>Points with bends between them.</summary>
/// <param name="Points">At least two, aft strictly increasing.</param>
/// <param name="Fit">Smooth: rolled, but for the bends. Straight: flat, a bend at every point between.</param>
public sealed record SidePoints(ImmutableArray<SidePoint> Points, Fit Fit) : SideProfile;

/// <summary>One point of a side profile; at a bend the point where the two sides, run on, would meet.</summary>
/// <param name="Place">(aft, height), mm.</param>
/// <param name="IsBend">A sharp bend stands here.</param>
/// <param name="Radius">Its inside radius, mm; null: the plate's.</param>
public readonly record struct SidePoint(Vec2 Place, bool IsBend, double? Radius);

/// <summary>Straights, rolled arcs and sharp bends laid end to end; it starts level, heading aft.</summary>
/// <param name="Steps">At least one.</param>
/// <param name="Heading">Direction of the start, radians down from level.</param>
/// <param name="Start">(aft, height) of the front end, mm.</param>
public sealed record SideRun(ImmutableArray<SideStep> Steps, double Heading, Vec2 Start) : SideProfile;

/// <summary>The side view of a curve of the job that has one.</summary>
/// <param name="Curve">Its name.</param>
public sealed record SideOfCurve(string Curve) : SideProfile;

/// <summary>One step of a side profile.</summary>
public abstract record SideStep;

/// <summary>A flat.</summary>
/// <param name="Length">mm, &gt; 0.</param>
public sealed record SideLine(double Length) : SideStep;

/// <summary>A rolled area.</summary>
/// <param name="Radius">On the measured face, mm, &gt; 0.</param>
/// <param name="Turn">Radians, nonzero, positive down, as over an arch.</param>
public sealed record SideArc(double Radius, double Turn) : SideStep;

/// <summary>A sharp bend.</summary>
/// <param name="Turn">Radians, nonzero, within ±π, positive down.</param>
/// <param name="Radius">Inside radius, mm; null: the plate's.</param>
public sealed record SideBend(double Turn, double? Radius) : SideStep;

/// <summary>How the length of metal in a bend is reckoned.</summary>
public enum BendRule
{
    /// <summary>K-factor by material and by inside radius over thickness.</summary>
    KFactor,

    /// <summary>DIN 6935.</summary>
    Din6935,

    /// <summary>A fixed length for each degree: 0.01743 R + 0.0078 t.</summary>
    PerDegree,
}

/// <summary>How the shop bends its sheet.</summary>
/// <param name="Rule">Where K comes from, if the two below are not given.</param>
/// <param name="K">Own K-factor, 0 to 0.5; null: by the rule.</param>
/// <param name="Own">The shop's own measured bend, which comes before all else.</param>
public sealed record BendSetup(BendRule Rule, double? K, OwnBend? Own)
{
    /// <summary>K-factor from the table.</summary>
    public static BendSetup Default { get; } = new(BendRule.KFactor, null, null);
}

/// <summary>A bend that was made on a scrap and measured.</summary>
/// <param name="Radius">Inside radius, mm.</param>
/// <param name="Angle">Angle that the sheet was bent through, radians.</param>
/// <param name="Deduction">Both outside lengths, to where they meet, together less the length of the scrap before, mm.</param>
public sealed record OwnBend(double Radius, double Angle, double Deduction);
