using System.Collections.Immutable;
using System.Diagnostics;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>Keeps the development of a desk up with its text.</summary>
/// <remarks>
/// A run is let come to its end if it is short, else a drag would never show anything; one that has taken longer than <see cref="Patience"/> is given up as soon
/// as there is a newer text. Paper is planned once the text has been at rest.
/// </remarks>
internal sealed class LiveDeveloper : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(400), Rest = TimeSpan.FromMilliseconds(350);

    private readonly JobDesk _desk;
    private readonly Loop _loop, _papers;
    private readonly Lock _lock = new();
    private CancellationTokenSource? _running;
    private long _started;

    public LiveDeveloper(JobDesk desk)
    {
        _desk = desk;
        _papers = new Loop(PlanPapersAsync);
        _loop = new Loop(end =>
        {
            Run(end);
            return Task.CompletedTask;
        });
    }

    /// <summary>There is a newer text.</summary>
    public void Signal()
    {
        _loop.Signal();
        lock (_lock)
        {
            if (_running is null) return;
            TimeSpan left = Patience - Stopwatch.GetElapsedTime(_started);
            _running.CancelAfter(left > TimeSpan.Zero ? left : TimeSpan.Zero);
        }
    }

    /// <summary>Gives up what is being worked on.</summary>
    public void Stop()
    {
        lock (_lock) _running?.Cancel();
        _desk.Update(s => s with { Stopped = true, Working = null });
    }

    public void Dispose()
    {
        _loop.Dispose();
        _papers.Dispose();
    }

    private void Run(CancellationToken end)
    {
        DeskState state = _desk.State;
        if (state.Looked == state.Version || state.Stopped) return;
        JobReading reading = JobFile.ReadIn(state.Text.Text, Path.GetDirectoryName(_desk.Path) ?? "");
        if (reading.Job is not { } job)
        {
            ImmutableArray<Finding> faults = [.. reading.Faults.Select(Finding.Of)];
            _desk.Update(s => s with { Findings = faults, Looked = state.Version, Working = null });
            return;
        }
        using var cancellation = CancellationTokenSource.CreateLinkedTokenSource(end);
        lock (_lock) (_running, _started) = (cancellation, Stopwatch.GetTimestamp());
        try
        {
            Development development = Developer.Develop(job, new Told(step => Say(step, state.Version)), cancellation.Token);
            ImmutableArray<Finding> findings = [.. development.Notices.Select(Finding.Of)];
            _desk.Update(s => development.Failed
                ? s with { Findings = findings, Looked = state.Version, Working = null }
                : s with { Findings = findings, Development = development, Developed = state.Version, Looked = state.Version, Working = null, Papers = [] });
            if (!development.Failed) _papers.Signal();
        }
        catch (OperationCanceledException)
        {
            _desk.Update(s => s with { Working = null });
        }
        finally
        {
            lock (_lock) _running = null;
        }
    }

    // Short work is over before a word of it could be read.
    private void Say(string step, long version)
    {
        if (Stopwatch.GetElapsedTime(_started) > Patience) _desk.Update(s => s.Version == version ? s with { Working = step } : s);
    }

    private async Task PlanPapersAsync(CancellationToken end)
    {
        DeskState state;
        do
        {
            state = _desk.State;
            await Task.Delay(Rest, end);
        }
        while (_desk.State.Version != state.Version);
        if (state.Development is not { } development || !state.IsSound || !state.Papers.IsEmpty) return;
        ImmutableArray<TilePlan> papers = PaperPlans.Of(development);
        _desk.Update(s => ReferenceEquals(s.Development, development) ? s with { Papers = papers } : s);
    }

    private sealed class Told(Action<string> say) : IProgress<string>
    {
        public void Report(string value) => say(value);
    }
}
