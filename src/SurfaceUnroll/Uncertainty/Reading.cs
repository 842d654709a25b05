using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Uncertainty;

/// <summary>One number that the fabricator read, with its error.</summary>
/// <param name="Where">Path in the job file.</param>
/// <param name="Words">What it is, in the words of the shop.</param>
/// <param name="Error">Standard error, &gt; 0: mm, or radians for an angle.</param>
/// <param name="IsAngle">It is an angle.</param>
/// <param name="Moved">The job with this reading off by so much, mm or radians.</param>
internal sealed record Reading(string Where, string Words, double Error, bool IsAngle, Func<Job, double, Job> Moved)
{
    /// <summary>The curve of the job that it belongs to; null: a curve or a side of one panel alone.</summary>
    public string? Curve { get; init; }

    /// <summary>That panel, numbered as in the job; −1 for a curve of the job.</summary>
    public int Panel { get; init; } = -1;
}

/// <summary>The same, of what was measured by itself.</summary>
/// <typeparam name="T">A curve, or a bent plate.</typeparam>
/// <param name="Part">Path within it.</param>
/// <param name="Words">What it is; <c>{0}</c> stands for the name of the curve.</param>
/// <param name="Error">Standard error.</param>
/// <param name="IsAngle">It is an angle.</param>
/// <param name="Moved">It with this reading off by so much.</param>
internal sealed record PartReading<T>(string Part, string Words, double Error, bool IsAngle, Func<T, double, T> Moved);
