namespace SurfaceUnroll.Bench.Desk;

/// <summary>Runs one piece of work over and over: once for any number of signals that came in while it ran.</summary>
/// <remarks>So work never queues: it always takes what is newest, and what was overtaken is skipped.</remarks>
internal sealed class Loop : IDisposable
{
    private readonly SemaphoreSlim _signal = new(0);
    private readonly CancellationTokenSource _end = new();
    private readonly Task _run;
    private int _waiting;

    public Loop(Func<CancellationToken, Task> work) => _run = Task.Run(() => RunAsync(work));

    public void Signal()
    {
        if (Interlocked.Exchange(ref _waiting, 1) == 0) _signal.Release();
    }

    /// <summary>Ends the loop once the work in hand is done: nothing is worked on after it, so whoever owns the files the work writes may take them away.</summary>
    public void Dispose()
    {
        _end.Cancel();
        _run.Wait();
    }

    private async Task RunAsync(Func<CancellationToken, Task> work)
    {
        while (!_end.IsCancellationRequested)
        {
            try
            {
                await _signal.WaitAsync(_end.Token);
                Volatile.Write(ref _waiting, 0);
                await work(_end.Token);
            }
            catch (OperationCanceledException)
            {
                // Overtaken, or the end.
            }
        }
    }
}
