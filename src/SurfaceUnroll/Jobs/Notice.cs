namespace SurfaceUnroll.Jobs;

/// <summary>How much a notice weighs.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing to do.</summary>
    Note,

    /// <summary>The result stands, but look at this before cutting.</summary>
    Warning,

    /// <summary>The job cannot be used; nothing is written.</summary>
    Error,
}

/// <summary>One thing the user should know about a job, found while reading or computing it.</summary>
/// <param name="Code">Stable id in kebab-case, for example <c>curve-turned-round</c>; listed in docs/notices.md.</param>
/// <param name="Severity">Weight.</param>
/// <param name="Where">Path in the job file, for example <c>curves.front.points[2]</c>; empty for the job as a whole.</param>
/// <param name="Message">What is wrong or noteworthy, with the value and the limit, in the words of the shop.</param>
/// <param name="Mend">How to mend it; null where there is nothing to mend.</param>
public sealed record Notice(string Code, Severity Severity, string Where, string Message, string? Mend = null);
