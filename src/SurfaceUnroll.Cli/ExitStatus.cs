namespace SurfaceUnroll.Cli;

/// <summary>Exit statuses of the program.</summary>
internal static class ExitStatus
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>The machine failed, or the program did.</summary>
    public const int Failed = 1;

    /// <summary>The job or the command line cannot be used; nothing was written.</summary>
    public const int CannotUse = 2;

    /// <summary>With <c>--strict</c>: a panel is past a limit. The files were written.</summary>
    public const int PastTheLimit = 3;
}
