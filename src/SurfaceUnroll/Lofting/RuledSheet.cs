using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>One ruling of a sheet as its strip sees it.</summary>
/// <param name="Front">Front end, mm.</param>
/// <param name="Rear">Rear end, mm.</param>
/// <param name="FrontTangent">Unit tangent of the front edge.</param>
/// <param name="RearTangent">Unit tangent of the rear edge.</param>
/// <param name="Normal">Unit normal on the outside, (front → rear) × (left → right); the mean of both ends' where they differ.</param>
/// <param name="Twist">Angle between the two ends' normals, radians in [0, π].</param>
public readonly record struct Station(Vec3 Front, Vec3 Rear, Vec3 FrontTangent, Vec3 RearTangent, Vec3 Normal, double Twist)
{
    /// <summary>Front end to rear end.</summary>
    public Vec3 Ruling => Rear - Front;
}

/// <summary>The sheet between two neighbouring element lines, with the ruling between them.</summary>
/// <param name="Left">Left element line.</param>
/// <param name="Middle">A ruling in between.</param>
/// <param name="Right">Right element line.</param>
/// <param name="FrontStill">The front edge does not advance: a fan with its tip in front.</param>
/// <param name="RearStill">The rear edge does not advance: a fan with its tip at the rear.</param>
public sealed record Strip(Station Left, Station Middle, Station Right, bool FrontStill, bool RearStill)
{
    /// <summary>Largest twist of the three rulings, radians.</summary>
    public double MaxTwist => Math.Max(Left.Twist, Math.Max(Middle.Twist, Right.Twist));
}

/// <summary>A ruled sheet as strips from left to right; neighbouring strips share an element line.</summary>
/// <param name="Strips">At least one.</param>
/// <param name="IsMirrored">The right half is the mirror image of the left half.</param>
public sealed record RuledSheet(ImmutableArray<Strip> Strips, bool IsMirrored)
{
    /// <summary>A run of lines whose ends stand within this of each other, mm, is a fan with one tip for all that can be cut: the radius at which the sheet bends there says nothing.</summary>
    public const double Tip = 0.05;
}
