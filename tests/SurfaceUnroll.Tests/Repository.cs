namespace SurfaceUnroll.Tests;

/// <summary>The tree that the tests were built from.</summary>
internal static class Repository
{
    /// <summary>Its root: the folder of the solution.</summary>
    public static string Root { get; } = Find();

    private static string Find()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "SurfaceUnroll.sln"))) folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException($"SurfaceUnroll.sln is not above {AppContext.BaseDirectory}.");
    }
}
