using SurfaceUnroll.Files.Meshes;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Opens the files that a job names, from the folder in which the job lies.</summary>
internal static class JobFolder
{
    /// <summary>Reads a file, or says why not.</summary>
    /// <param name="folder">Folder of the job file.</param>
    /// <param name="name">As written in the job: a path from that folder, or a full one.</param>
    /// <param name="largest">Most bytes to read.</param>
    public static FileReading Open(string folder, string name, long largest = MeshFile.LargestFile)
    {
        try
        {
            string path = Path.Combine(folder, name);
            if (Directory.Exists(path)) return new FileReading(null, "this is a folder, not a file.", "Name the file in it.");
            var file = new FileInfo(path);
            if (!file.Exists) return FileReading.Absent;
            if (file.Length > largest)
                return new FileReading(null, $"the file has {Megabytes(file.Length)} MB; the limit is {Megabytes(largest)} MB.", "Thin the mesh out first, in a mesh editor.");
            // What has no length, such as a device, may have no end either.
            return new FileReading(file.Length == 0 ? [] : File.ReadAllBytes(path));
        }
        catch (UnauthorizedAccessException)
        {
            return new FileReading(null, "you have no right to read this file.", "Change its rights, or copy it to a place of your own.");
        }
        catch (Exception e) when (e is IOException or NotSupportedException or ArgumentException)
        {
            return new FileReading(null, $"the file cannot be read: {e.Message}", "Check the name.");
        }
    }

    private static string Megabytes(long bytes) => Measures.Count((int)(bytes >> 20));
}
