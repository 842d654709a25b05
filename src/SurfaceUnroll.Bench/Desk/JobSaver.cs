using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Files.Output;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>Keeps the file of a desk up with its text, and the desk up with its file.</summary>
/// <remarks>
/// Before anything is written the file is looked at. Where another program changed it, the changes made here since are made in its text too, if they are of other
/// places; else the desk asks. So neither side is ever overwritten unseen.
/// </remarks>
internal sealed class JobSaver : IDisposable
{
    // A drag is saved as it goes, but not with every move: that would slow down what it is to show.
    private static readonly TimeSpan Breath = TimeSpan.FromMilliseconds(400);

    private readonly JobDesk _desk;
    private readonly Loop _loop;
    private readonly Timer _look;
    private string _onDisk;
    private long _wrote;
    private volatile TaskCompletionSource _quiet = new();

    /// <summary>Keeps a desk's file.</summary>
    /// <param name="desk">The desk.</param>
    /// <param name="history">Where earlier states are kept.</param>
    /// <param name="text">What stands in the file.</param>
    public JobSaver(JobDesk desk, JobHistory history, string text)
    {
        _desk = desk;
        _onDisk = text;
        History = history;
        History.Keep(text);
        _loop = new Loop(_ =>
        {
            if (!_desk.State.Dragging || Stopwatch.GetElapsedTime(_wrote) > Breath) Look();
            return Task.CompletedTask;
        });
        // Not every file system tells of changes, so the file is looked at.
        _look = new Timer(_ => _loop.Signal(), null, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(1));
    }

    public JobHistory History { get; }

    public void Signal() => _loop.Signal();

    /// <summary>From now on this is what is known to stand in the file.</summary>
    public void Accept(string theirs) => _onDisk = theirs;

    public async Task QuietAsync()
    {
        while (_desk.State is { SaveFault: null, Theirs: null } state && state.Saved != state.Version)
        {
            Task quiet = _quiet.Task;
            _loop.Signal();
            await quiet.WaitAsync(TimeSpan.FromSeconds(10));
        }
    }

    public void Dispose()
    {
        _look.Dispose();
        _loop.Dispose();
        Look();
    }

    private void Look()
    {
        lock (_loop)
        {
            Follow();
            Write();
            TaskCompletionSource quiet = _quiet;
            _quiet = new TaskCompletionSource();
            quiet.SetResult();
        }
    }

    // Takes over what another program made of the file.
    private void Follow()
    {
        if (Read() is not { } disk || disk == _onDisk) return;
        (DeskState state, ImmutableArray<JobEdit>? edits) = _desk.Unsaved();
        if (state.Theirs is not null)
        {
            if (state.Theirs != disk) _desk.Update(s => s with { Theirs = disk });
            return;
        }
        if (disk == state.Text.Text || (edits is { } row && row.IsEmpty))
        {
            _onDisk = disk;
            if (disk == state.Text.Text) return;
            History.Keep(disk);
            _desk.Adopt(disk, "The job file was changed by another program; this is how it stands now. Undo brings back what stood here.", state.Version);
            _desk.WasSaved(_desk.State.Version);
            return;
        }
        if (edits is { } changes && Merge.Of(_onDisk, disk, changes) is { } merged)
        {
            _onDisk = disk;
            _desk.Adopt(merged, "The job file was changed by another program in other places; both changes stand here now.", state.Version);
            return;
        }
        _desk.Update(s => s with { Theirs = disk });
    }

    private void Write()
    {
        DeskState state = _desk.State;
        if (state.Theirs is not null || state.Saved == state.Version) return;
        string text = state.Text.Text;
        if (text != _onDisk)
        {
            var file = new OutputFile(Path.GetFileName(_desk.Path), Encoding.UTF8.GetBytes(text));
            if (OutputFolder.Write(Path.GetDirectoryName(_desk.Path)!, [file]) is { } fault)
            {
                if (state.SaveFault != fault.Message) _desk.Update(s => s with { SaveFault = fault.Message });
                return;
            }
            (_onDisk, _wrote) = (text, Stopwatch.GetTimestamp());
            History.Keep(text);
        }
        _desk.WasSaved(state.Version);
    }

    private string? Read()
    {
        try
        {
            return File.ReadAllText(_desk.Path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null; // Gone or locked: it is written again with the next change.
        }
    }
}
