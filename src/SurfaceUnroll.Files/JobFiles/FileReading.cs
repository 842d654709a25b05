namespace SurfaceUnroll.Files.JobFiles;

/// <summary>What came of opening a file that a job names.</summary>
/// <param name="Bytes">What it holds; null if it cannot be read.</param>
/// <param name="Problem">Why it cannot be read; empty if it can.</param>
/// <param name="Mend">What to do about it; empty if it can be read.</param>
internal sealed record FileReading(byte[]? Bytes, string Problem = "", string Mend = "")
{
    /// <summary>There is no such file.</summary>
    public static FileReading Absent { get; } = new(null, "there is no such file.", "Check the name: it is taken from the folder of the job file, with / between folders.");
}
