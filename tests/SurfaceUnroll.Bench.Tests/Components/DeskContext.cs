using Microsoft.AspNetCore.Components;
using SurfaceUnroll.Bench.Desk;

namespace SurfaceUnroll.Bench.Tests.Components;

/// <summary>Renders components on the desk of a job, without a browser.</summary>
public sealed class DeskContext : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly JobShelf _shelf;
    private readonly BunitContext _context = new();

    public DeskContext(string job)
    {
        _folder.Write("job.json", job);
        _shelf = new JobShelf(_folder.Path);
        Desk = _shelf.Open("job")!;
    }

    internal JobDesk Desk { get; }

    /// <summary>The state once the job is developed or its faults are known.</summary>
    internal async Task<DeskState> LookedAsync()
    {
        // A limit for a test that would otherwise hang; nothing is measured by it.
        for (int i = 0; i < 3000 && Desk.State.Looked != Desk.State.Version; i++) await Task.Delay(20);
        Assert.Equal(Desk.State.Version, Desk.State.Looked);
        return Desk.State;
    }

    /// <summary>Renders a component with the state as it is now.</summary>
    public IRenderedComponent<T> Render<T>(Action<ComponentParameterCollectionBuilder<T>> parameters) where T : IComponent =>
        _context.Render<T>(p =>
        {
            p.AddCascadingValue(Desk).AddCascadingValue(Desk.State);
            parameters(p);
        });

    public void Dispose()
    {
        _context.Dispose();
        _shelf.Dispose();
        _folder.Dispose();
    }
}
