using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Jobs;

/// <summary>A hole or opening: a flat shape and where it goes through the sheet.</summary>
/// <param name="Name">For labels and as the name of its edge; unique on its panel.</param>
/// <param name="Shape">In its own plane.</param>
/// <param name="Centre">Centre of the shape, or of the pattern, in the plane: (across, up), mm.</param>
/// <param name="Turn">Turn of the shape, or of the whole pattern, in the plane, radians to the left.</param>
/// <param name="Pattern">How the shape is repeated; null: once.</param>
/// <param name="At">The plane; null: the plan of a bent plate, or the plane of a flat one's first curve.</param>
/// <param name="Along">Direction of projection in job space; null: square to the plane.</param>
public sealed record OpeningSpec(string Name, OpeningShape Shape, Vec2 Centre, double Turn, OpeningPattern? Pattern, Placement? At, Vec3? Along)
{
    /// <summary>Panels that it goes through, for an opening of the whole job; empty for one of a single panel.</summary>
    public ImmutableArray<string> Through { get; init; } = [];
}

/// <summary>Shape of an opening.</summary>
public abstract record OpeningShape;

/// <summary>A round hole.</summary>
/// <param name="Diameter">mm.</param>
public sealed record RoundShape(double Diameter) : OpeningShape;

/// <summary>A rectangle.</summary>
/// <param name="Width">Across, mm.</param>
/// <param name="Height">Up, mm.</param>
/// <param name="CornerRadius">mm, 0 for sharp corners.</param>
public sealed record RectangleShape(double Width, double Height, double CornerRadius) : OpeningShape;

/// <summary>A slot with round ends, lying across.</summary>
/// <param name="Length">Over both round ends, mm.</param>
/// <param name="Width">mm.</param>
public sealed record SlotShape(double Length, double Width) : OpeningShape;

/// <summary>A closed curve of the job, where it stands; a straight line closes an open one.</summary>
/// <param name="Curve">Its name.</param>
public sealed record CurveShape(string Curve) : OpeningShape;

/// <summary>How a shape is repeated.</summary>
public abstract record OpeningPattern;

/// <summary>Rows and columns about the centre.</summary>
/// <param name="Across">Columns.</param>
/// <param name="Up">Rows.</param>
/// <param name="PitchAcross">From centre to centre, mm.</param>
/// <param name="PitchUp">From centre to centre, mm.</param>
public sealed record GridPattern(int Across, int Up, double PitchAcross, double PitchUp) : OpeningPattern;

/// <summary>A ring about the centre, the first straight up.</summary>
/// <param name="Count">At least two.</param>
/// <param name="Diameter">Of the circle through the centres, mm.</param>
public sealed record RingPattern(int Count, double Diameter) : OpeningPattern;

/// <summary>Metal that is cut away along a surface.</summary>
/// <param name="Name">Name of the new edge.</param>
/// <param name="Plane">The (across, up) plane of this placement; null if a panel trims.</param>
/// <param name="By">Name of the panel whose surface, run on straight past its edges, trims; null if a plane does.</param>
/// <param name="Clearance">Gap left between the surface and the new edge, mm; negative leaves the sheet longer.</param>
/// <param name="Keep">What lies this way from the surface stays.</param>
public sealed record TrimSpec(string Name, Placement? Plane, string? By, double Clearance, Way Keep);
