using SurfaceUnroll.Bench.Desk;

namespace SurfaceUnroll.Bench.Tests;

/// <summary>A job on the desk, its file in a folder that goes with it.</summary>
public sealed class OpenDesk : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public OpenDesk(string job)
    {
        Path = _folder.Write("cover.json", job);
        Shelf = new JobShelf(_folder.Path);
        Desk = Shelf.Open("cover")!;
    }

    internal string Path { get; }

    internal JobShelf Shelf { get; }

    internal JobDesk Desk { get; }

    public void Dispose()
    {
        Shelf.Dispose();
        _folder.Dispose();
    }
}
