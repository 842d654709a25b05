using Microsoft.AspNetCore.Components;
using SurfaceUnroll.Bench.Desk;

namespace SurfaceUnroll.Bench.Tests.Components;

/// <summary>Renders components on the desk of a job, without a browser.</summary>
public sealed class DeskContext : IDisposable
{
    private readonly OpenDesk _open;
    private readonly BunitContext _context = new();

    public DeskContext(string job) => _open = new OpenDesk(job);

    internal JobDesk Desk => _open.Desk;

    /// <summary>The state once the job is developed or its faults are known.</summary>
    internal async Task<DeskState> LookedAsync()
    {
        await Waiting.Until(() => Desk.State.Looked == Desk.State.Version && (Desk.State.IsWhole || !Desk.State.IsSound));
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
        _open.Dispose();
    }
}
