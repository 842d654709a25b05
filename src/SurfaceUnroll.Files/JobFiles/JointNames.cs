using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Sees to it that no two joints of a job are called the same: those that the job names, those that get letters, and the seams of split panels, whose letters come after those of all joints.</summary>
/// <param name="faults">Where faults go.</param>
/// <param name="panels">The panels that could be read.</param>
/// <param name="count">Joints in the job.</param>
internal sealed class JointNames(FaultList faults, ImmutableArray<PanelSpec> panels, int count)
{
    private readonly HashSet<string> _names = [];

    private readonly HashSet<string> _seams = [.. Enumerable.Range(count, panels.Sum(p => Math.Max(0, p.Pieces - 1))).Select(JointSpec.Letters)];

    /// <summary>Checks a name that the job gives.</summary>
    public void Add(string name, string path, TextPlace place)
    {
        if (!_names.Add(name))
            faults.Add("joint-name-twice", path, place, $"There is a joint called \"{name}\" already.", "Give each a name of its own, or leave the names out: joints are then called A, B, C …");
        else if (_seams.Contains(name))
            faults.Add("joint-name", path, place, $"The seams between the pieces of split panels are called {string.Join(", ", _seams)} here, so that no other joint can be called \"{name}\".", "Call it by a word, or leave its name out.");
    }

    /// <summary>The joints, those without a name called A, B, C … in their order, past letters that are names.</summary>
    public ImmutableArray<JointSpec> Lettered(ImmutableArray<JointSpec> joints)
    {
        // As many letters as there are joints are enough, and reach none of the seams': each letter passed over is the name of a joint that takes none.
        var free = new Queue<string>(Enumerable.Range(0, count).Select(JointSpec.Letters).Where(letter => !_names.Contains(letter)));
        return [.. joints.Select(j => j.Name is null ? j with { Name = free.Dequeue() } : j)];
    }
}
