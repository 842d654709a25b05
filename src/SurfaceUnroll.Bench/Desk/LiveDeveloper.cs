using System.Collections.Immutable;
using System.Diagnostics;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>Keeps the development of a desk up with its text.</summary>
/// <remarks>
/// A run is let come to its end if it is short, else a drag would never show anything; one that has taken longer than <see cref="Patience"/> is given up as soon
/// as there is a newer text. What errors of readings do, which takes many developments, is taken over from the last one until the text has been at rest; then it is worked out, and paper is planned.
/// </remarks>
internal sealed class LiveDeveloper : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(400), Rest = TimeSpan.FromMilliseconds(350);

    private readonly JobDesk _desk;
    private readonly Loop _loop, _rest;
    private readonly Lock _lock = new();
    private CancellationTokenSource? _running, _resting;
    private long _started;

    public LiveDeveloper(JobDesk desk)
    {
        _desk = desk;
        _rest = new Loop(RestAsync);
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
            _resting?.Cancel();
            if (_running is null) return;
            TimeSpan left = Patience - Stopwatch.GetElapsedTime(_started);
            _running.CancelAfter(left > TimeSpan.Zero ? left : TimeSpan.Zero);
        }
    }

    /// <summary>Gives up what is being worked on.</summary>
    public void Stop()
    {
        lock (_lock)
        {
            _running?.Cancel();
            _resting?.Cancel();
        }
        _desk.Update(s => s with { Stopped = true, Working = null });
    }

    public void Dispose()
    {
        _loop.Dispose();
        _rest.Dispose();
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
            Development development = Developer.Follow(job, state.Development, new Told(step => Say(step, state.Version, _started)), cancellation.Token);
            ImmutableArray<Finding> findings = [.. development.Notices.Select(Finding.Of)];
            _desk.Update(s => development.Failed
                ? s with { Findings = findings, Looked = state.Version, Working = null }
                : s with { Findings = findings, Development = development, Developed = state.Version, Looked = state.Version, Working = null, Papers = [] });
            if (!development.Failed) _rest.Signal();
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
    private void Say(string step, long version, long started)
    {
        if (Stopwatch.GetElapsedTime(started) > Patience) _desk.Update(s => s.Version == version ? s with { Working = step } : s);
    }

    private async Task RestAsync(CancellationToken end)
    {
        DeskState state;
        do
        {
            state = _desk.State;
            await Task.Delay(Rest, end);
        }
        while (_desk.State.Version != state.Version);
        state = _desk.State;
        if (!state.IsSound || state.Stopped) return;
        Development development = state.Development!;
        if (development.ErrorsAwaited)
        {
            if (Whole(state, end) is not { } whole) return;
            development = whole;
        }
        else if (!state.Papers.IsEmpty) return;
        ImmutableArray<TilePlan> papers = PaperPlans.Of(development);
        _desk.Update(s => ReferenceEquals(s.Development, development) ? s with { Papers = papers } : s);
    }

    // With what errors do worked out; null if it was given up, or what that asks for cannot be made.
    private Development? Whole(DeskState state, CancellationToken end)
    {
        using var cancellation = CancellationTokenSource.CreateLinkedTokenSource(end);
        lock (_lock) _resting = cancellation;
        long started = Stopwatch.GetTimestamp();
        try
        {
            // A signal that came before this could be cancelled has changed the version.
            if (_desk.State.Version != state.Version) return null;
            Development development = Developer.Develop(state.Development!.Job, new Told(step => Say(step, state.Version, started)), cancellation.Token);
            ImmutableArray<Finding> findings = [.. development.Notices.Select(Finding.Of)];
            _desk.Update(s => !ReferenceEquals(s.Development, state.Development) || s.Version != state.Version ? s
                : development.Failed ? s with { Findings = findings, Developed = -1, Working = null }
                : s with { Findings = findings, Development = development, Working = null });
            return development.Failed ? null : development;
        }
        catch (OperationCanceledException)
        {
            _desk.Update(s => s.Version == state.Version ? s with { Working = null } : s);
            return null;
        }
        finally
        {
            lock (_lock) _resting = null;
        }
    }

    private sealed class Told(Action<string> say) : IProgress<string>
    {
        public void Report(string value) => say(value);
    }
}
