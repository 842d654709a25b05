using System.Collections.Immutable;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>The states that a job went through: those before the present one, and those that were undone.</summary>
/// <param name="Before">To undo to, the last one last.</param>
/// <param name="After">To bring back, the next one last.</param>
/// <param name="Strand">What the last change belonged to; null if the next one starts anew.</param>
/// <param name="When">Time of the last change.</param>
/// <remarks>They are kept as plain text: a long day has thousands of them, and only one that is gone back to is looked into again.</remarks>
internal sealed record UndoLine(ImmutableStack<string> Before, ImmutableStack<string> After, string? Strand, DateTime When)
{
    // Keys pressed one after another in one field are one step.
    private static readonly TimeSpan Together = TimeSpan.FromSeconds(2);

    public static UndoLine Start() => new([], [], null, default);

    /// <summary>The change goes on with the last one.</summary>
    public bool GoesOn(string? strand, DateTime now) => strand is not null && strand == Strand && !Before.IsEmpty
        && (now - When < Together || IsDrag(strand));

    /// <summary>The strand is a point that is held.</summary>
    public static bool IsDrag(string? strand) => strand?.StartsWith(JobDesk.Drag, StringComparison.Ordinal) ?? false;

    /// <summary>After a change from a text.</summary>
    public UndoLine Changed(JobText from, string? strand, DateTime now) => new(GoesOn(strand, now) ? Before : Before.Push(from.Text), [], strand, now);

    /// <summary>The text before the last change, or null.</summary>
    public (UndoLine Line, JobText Text)? Undone(JobText from) =>
        Before.IsEmpty ? null : (new UndoLine(Before.Pop(out string text), After.Push(from.Text), null, default), JobText.Of(text));

    /// <summary>The text that was undone last, or null.</summary>
    public (UndoLine Line, JobText Text)? Redone(JobText from) =>
        After.IsEmpty ? null : (new UndoLine(Before.Push(from.Text), After.Pop(out string text), null, default), JobText.Of(text));
}
