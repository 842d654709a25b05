using System.Collections.Immutable;

namespace SurfaceUnroll.Jobs;

/// <summary>Two edges and how they meet, or one edge and what is left on it.</summary>
/// <param name="Name">For labels; null: A, B, C … in the order of the job.</param>
/// <param name="Edges">One or two.</param>
/// <param name="Kind">How they meet.</param>
/// <param name="Width">Lap: overlap. Lip: outside width, from where both faces, run on, meet. Trim: extra. Butt: gap, shared by both. mm.</param>
/// <param name="On">Which of the two edges carries lap, lip or trim: 0 or 1.</param>
/// <param name="Lip">How a lip is bent; null for other kinds.</param>
/// <param name="Corners">How the cut line goes round the ends of the allowance; null: square for a lip, mitre for others.</param>
/// <param name="MarkPitch">Distance of match marks along the edge, mm, as near as equal parts allow; null: about 50 mm. 0: none.</param>
public sealed record JointSpec(
    string? Name, ImmutableArray<EdgeName> Edges, JointKind Kind, double Width, int On, LipSpec? Lip, CornerStyle? Corners, double? MarkPitch)
{
    /// <summary>The extra of a trim follows the band of the edge; <see cref="Width"/> is its widest place once that is known.</summary>
    public bool Auto { get; init; }

    /// <summary>What the joint of an index, from 0, is called that has no name: A … Z, AA, AB …</summary>
    public static string Letters(int index) => (index >= 26 ? Letters(index / 26 - 1) : "") + (char)('A' + index % 26);
}

/// <summary>An edge of a panel, written as PANEL/EDGE.</summary>
/// <param name="Panel">Name of the panel, or of a piece of it.</param>
/// <param name="Edge">Name of the edge.</param>
public readonly record struct EdgeName(string Panel, string Edge)
{
    /// <summary>As written in the job.</summary>
    public override string ToString() => $"{Panel}/{Edge}";
}

/// <summary>How two edges meet.</summary>
public enum JointKind
{
    /// <summary>Edge to edge.</summary>
    Butt,

    /// <summary>One runs on over the other.</summary>
    Lap,

    /// <summary>One has a bent flange that lies against the other.</summary>
    Lip,

    /// <summary>Extra is left on one, to be trimmed to fit.</summary>
    Trim,
}

/// <summary>How a lip is bent.</summary>
/// <param name="Angle">Radians that it is bent through; null: until it lies against the other piece (90° if there is none).</param>
/// <param name="Radius">Inside radius, mm; null: the thickness of the sheet.</param>
/// <param name="Up">Bent towards the outside face; null: to the side on which the other piece lies.</param>
/// <param name="Relief">Notches in a curved lip.</param>
/// <param name="ReliefPitch">Distance of notches, mm, where given by the job.</param>
public sealed record LipSpec(double? Angle, double? Radius, bool? Up, LipRelief Relief, double? ReliefPitch);

/// <summary>When a curved lip is notched.</summary>
public enum LipRelief
{
    /// <summary>Where its edge would stretch or shrink too much.</summary>
    Auto,

    /// <summary>Never.</summary>
    None,

    /// <summary>Everywhere, at a given pitch.</summary>
    Pitch,
}

/// <summary>How the cut line goes round a corner between two allowances.</summary>
public enum CornerStyle
{
    /// <summary>Both cut lines run on until they meet.</summary>
    Mitre,

    /// <summary>Each allowance ends square to its own edge: the corner is cut out.</summary>
    Square,

    /// <summary>An arc about the corner.</summary>
    Round,
}
