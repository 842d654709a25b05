namespace SurfaceUnroll.Cli;

/// <summary>Opens the file that a command was given, and says what is wrong where that cannot be done.</summary>
/// <param name="Kind">What the file should be, for example <c>job file</c>.</param>
/// <param name="Largest">Most bytes to read.</param>
/// <param name="TooLarge">What is wrong with a larger one, and how to mend it.</param>
/// <param name="Absent">What to do where there is none.</param>
internal sealed record InputFile(string Kind, long Largest, (string Message, string Mend) TooLarge, string Absent)
{
    /// <summary>The bytes of the file; null with the fault on standard error.</summary>
    public byte[]? Read(string path, Screen screen)
    {
        (string Message, string Mend)? fault;
        try
        {
            var file = new FileInfo(path);
            fault = (file.Exists, Directory.Exists(path)) switch
            {
                (_, true) => ($"This is a folder, not a {Kind}.", $"Name the {Kind} in it."),
                (false, _) => ("There is no such file.", Absent),
                _ when file.Length > Largest => TooLarge,
                _ => null,
            };
            if (fault is null) return File.ReadAllBytes(path);
        }
        catch (UnauthorizedAccessException)
        {
            fault = ("You have no right to read this file.", "Change its rights, or copy it to a place of your own.");
        }
        catch (Exception e) when (e is IOException or NotSupportedException or ArgumentException)
        {
            fault = ($"This file cannot be read: {e.Message}", "Check the name.");
        }
        FaultText.Write(screen.Error, path, fault.Value.Message, fault.Value.Mend);
        return null;
    }
}
