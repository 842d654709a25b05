namespace SurfaceUnroll.Tests;

/// <summary>An empty folder that is gone after the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("surfaceunroll-test-").FullName;

    public string At(params string[] parts) => System.IO.Path.Combine([Path, .. parts]);

    public string Write(string name, byte[] content)
    {
        File.WriteAllBytes(At(name), content);
        return At(name);
    }

    public string Write(string name, string content)
    {
        File.WriteAllText(At(name), content);
        return At(name);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
