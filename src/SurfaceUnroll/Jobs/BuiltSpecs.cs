using System.Collections.Immutable;

namespace SurfaceUnroll.Jobs;

/// <summary>What was measured on one finished blank or part.</summary>
/// <param name="Panel">Name of the panel, or of a piece of it.</param>
/// <param name="Readings">In the order of the file.</param>
/// <param name="Error">Standard error of the tape, mm, &gt; 0.</param>
/// <param name="Where">Path in the job file.</param>
public sealed record BuiltSpec(string Panel, ImmutableArray<BuiltReading> Readings, double Error, string Where = "built");

/// <summary>One length that was taken off a finished piece.</summary>
/// <param name="Where">Path in the job file.</param>
/// <param name="Kind">What was measured.</param>
/// <param name="From">Letter of the first place, as on the pattern; of a length along an edge the name of the edge.</param>
/// <param name="To">Letter of the other; empty for an edge.</param>
/// <param name="Length">As measured, mm.</param>
public sealed record BuiltReading(string Where, BuiltKind Kind, string From, string To, double Length);

/// <summary>How a length was taken off a finished piece.</summary>
public enum BuiltKind
{
    /// <summary>Straight on the flat blank, from place to place.</summary>
    Blank,

    /// <summary>Taut on the formed part, straight through the air.</summary>
    Part,

    /// <summary>Laid on the formed sheet, the shortest way.</summary>
    Sheet,

    /// <summary>Along an edge of the flat blank.</summary>
    Edge,
}

/// <summary>How a finished piece compares with what was wanted.</summary>
/// <param name="Panel">Its name.</param>
/// <param name="Differences">Of every reading that could be compared.</param>
/// <param name="Corrections">Edges that explain what is off; none where nothing is, or where the readings do not tell.</param>
/// <param name="Finding">What they tell.</param>
public sealed record BuiltCheck(string Panel, ImmutableArray<BuiltDifference> Differences, ImmutableArray<EdgeCorrection> Corrections, BuiltFinding Finding)
{
    /// <summary>Each of two corrections explains all by itself, and the readings do not tell which it is.</summary>
    public bool Either { get; init; }
}

/// <summary>What the readings of a finished piece tell.</summary>
public enum BuiltFinding
{
    /// <summary>All differences are within their errors.</summary>
    Within,

    /// <summary>Some are not, and edges that are off explain it.</summary>
    Edges,

    /// <summary>Some are not, only on the formed part, and no edge explains it: it is the forming.</summary>
    Forming,

    /// <summary>Some are not, and the readings do not tell which edge it is.</summary>
    Untold,
}

/// <summary>One reading of a finished piece beside what was wanted. Lengths in mm.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Wanted">The length that should be there.</param>
/// <param name="Tape">Standard error of the tape.</param>
/// <param name="Design">Standard error of the length that should be there, from the errors of the job's own readings.</param>
public sealed record BuiltDifference(BuiltReading Reading, double Wanted, double Tape, double Design)
{
    /// <summary>Measured less wanted.</summary>
    public double Off => Reading.Length - Wanted;

    /// <summary>Standard error of the difference.</summary>
    public double Error => Math.Sqrt(Tape * Tape + Design * Design);

    /// <summary>No more than 95 of 100 differences would be by chance.</summary>
    public bool IsWithin => Math.Abs(Off) <= BlankError.Coverage * Error;
}

/// <summary>An edge of a finished piece that does not lie where it should.</summary>
/// <param name="Edge">Its name.</param>
/// <param name="AtFirst">How far its first end stands out, mm; negative: too far in.</param>
/// <param name="AtLast">The same of its last end.</param>
/// <param name="ErrorFirst">Standard error of the one, mm.</param>
/// <param name="ErrorLast">Standard error of the other, mm.</param>
/// <param name="LetterFirst">The lettered place nearest to its first end.</param>
/// <param name="LetterLast">The lettered place nearest to its last end.</param>
public sealed record EdgeCorrection(string Edge, double AtFirst, double AtLast, double ErrorFirst, double ErrorLast, string LetterFirst, string LetterLast);
