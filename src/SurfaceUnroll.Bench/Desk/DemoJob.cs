using System.Reflection;
using System.Text;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>A demo job that comes with the program; its measures are invented.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Title">As the job calls itself.</param>
/// <param name="Says">What it shows, from the comments at its head.</param>
/// <param name="Text">The job file.</param>
public sealed record DemoJob(string Name, string Title, string Says, string Text)
{
    private const string Folder = "demo/";

    private static readonly Assembly Home = typeof(DemoJob).Assembly;

    /// <summary>All of them, the simplest first.</summary>
    public static IReadOnlyList<DemoJob> All() => Known.Value;

    private static readonly Lazy<IReadOnlyList<DemoJob>> Known = new(() =>
        [.. Home.GetManifestResourceNames().Where(n => n.StartsWith(Folder, StringComparison.Ordinal) && n.EndsWith(".json", StringComparison.Ordinal)).Select(Of).OrderBy(d => d.Text.Length)]);

    /// <summary>Puts the meshes that demo jobs name beside the job, where they are not there yet.</summary>
    public void CopyMeshes(string folder)
    {
        foreach (string resource in Home.GetManifestResourceNames().Where(n => n.StartsWith(Folder, StringComparison.Ordinal) && !n.EndsWith(".json", StringComparison.Ordinal)))
        {
            string file = resource[Folder.Length..], path = Path.Combine(folder, file);
            if (!Text.Contains(file, StringComparison.Ordinal) || File.Exists(path)) continue;
            Directory.CreateDirectory(folder);
            File.WriteAllBytes(path, Bytes(resource));
        }
    }

    private static DemoJob Of(string resource)
    {
        string text = Encoding.UTF8.GetString(Bytes(resource));
        string[] head = [.. text.Split('\n').TakeWhile(l => l.StartsWith("//", StringComparison.Ordinal)).Select(l => l[2..].Trim())];
        // The first line says that the measures are invented; the heading says so for all.
        string says = string.Join(' ', head.Where(l => !l.Contains("Invented", StringComparison.OrdinalIgnoreCase)));
        return new DemoJob(resource[Folder.Length..^".json".Length], JobText.Of(text).Shown("job"), says, text);
    }

    private static byte[] Bytes(string resource)
    {
        using Stream stream = Home.GetManifestResourceStream(resource)!;
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
