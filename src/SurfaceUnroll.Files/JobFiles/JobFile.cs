using System.Collections.Frozen;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads job files; docs/job-file.md describes them.</summary>
public static class JobFile
{
    /// <summary>Reads the text of a job file that names no other files.</summary>
    /// <param name="text">JSON; comments and trailing commas are allowed.</param>
    /// <returns>The job, or every fault at once, a mesh file that it names among them. Never throws for what the text holds.</returns>
    public static JobReading Read(string text) => Read(text, _ => null);

    /// <summary>Reads the text of a job file and the mesh files that it names.</summary>
    /// <param name="text">JSON; comments and trailing commas are allowed.</param>
    /// <param name="openFile">Gives what a file holds by its name in the job, or null if there is none.</param>
    /// <returns>The job, or every fault at once. Never throws for what the text and the files hold.</returns>
    public static JobReading Read(string text, Func<string, byte[]?> openFile)
    {
        ArgumentNullException.ThrowIfNull(openFile);
        return ReadWith(text, name => openFile(name) is { } bytes ? new FileReading(bytes) : FileReading.Absent);
    }

    /// <summary>Reads the text of a job file and the mesh files that it names from the folder in which it lies.</summary>
    /// <param name="text">JSON; comments and trailing commas are allowed.</param>
    /// <param name="folder">Folder of the job file; empty for the current one.</param>
    /// <returns>The job, or every fault at once. Never throws for what the text and the files hold.</returns>
    public static JobReading ReadIn(string text, string folder) => ReadWith(text, name => JobFolder.Open(folder, name));

    private static JobReading ReadWith(string text, Func<string, FileReading> open)
    {
        ArgumentNullException.ThrowIfNull(text);
        (JsonTree? tree, JsonBreak? broken) = JsonTreeReader.Read(text);
        if (tree is null)
            return new JobReading(null, [new Fault(broken!.Code, "", broken.Place.Line, broken.Place.Column, broken.Message, broken.Mend)]);
        var faults = new FaultList();
        Job? job = JobReader.Read(tree, faults, open, out IReadOnlyList<string> lengths);
        return new JobReading(faults.Count == 0 ? job : null, faults.InOrder())
        {
            Places = Places(tree).ToFrozenDictionary(),
            Lengths = [.. lengths.Distinct()],
        };
    }

    private static Dictionary<string, TextPlace> Places(JsonTree tree)
    {
        var places = new Dictionary<string, TextPlace>();
        void Note(JsonTree at, string path)
        {
            places.TryAdd(path, at.Place); // Of a key that stands twice, the first.
            if (at is JsonObject block)
            {
                foreach (JsonMember member in block.Members) Note(member.Value, path.Length == 0 ? member.Key : $"{path}.{member.Key}");
            }
            else if (at is JsonList list)
            {
                for (int i = 0; i < list.Items.Length; i++) Note(list.Items[i], $"{path}[{Measures.Count(i)}]");
            }
        }
        Note(tree, "");
        return places;
    }
}
