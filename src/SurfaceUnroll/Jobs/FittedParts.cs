using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Jobs;

/// <summary>A sharp bend on the blank.</summary>
/// <param name="Number">Order of bending on its panel, from 1.</param>
/// <param name="Lip">The edge whose lip it makes; null for a bend across a plate.</param>
/// <param name="Angle">Radians that the sheet is bent through; the mean, on a lip whose angle changes along it.</param>
/// <param name="LeastAngle">Smallest along the bend.</param>
/// <param name="GreatestAngle">Largest along the bend.</param>
/// <param name="InsideRadius">mm.</param>
/// <param name="Up">Bent towards the outside face, which lies up on the blank.</param>
/// <param name="Length">Bend allowance and deduction.</param>
/// <param name="Centre">Middle of the bend on the blank, where the tool strikes.</param>
/// <param name="Tangents">The two lines between which the metal bends.</param>
public sealed record BendLine(
    int Number,
    string? Lip,
    double Angle,
    double LeastAngle,
    double GreatestAngle,
    double InsideRadius,
    bool Up,
    BendLength Length,
    ImmutableArray<Vec2> Centre,
    ImmutableArray<ImmutableArray<Vec2>> Tangents);

/// <summary>Length of metal in a bend.</summary>
/// <param name="K">Place of the fibre that keeps its length, from the inside, as a share of the thickness.</param>
/// <param name="Allowance">Length of that fibre round the bend, mm.</param>
/// <param name="Setback">From the tangent line to where the outside is measured to, mm: to where the outside faces, run on, meet; of a bend past 90° across a plate to its outermost place
/// (DIN 6935).</param>
/// <param name="Deduction">Two setbacks less the allowance, mm.</param>
/// <param name="Source">Where K comes from, in words.</param>
public sealed record BendLength(double K, double Allowance, double Setback, double Deduction, string Source);

/// <summary>A hole or opening on the blank.</summary>
/// <param name="Name">Name; those of a pattern are numbered: "row 3".</param>
/// <param name="Size">Its shape in words and numbers for labels.</param>
/// <param name="FormedCentre">Where the axis through its centre meets the measured face of the formed sheet.</param>
/// <param name="Centre">The same place on the blank.</param>
/// <param name="Formed">Net edge on the measured face of the formed sheet.</param>
/// <param name="Flat">Net edge on the blank, clockwise, the first point not repeated; as many as <paramref name="Formed"/>.</param>
/// <param name="FormedArea">mm².</param>
/// <param name="FlatArea">mm².</param>
/// <param name="Cut">Cut line, with allowances.</param>
public sealed record BlankOpening(
    string Name,
    string Size,
    Vec3 FormedCentre,
    Vec2 Centre,
    ImmutableArray<Vec3> Formed,
    ImmutableArray<Vec2> Flat,
    double FormedArea,
    double FlatArea,
    ImmutableArray<Vec2> Cut);

/// <summary>A numbered tick that meets its twin on the other piece.</summary>
/// <param name="Joint">Label of the joint.</param>
/// <param name="Number">From 1 along the first edge of the joint.</param>
/// <param name="Edge">Edge that it stands on.</param>
/// <param name="At">Distance along the joint line, mm.</param>
/// <param name="Flat">On the net edge of the blank.</param>
/// <param name="Inward">Unit vector on the blank, square to the edge, into the piece.</param>
/// <param name="Formed">On the joint line, in job space.</param>
public sealed record MatchMark(string Joint, int Number, string Edge, double At, Vec2 Flat, Vec2 Inward, Vec3 Formed);

/// <summary>Metal left on, or taken off, along an edge.</summary>
/// <param name="Edge">Name of the edge.</param>
/// <param name="Joint">Label of the joint that asks for it.</param>
/// <param name="Kind">Why.</param>
/// <param name="Width">From net edge to cut line on the blank, mm; negative is taken off.</param>
/// <param name="Corners">Treatment of its ends.</param>
public sealed record EdgeAllowance(string Edge, string Joint, JointKind Kind, double Width, CornerStyle Corners)
{
    /// <summary>Widths along the edge, where it follows the band; then <see cref="Width"/> is the widest. Empty where it is as wide everywhere.</summary>
    public ImmutableArray<LeaveStep> Steps { get; init; } = [];
}

/// <summary>A relief notch in a lip.</summary>
/// <param name="Edge">Edge of the lip.</param>
/// <param name="At">Distance along the joint line, mm.</param>
/// <param name="Width">At the free edge of the lip, mm.</param>
/// <param name="Outline">What is cut out, on the blank.</param>
public sealed record LipNotch(string Edge, double At, double Width, ImmutableArray<Vec2> Outline);

/// <summary>How the area of the cut blank comes about, mm²: formed + bends + forming + allowances = blank.</summary>
/// <param name="Formed">Net formed area, openings left out.</param>
/// <param name="Openings">Formed area of the openings.</param>
/// <param name="Bends">What sharp bends gain over the middle surface; negative as a rule.</param>
/// <param name="Forming">What the blank is larger than the part because metal is shrunk; negative where it is stretched.</param>
/// <param name="Allowances">Left on along edges and openings, notches taken out.</param>
/// <param name="Blank">Inside the cut lines.</param>
public readonly record struct AreaAccount(double Formed, double Openings, double Bends, double Forming, double Allowances, double Blank);

/// <summary>How two edges fit.</summary>
/// <param name="Spec">As asked for.</param>
/// <param name="Label">A, B, C … or its name.</param>
/// <param name="Mates">One for each edge.</param>
/// <param name="Difference">Length of the second less that of the first, mm; 0 for a single edge.</param>
/// <param name="LargestGap">Largest distance between the two joint lines, mm.</param>
/// <param name="GapAt">Where along the first edge, mm; of an edge in several runs along that run.</param>
/// <param name="GapPlace">The same in job space.</param>
/// <param name="Dihedral">Smallest and largest angle between the two sheets, radians: π where one goes on straight into the other; null for a single edge.</param>
/// <param name="Fits">Lengths and places agree within 0.3 mm.</param>
public sealed record JointFit(
    JointSpec Spec,
    string Label,
    ImmutableArray<JointMate> Mates,
    double Difference,
    double LargestGap,
    double GapAt,
    Vec3 GapPlace,
    (double Least, double Greatest)? Dihedral,
    bool Fits);

/// <summary>One side of a joint.</summary>
/// <param name="Edge">Panel and edge.</param>
/// <param name="Length">Of the joint line, mm.</param>
/// <param name="Allowance">From net edge to cut line, mm.</param>
/// <param name="Lip">What a curved lip asks of its free edge; null where there is no lip.</param>
public sealed record JointMate(EdgeName Edge, double Length, double Allowance, LipStrain? Lip);

/// <summary>Strain of the free edge of a lip, blank to part, as fractions ≥ 0.</summary>
/// <param name="MaxStretch">Largest stretch.</param>
/// <param name="MaxShrink">Largest shrink.</param>
/// <param name="Notches">Number of relief notches.</param>
public readonly record struct LipStrain(double MaxStretch, double MaxShrink, int Notches);
