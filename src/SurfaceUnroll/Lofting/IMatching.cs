using System.Collections.Immutable;

namespace SurfaceUnroll.Lofting;

/// <summary>A rule that says which place on the rear an element line from each place on the front goes to.</summary>
internal interface IMatching
{
    /// <summary>Lines at every place where the matching may change its ways, from the first line to the last, in order.</summary>
    ImmutableArray<Match> Anchors { get; }

    /// <summary>A line between two lines, about half way.</summary>
    Match Between(Match left, Match right);
}
