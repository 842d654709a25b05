using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Jobs;

/// <summary>How a piece is formed from its blank.</summary>
/// <param name="Rolls">What is rolled; null where nothing is.</param>
/// <param name="Bends">To what angle each sharp bend is bent, in the order of <see cref="PanelDevelopment.Bends"/>.</param>
/// <param name="Stretch">Where metal is stretched or shrunk, the worst place first; none where the sheet only bends.</param>
/// <param name="Grain">How the blank lies to the grain.</param>
/// <param name="Marks">Lettered places that a tape is held to.</param>
/// <param name="Tapes">Distances between them.</param>
/// <param name="Blank">What the piece takes.</param>
public sealed record FormingPlan(
    RollSchedule? Rolls,
    ImmutableArray<BendStep> Bends,
    ImmutableArray<StretchStep> Stretch,
    GrainAdvice Grain,
    ImmutableArray<TapeMark> Marks,
    ImmutableArray<TapeCheck> Tapes,
    BlankNeed Blank);

/// <summary>What is rolled, line by line.</summary>
/// <param name="Lines">The numbered lines in order.</param>
/// <param name="OverRoll">How much tighter than the radius with springback to roll, as a fraction: a little past, and opened by hand (common practice, no source).</param>
/// <param name="Source">Where the springback comes from, in words.</param>
public sealed record RollSchedule(ImmutableArray<RollLine> Lines, double OverRoll, string Source)
{
    /// <summary>Beyond this radius, mm, no shop roll tells the bend from a flat.</summary>
    public const double FlatRadius = 10_000;

    /// <summary>How far each line stands from the first one along either end on the blank, mm, in the order of <see cref="Lines"/>. From line to line rounding would add up.</summary>
    public ImmutableArray<(double Front, double Rear)> Places()
    {
        var places = ImmutableArray.CreateBuilder<(double Front, double Rear)>(Lines.Length);
        foreach (RollLine line in Lines) places.Add((line.StepFront + (places.Count > 0 ? places[^1].Front : 0), line.StepRear + (places.Count > 0 ? places[^1].Rear : 0)));
        return places.MoveToImmutable();
    }
}

/// <summary>One line of a roll schedule. Radii are those of the inside of the bend, mm; +∞ where the sheet stays flat.</summary>
/// <param name="Number">As on the pattern.</param>
/// <param name="Length">Of the line, mm.</param>
/// <param name="StepFront">From the line before, along the front end on the blank, mm; on a bent plate along its left side. 0 on the first.</param>
/// <param name="StepRear">The same at the rear end, or on the right side.</param>
/// <param name="RadiusFront">Finished, at the front end.</param>
/// <param name="RadiusRear">Finished, at the rear end.</param>
/// <param name="RollFront">To roll to, so that it springs open to the finished radius.</param>
/// <param name="RollRear">The same at the rear end.</param>
/// <param name="BendsOutward">The outside is the convex face.</param>
/// <param name="Limits">Why it cannot be rolled as it stands; empty where it can.</param>
public sealed record RollLine(
    int Number,
    double Length,
    double StepFront,
    double StepRear,
    double RadiusFront,
    double RadiusRear,
    double RollFront,
    double RollRear,
    bool BendsOutward,
    ImmutableArray<RollLimit> Limits)
{
    /// <summary>Stays flat.</summary>
    public bool IsFlat => double.IsPositiveInfinity(RadiusFront) && double.IsPositiveInfinity(RadiusRear);

    /// <summary>How much farther the rear end is fed than the front end since the line before, mm; negative where the front end leads. 0 on a cylinder.</summary>
    public double ConeOffset => StepRear - StepFront;
}

/// <summary>Why a line cannot be rolled.</summary>
public enum RollLimit
{
    /// <summary>Longer than the roll.</summary>
    TooLong,

    /// <summary>Tighter than the roll goes.</summary>
    TooTightForRoll,

    /// <summary>Tighter than the material bears.</summary>
    TooTightForMaterial,
}

/// <summary>A sharp bend with its springback.</summary>
/// <param name="Number">Of the bend.</param>
/// <param name="Angle">Finished, radians that the sheet is bent through.</param>
/// <param name="BendTo">To bend to, so that it springs back to the finished angle, radians.</param>
/// <param name="MinimumRadius">Smallest inside radius of the material, mm.</param>
/// <param name="IsTooSharp">Its inside radius is smaller than that.</param>
/// <param name="IsTooLong">It is longer than the brake.</param>
/// <param name="Source">Where the springback comes from, in words.</param>
public sealed record BendStep(int Number, double Angle, double BendTo, double MinimumRadius, bool IsTooSharp, bool IsTooLong, string Source);

/// <summary>A place where metal is stretched or shrunk by hand.</summary>
/// <param name="Number">As on the strain map.</param>
/// <param name="Flat">On the blank, mm.</param>
/// <param name="Formed">In job space, mm.</param>
/// <param name="Strain">Engineering strain, blank to part, as a fraction: positive to stretch, negative to shrink.</param>
/// <param name="Where">How to find it with a tape, in the job's units.</param>
public sealed record StretchStep(int Number, Vec2 Flat, Vec3 Formed, double Strain, string Where);

/// <summary>How a blank lies to the grain, which is the direction in which the sheet was rolled at the mill.</summary>
/// <param name="Along">Unit vector of the grain on the blank; square to most of the bending (common practice, no source).</param>
/// <param name="MinimumRadius">Smallest inside radius of the material across the grain, mm.</param>
/// <param name="Matters">There is anything that bends tightly enough for the grain to count.</param>
public sealed record GrainAdvice(Vec2 Along, double MinimumRadius, bool Matters);

/// <summary>A lettered place that a tape is held to.</summary>
/// <param name="Letter">a, b, c …</param>
/// <param name="Flat">On the net edge of the blank, mm.</param>
/// <param name="Formed">On the middle surface in job space, mm.</param>
public sealed record TapeMark(string Letter, Vec2 Flat, Vec3 Formed);

/// <summary>A distance that must come out, on the blank and on the formed part.</summary>
/// <param name="From">Letter.</param>
/// <param name="To">Letter.</param>
/// <param name="OnBlank">Straight on the blank, mm.</param>
/// <param name="OnPart">On the formed part at the middle of its thickness, mm.</param>
/// <param name="How">How the tape runs on the part.</param>
public sealed record TapeCheck(string From, string To, double OnBlank, double OnPart, TapeRun How);

/// <summary>How a tape runs on the formed part.</summary>
public enum TapeRun
{
    /// <summary>Pulled taut from place to place, straight through the air where the part curves away.</summary>
    Taut,

    /// <summary>Laid on the sheet, the shortest way along it.</summary>
    OnSheet,
}

/// <summary>What a piece takes.</summary>
/// <param name="Width">Of the smallest upright box round the cut blank, mm.</param>
/// <param name="Height">The same, upright.</param>
/// <param name="Area">Inside the cut lines, mm².</param>
/// <param name="Mass">kg.</param>
/// <param name="IsTooThickToShear">Thicker than the shop's shear cuts.</param>
public sealed record BlankNeed(double Width, double Height, double Area, double Mass, bool IsTooThickToShear);

/// <summary>In what order a joint is tacked and stitched (common practice, no source).</summary>
/// <param name="Joint">Its label.</param>
/// <param name="Pitch">Greatest distance between tacks, mm.</param>
/// <param name="Tacks">In the order in which they are set.</param>
/// <param name="Stitches">The lengths between neighbouring tacks, in the order in which they are welded.</param>
public sealed record TackPlan(string Joint, double Pitch, ImmutableArray<Tack> Tacks, ImmutableArray<Stitch> Stitches);

/// <summary>A tack.</summary>
/// <param name="Number">In the order of setting, from 1.</param>
/// <param name="Place">In the order along the joint, from 0.</param>
/// <param name="At">Distance along the joint line of its first edge, mm.</param>
/// <param name="Formed">In job space, mm.</param>
/// <param name="Round">0 for ends and middle, then one more for each halving; what is set in one round cools before the next.</param>
public sealed record Tack(int Number, int Place, double At, Vec3 Formed, int Round);

/// <summary>A length of weld, laid from its far end back to its near one, against the way in which the whole goes on.</summary>
/// <param name="Number">In the order of welding, from 1.</param>
/// <param name="From">Where it is begun, mm along the joint line.</param>
/// <param name="To">Where it ends, mm.</param>
public sealed record Stitch(int Number, double From, double To);
