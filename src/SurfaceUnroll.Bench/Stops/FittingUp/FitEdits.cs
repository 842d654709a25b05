using System.Collections.Immutable;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Stops.FittingUp;

/// <summary>Changes of a piece that reach into what else names it, each undone as one.</summary>
public static class FitEdits
{
    /// <summary>Gives a piece another name, wherever it is named.</summary>
    /// <param name="text">The job.</param>
    /// <param name="panel">Path of the piece.</param>
    /// <param name="name">The new name.</param>
    public static JobEdit RenamePanel(JobText text, string panel, string name)
    {
        string was = text.Shown(JobPath.Under(panel, "name"));
        return JobEdit.All([Set(JobPath.Under(panel, "name"), name), .. was.Length == 0 ? [] : Mentions(text, was).Select(m => Set(m.Path, m.IsEdge ? name + text.Shown(m.Path)[was.Length..] : name))]);
    }

    /// <summary>Gives an opening or a trim another name; joints along its edge follow.</summary>
    /// <param name="text">The job.</param>
    /// <param name="path">Path of the opening or trim.</param>
    /// <param name="was">What it is called now, also if it has no name of its own.</param>
    /// <param name="name">The new name; empty: none of its own.</param>
    public static JobEdit RenameEdge(JobText text, string path, string was, string name)
    {
        string owner = path.StartsWith("panels", StringComparison.Ordinal) ? text.Shown(JobPath.Under(path[..(path.IndexOf(']', StringComparison.Ordinal) + 1)], "name")) + "/" : "/";
        bool Names(string edge) => (owner == "/" ? edge.EndsWith("/" + was, StringComparison.Ordinal) : edge == owner + was);
        string at = JobPath.Under(path, "name");
        if (name.Length == 0) return JobEdit.Remove(at);
        return JobEdit.All([Set(at, name), .. JointNames(text).Where(v => Names(v.Shown)).Select(v => Set(v.Path, v.Shown[..^was.Length] + name))]);
    }

    /// <summary>Takes a piece out, with the joints along its edges.</summary>
    /// <param name="text">The job.</param>
    /// <param name="panel">Path of the piece.</param>
    public static JobEdit RemovePanel(JobText text, string panel) =>
        // From the last to the first: what is taken out moves those after it.
        JobEdit.All([.. JointsOf(text, panel).Reverse().Select(JobEdit.Remove), JobEdit.Remove(panel)]);

    /// <summary>Paths of the joints along the edges of a piece.</summary>
    public static ImmutableArray<string> JointsOf(JobText text, string panel)
    {
        string name = text.Shown(JobPath.Under(panel, "name"));
        return name.Length == 0 ? [] : [.. text.Inside("joints").Where(j => text.Inside(j.Under("edges")).Any(e => IsOf(e.Shown, name))).Select(j => j.Path)];
    }

    private static JobEdit Set(string path, string word) => JobEdit.Set(path, JobPath.Quoted(word));

    private static IEnumerable<JobValue> JointNames(JobText text) =>
        text.Inside("joints").SelectMany(j => text.Inside(j.Under("edges")).Concat(text.Find(j.Under("on")) is { } on ? [on] : []));

    // An edge of the piece or, where it is split, of a part of it.
    private static bool IsOf(string edge, string name)
    {
        if (!edge.StartsWith(name, StringComparison.Ordinal)) return false;
        string rest = edge[name.Length..];
        int slash = rest.IndexOf('/', StringComparison.Ordinal);
        return slash == 0 || (slash > 0 && rest[..slash].Split(' ') is ["", var k, "of", var n] && k.All(char.IsAsciiDigit) && n.All(char.IsAsciiDigit));
    }

    private static IEnumerable<(string Path, bool IsEdge)> Mentions(JobText text, string name)
    {
        foreach (JobValue value in JointNames(text))
        {
            if (IsOf(value.Shown, name)) yield return (value.Path, true);
            else if (value.Shown == name) yield return (value.Path, false);
        }
        foreach (JobValue value in text.Inside("openings").SelectMany(o => text.Inside(o.Under("through"))).Where(v => v.Shown == name)) yield return (value.Path, false);
        foreach (JobValue trim in text.Inside("panels").SelectMany(p => text.Inside(p.Under("trims"))))
            if (text.Find(trim.Under("by")) is { } by && by.Shown == name) yield return (by.Path, false);
    }
}
