using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>Something to know about a place of the job: a fault of its text, or a notice of its development.</summary>
/// <param name="Path">Of the job; empty for the whole.</param>
/// <param name="Severity">Weight; an error keeps the job from being developed.</param>
/// <param name="Message">What is wrong or noteworthy.</param>
/// <param name="Mend">How to mend it; null where there is nothing to mend.</param>
public sealed record Finding(string Path, Severity Severity, string Message, string? Mend)
{
    internal static Finding Of(Fault fault) => new(fault.Path, Severity.Error, fault.Message, fault.Mend);

    internal static Finding Of(Notice notice) => new(notice.Where, notice.Severity, notice.Message, notice.Mend);
}

/// <summary>Finds what belongs to a field, and how it looks.</summary>
public static class Findings
{
    /// <summary>Those of a value and of what lies within it.</summary>
    public static IEnumerable<Finding> Within(this ImmutableArray<Finding> findings, string path) => findings.Where(f => JobPath.Within(f.Path, path));

    /// <summary>Class of its look.</summary>
    public static string Look(this Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Severity switch { Severity.Error => "fault", Severity.Warning => "warning", _ => "note" };
    }

    /// <summary>Those of just this value.</summary>
    public static IEnumerable<Finding> At(this ImmutableArray<Finding> findings, string path) => findings.Where(f => f.Path == path);
}
