using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Files.JobTexts;

/// <summary>Changes the units of a job without a change of any length.</summary>
public static class UnitSwitch
{
    /// <summary>The change that makes a job speak in other units.</summary>
    /// <param name="text">The job.</param>
    /// <param name="reading">What was read of it.</param>
    /// <param name="units"><c>mm</c> or <c>in</c>.</param>
    /// <returns>
    /// Every plain number of a length gets the unit that it had, as in <c>"120 mm"</c>, and one that had the new unit loses it; so nothing is rounded.
    /// Switching to and fro gives plain numbers back as they were; what was in quotes keeps the unit that it was given. Null if the job is in these units already.
    /// </returns>
    public static JobEdit? To(JobText text, JobReading reading, string units)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(reading);
        string was = text.Shown("units");
        if (was == units) return null;
        string shed = " " + units;
        IEnumerable<JobEdit> edits = reading.Lengths.Select(text.Find).OfType<JobValue>().Select(v =>
            v.Kind == JobValueKind.Number ? JobEdit.Set(v.Path, JobPath.Quoted($"{v.Shown} {was}"))
            : v.Shown.EndsWith(shed, StringComparison.Ordinal) && JobPath.IsNumber(v.Shown[..^shed.Length]) ? JobEdit.Set(v.Path, v.Shown[..^shed.Length])
            : v.Kind == JobValueKind.Text && !NamesUnit(v.Shown) ? JobEdit.Set(v.Path, JobPath.Quoted($"{v.Shown} {was}")) : null).OfType<JobEdit>();
        return JobEdit.All([JobEdit.Set("units", JobPath.Quoted(units)), .. edits]);
    }

    // A fraction such as 6 7/8 is in the units of the job too.
    private static bool NamesUnit(string text) => text.Any(c => char.IsAsciiLetter(c) || c is '"' or '\'' or '″' or '′' or '”' or '’');
}
