using System.Collections.Immutable;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>Brings together what two programs made of one job file.</summary>
internal static class Merge
{
    /// <summary>The other program's text with the changes made here.</summary>
    /// <param name="from">The text that both started from.</param>
    /// <param name="theirs">What the other program made of it.</param>
    /// <param name="edits">What was changed here.</param>
    /// <returns>Null where both changed the same place, or the other text cannot be looked into.</returns>
    public static string? Of(string from, string theirs, ImmutableArray<JobEdit> edits)
    {
        JobText before = JobText.Of(from), merged = JobText.Of(theirs);
        if (!before.IsJson || !merged.IsJson) return null;
        foreach (string place in edits.SelectMany(JobEdit.Places))
        {
            if (before.Written(place) != merged.Written(place)) return null;
        }
        return edits.Aggregate(merged, (text, edit) => text.With(edit)).Text;
    }
}
