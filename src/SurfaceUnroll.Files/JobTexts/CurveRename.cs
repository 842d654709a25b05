namespace SurfaceUnroll.Files.JobTexts;

/// <summary>Gives a curve another name, wherever the job speaks of it.</summary>
public static class CurveRename
{
    // Where panels and openings name curves: as a text or as a list of texts.
    private static readonly string[] Naming = ["loft", "flat", "plan", "side", "curve"];

    /// <summary>The change that renames a curve and all that refers to it.</summary>
    /// <param name="text">The job.</param>
    /// <param name="from">The name that it has.</param>
    /// <param name="to">The name that it is to have.</param>
    public static JobEdit To(JobText text, string from, string to)
    {
        ArgumentNullException.ThrowIfNull(text);
        return JobEdit.All(
            [.. Users(text, from).Select(path => JobEdit.Set(path, JobPath.Quoted(to))), .. Freedoms(text, from).Select(path => JobEdit.Rename(path, to)), JobEdit.Rename(JobPath.Under("curves", from), to)]);
    }

    // Where a panel gives the curve a freedom, its name is a key.
    private static IEnumerable<string> Freedoms(JobText text, string name) =>
        text.Inside("panels").Select(panel => JobPath.Under(JobPath.Under(panel.Path, "freedom"), name)).Where(path => text.Find(path) is not null);

    /// <summary>Paths of the values that name a curve.</summary>
    public static IEnumerable<string> Users(JobText text, string name)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Named(text, "panels", name, false).Concat(Named(text, "openings", name, false));
    }

    private static IEnumerable<string> Named(JobText text, string path, string name, bool naming)
    {
        if (text.Find(path) is not { } value) return [];
        if (value.Kind == JobValueKind.Text) return naming && value.Shown == name ? [path] : [];
        // Within a list the key before it counts.
        return text.Inside(path).SelectMany(child => Named(text, child.Path, name, value.Kind == JobValueKind.Block
            ? Naming.Any(key => child.Path == value.Under(key))
            : naming));
    }
}
