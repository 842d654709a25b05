using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>A job as it stands on the bench at one moment.</summary>
/// <param name="Text">The text of its file, with the last key pressed.</param>
/// <param name="Version">Counts the changes.</param>
public sealed record DeskState(JobText Text, long Version)
{
    /// <summary>What is to be known of <see cref="Text"/> or, as far as that cannot be developed, of <see cref="Development"/>.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>The last that could be made; null if none yet.</summary>
    public Development? Development { get; init; }

    /// <summary>Version of the text that <see cref="Development"/> was made of.</summary>
    public long Developed { get; init; } = -1;

    /// <summary>Version of the text that was last read and, if it could be, developed.</summary>
    public long Looked { get; init; } = -1;

    /// <summary>How the patterns lie on paper, in the order of the panels; empty until that is known.</summary>
    public ImmutableArray<TilePlan> Papers { get; init; } = [];

    /// <summary>What is being worked on; null if nothing.</summary>
    public string? Working { get; init; }

    /// <summary>The work on this version was stopped by hand.</summary>
    public bool Stopped { get; init; }

    /// <summary>A point is held and moved: the next change is a moment away.</summary>
    public bool Dragging { get; init; }

    /// <summary>There is a change to undo.</summary>
    public bool CanUndo { get; init; }

    /// <summary>There is an undone change to bring back.</summary>
    public bool CanRedo { get; init; }

    /// <summary>Version of the text that stands in the file.</summary>
    public long Saved { get; init; }

    /// <summary>Why the file could not be written; null if it was.</summary>
    public string? SaveFault { get; init; }

    /// <summary>What another program made of the file, where both changed the same place; null if there is nothing to ask.</summary>
    public string? Theirs { get; init; }

    /// <summary>Something that happened and should be said once, such as that the file was changed by another program.</summary>
    public string? News { get; init; }

    /// <summary>Nothing is in the way of showing and printing the job as its text has it.</summary>
    public bool IsSound => Development is not null && Developed == Version;

    /// <summary>The same, with what the errors of its readings do to the edges: the files can be made.</summary>
    public bool IsWhole => IsSound && !Development!.ErrorsAwaited;

    /// <summary>Faults that keep the job from being developed.</summary>
    public IEnumerable<Finding> Faults => Findings.Where(f => f.Severity == Severity.Error);
}
