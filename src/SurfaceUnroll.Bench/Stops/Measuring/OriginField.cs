using Microsoft.AspNetCore.Components;
using SurfaceUnroll.Bench.Fields;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>One number of a place that the job may leave out as a whole, which is 0 in every direction.</summary>
public sealed class OriginField : LengthField
{
    /// <summary>Path of the place.</summary>
    [Parameter]
    [EditorRequired]
    public required string Place { get; set; }

    /// <summary>Which of its numbers, from 0.</summary>
    [Parameter]
    [EditorRequired]
    public required int Axis { get; set; }

    /// <inheritdoc/>
    protected override JobEdit Edit(string typed) => State.Text.Find(Path) is not null
        ? base.Edit(typed)
        : JobEdit.Set(Place, $"[{string.Join(", ", Enumerable.Range(0, 3).Select(k => k == Axis ? JobPath.Typed(typed) : "0"))}]");
}
