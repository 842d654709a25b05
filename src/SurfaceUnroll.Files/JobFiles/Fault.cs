namespace SurfaceUnroll.Files.JobFiles;

/// <summary>One thing that keeps a job file from being used.</summary>
/// <param name="Code">Stable id in kebab-case, for example <c>length-not-positive</c>.</param>
/// <param name="Path">Path in the job, for example <c>curves.front.points[2]</c>; empty for the file as a whole.</param>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1, in characters.</param>
/// <param name="Message">What is wrong, with the value and the limit.</param>
/// <param name="Mend">How to mend it.</param>
public sealed record Fault(string Code, string Path, int Line, int Column, string Message, string Mend);
