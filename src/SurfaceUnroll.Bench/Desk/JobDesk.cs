using System.Collections.Immutable;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>One job on the bench: its text, changed by any number of windows, saved at once and developed as fast as it changes.</summary>
/// <remarks>
/// Every change is a change of the text, so whatever stands in a field, also what cannot be read yet, is in the file a moment later. Saving and developing are
/// loops of their own that take the newest text each time and skip what has been overtaken. Safe to call from any thread.
/// </remarks>
public sealed class JobDesk : IDisposable
{
    private readonly Lock _lock = new();
    private readonly JobSaver _saver;
    private readonly LiveDeveloper _developer;
    private readonly TimeProvider _clock;
    private UndoLine _line = UndoLine.Start();
    private ImmutableArray<(long Version, JobEdit? Edit)> _unsaved = [];

    internal JobDesk(string path, string text, TimeProvider clock)
    {
        Path = path;
        _clock = clock;
        State = new DeskState(JobText.Of(text), 0);
        _saver = new JobSaver(this, new JobHistory(path), text);
        _developer = new LiveDeveloper(this);
        _developer.Signal();
    }

    /// <summary>Strands that begin so are undone together however long they last, until they are ended.</summary>
    public const string Drag = "drag ";

    /// <summary>The job file.</summary>
    public string Path { get; }

    /// <summary>Name of the file without its extension.</summary>
    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    /// <summary>The job as it stands now.</summary>
    public DeskState State { get; private set; }

    /// <summary>States that were saved, the newest first.</summary>
    public JobHistory History => _saver.History;

    /// <summary>Raised after each change of <see cref="State"/>, on any thread.</summary>
    public event Action? Changed;

    /// <summary>Changes the text.</summary>
    /// <param name="edit">The change.</param>
    /// <param name="strand">Changes of one strand that follow each other within two seconds are undone together; null: one by itself.</param>
    public void Apply(JobEdit edit, string? strand = null)
    {
        lock (_lock)
        {
            JobText text = State.Text.With(edit);
            if (text.Text != State.Text.Text) Take(text, edit, strand);
        }
        Changed?.Invoke();
    }

    /// <summary>Puts another text in place of this one, for example an earlier one.</summary>
    /// <param name="text">The whole text.</param>
    /// <param name="news">What to say of it; null: nothing.</param>
    public void Replace(string text, string? news = null)
    {
        lock (_lock)
        {
            if (text != State.Text.Text) Take(JobText.Of(text), null, null);
            State = State with { News = news };
        }
        Changed?.Invoke();
    }

    /// <summary>Takes the last change back.</summary>
    public void Undo() => Step(_line.Undone);

    /// <summary>Brings back what was undone last.</summary>
    public void Redo() => Step(_line.Redone);

    /// <summary>Ends a strand: the next change is a step of its own.</summary>
    public void EndStrand()
    {
        lock (_lock)
        {
            _line = _line with { Strand = null };
            if (!State.Dragging) return;
            State = State with { Dragging = false };
        }
        _saver.Signal();
        Changed?.Invoke();
    }

    /// <summary>Stops the work that is going on; the last result stands.</summary>
    public void StopWork() => _developer.Stop();

    /// <summary>Takes up the work again.</summary>
    public void GoOn()
    {
        Update(s => s with { Stopped = false, Looked = -1 });
        _developer.Signal();
    }

    /// <summary>Answers the question what to keep where another program changed the same place of the file.</summary>
    /// <param name="mine">The text of the bench; otherwise that of the file, and the other can be undone to.</param>
    public void Settle(bool mine)
    {
        if (State.Theirs is not { } theirs) return;
        _saver.Accept(theirs);
        Update(s => s with { Theirs = null });
        if (mine) _saver.Signal();
        else Replace(theirs);
    }

    /// <summary>Forgets what was said once.</summary>
    public void Heard() => Update(s => s with { News = null });

    /// <summary>Looks whether another program changed the file.</summary>
    public void LookAtFile() => _saver.Signal();

    /// <summary>All that was changed stands in the file, or could not be written.</summary>
    public Task SavedAsync() => _saver.QuietAsync();

    /// <inheritdoc/>
    public void Dispose()
    {
        _developer.Dispose();
        _saver.Dispose();
    }

    internal void Update(Func<DeskState, DeskState> change)
    {
        lock (_lock) State = change(State);
        Changed?.Invoke();
    }

    // The edits that are not in the file yet; null where one of them is no edit but another text.
    internal (DeskState State, ImmutableArray<JobEdit>? Edits) Unsaved()
    {
        lock (_lock) return (State, _unsaved.Any(u => u.Edit is null) ? null : [.. _unsaved.Select(u => u.Edit!)]);
    }

    internal void WasSaved(long version)
    {
        lock (_lock)
        {
            _unsaved = _unsaved.RemoveAll(u => u.Version <= version);
            State = State with { Saved = version, SaveFault = null };
        }
        Changed?.Invoke();
    }

    /// <summary>The file was changed by another program, and what was changed here since is in this text too.</summary>
    internal void Adopt(string text, string news, long version)
    {
        lock (_lock)
        {
            if (State.Version != version) return; // Overtaken by a key: the next look at the file settles it.
            Take(JobText.Of(text), null, null);
            State = State with { News = news };
        }
        Changed?.Invoke();
    }

    private void Step(Func<JobText, (UndoLine Line, JobText Text)?> step)
    {
        lock (_lock)
        {
            if (step(State.Text) is not { } taken) return;
            UndoLine line = taken.Line;
            Take(taken.Text, null, null);
            _line = line;
            State = State with { CanUndo = !line.Before.IsEmpty, CanRedo = !line.After.IsEmpty };
        }
        Changed?.Invoke();
    }

    // Under the lock.
    private void Take(JobText text, JobEdit? edit, string? strand)
    {
        _line = _line.Changed(State.Text, strand, _clock.GetUtcNow().UtcDateTime);
        State = State with
        {
            Text = text,
            Version = State.Version + 1,
            CanUndo = true,
            CanRedo = false,
            Stopped = false,
            Dragging = UndoLine.IsDrag(strand),
        };
        _unsaved = _unsaved.Add((State.Version, edit));
        _saver.Signal();
        _developer.Signal();
    }
}
