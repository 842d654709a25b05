using System.Diagnostics;
using SurfaceUnroll.Bench.Desk;

namespace SurfaceUnroll.Bench.Pages;

/// <summary>When a window is drawn again: at once, and once for all changes that come while it is being drawn.</summary>
/// <remarks>While a point is dragged each drawing costs the browser a frame, so the place of the point waits a moment for the sheet that belongs to it and both are drawn together.</remarks>
/// <param name="now">The state of the desk.</param>
/// <param name="run">Runs work where the window's own code runs.</param>
/// <param name="draw">Draws a state; called there.</param>
internal sealed class DrawingPace(Func<DeskState> now, Func<Func<Task>, Task> run, Action<DeskState> draw)
{
    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(80);

    private volatile TaskCompletionSource _more = new();
    private int _waiting;
    private long _developed = -1;

    /// <summary>The desk has changed; from any thread.</summary>
    public void Changed()
    {
        if (Interlocked.Exchange(ref _waiting, 1) == 1)
        {
            _more.TrySetResult();
            return;
        }
        _ = run(DrawAsync);
    }

    private async Task DrawAsync()
    {
        long start = Stopwatch.GetTimestamp();
        while (true)
        {
            _more = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            DeskState state = now();
            TimeSpan left = Moment - Stopwatch.GetElapsedTime(start);
            if (!state.Dragging || state.Developed != _developed || state.Looked == state.Version || left <= TimeSpan.Zero) break;
            await Task.WhenAny(_more.Task, Task.Delay(left));
        }
        Volatile.Write(ref _waiting, 0);
        DeskState drawn = now();
        _developed = drawn.Developed;
        draw(drawn);
    }
}
