using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Jobs;

/// <summary>What the errors of the readings do to the edges of a blank. Lengths in mm.</summary>
/// <param name="Method">How it was found.</param>
/// <param name="Edges">In the order of the panel's edges.</param>
/// <param name="Readings">Every reading that the piece depends on and that has an error, the one that matters most first.</param>
public sealed record BlankError(ErrorMethod Method, ImmutableArray<EdgeError> Edges, ImmutableArray<ReadingShare> Readings)
{
    /// <summary>From a standard error to half the width of the band that holds 95 of 100: the normal distribution's (JCGM 100:2008, table G.1).</summary>
    public const double Coverage = 1.959964;

    /// <summary>Random jobs that could not be developed, as a fraction; 0 where none was asked for.</summary>
    public double Failed { get; init; }

    /// <summary>Half the width of the widest band.</summary>
    public double Largest => Edges.Select(e => e.Largest).DefaultIfEmpty().Max();
}

/// <summary>How errors are carried to the edges.</summary>
public enum ErrorMethod
{
    /// <summary>Each reading is moved by its error to either side, and what the edges do is added up by squares.</summary>
    Linear,

    /// <summary>Random jobs, where the edges do not follow the readings in proportion.</summary>
    Random,
}

/// <summary>The band along one edge of a blank.</summary>
/// <param name="Name">Of the edge; of one that a trim parted each run has its own.</param>
/// <param name="Places">From its first end to its last.</param>
/// <param name="Leave">What to leave on along it, in whole millimetres or sixteenths of an inch: enough for the band everywhere.</param>
public sealed record EdgeError(string Name, ImmutableArray<BandPlace> Places, ImmutableArray<LeaveStep> Leave)
{
    /// <summary>Half the width of the widest place.</summary>
    public double Largest => Places.Select(p => p.Band).DefaultIfEmpty().Max();
}

/// <summary>A stretch of an edge along which one width is left on.</summary>
/// <param name="From">Distance along the edge on the blank, mm.</param>
/// <param name="To">The same.</param>
/// <param name="Width">mm; 0: cut to the line.</param>
public readonly record struct LeaveStep(double From, double To, double Width);

/// <summary>The band at one place of an edge: the true edge lies within it 95 times of 100.</summary>
/// <param name="At">Distance along the edge on the blank, mm.</param>
/// <param name="Flat">Place on the net edge.</param>
/// <param name="Outward">Unit vector square to the edge, away from the metal.</param>
/// <param name="Band">Half the width of the band, to either side of the edge, mm.</param>
public readonly record struct BandPlace(double At, Vec2 Flat, Vec2 Outward, double Band);

/// <summary>How much one reading has to do with the edges of a blank.</summary>
/// <param name="Where">Path in the job file, for example <c>curves.rear.points[4][0]</c>.</param>
/// <param name="Words">What it is: point 5 of “rear” (across).</param>
/// <param name="Error">Its standard error: mm, or radians for an angle.</param>
/// <param name="IsAngle">It is an angle.</param>
/// <param name="Share">Of the variance of all edges together, as a fraction.</param>
/// <param name="Most">How far it alone moves the edge that it moves the farthest, for one standard error, mm.</param>
/// <param name="Edge">That edge.</param>
public sealed record ReadingShare(string Where, string Words, double Error, bool IsAngle, double Share, double Most, string Edge);
