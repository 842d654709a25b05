using Microsoft.AspNetCore.Components;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Bench.Pages;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Fields;

/// <summary>A field for one value of the job's text. Every key goes into the text as typed; what cannot be read is told at the field.</summary>
public abstract class FieldBase : DeskView
{
    private string? _typed;

    /// <summary>Path of the value.</summary>
    [Parameter]
    [EditorRequired]
    public required string Path { get; set; }

    /// <summary>What it is called.</summary>
    [Parameter]
    [EditorRequired]
    public required string Label { get; set; }

    /// <summary>The label is for those who cannot see the table around it.</summary>
    [Parameter]
    public bool Bare { get; set; }

    /// <summary>An empty field takes the value out of the job.</summary>
    [Parameter]
    public bool Optional { get; set; }

    /// <summary>Shown faintly in an empty field: what holds then.</summary>
    [Parameter]
    public string? Otherwise { get; set; }

    /// <summary>One line on how to measure or choose it.</summary>
    [Parameter]
    public string? Help { get; set; }

    /// <summary>Id of the input.</summary>
    protected internal string Id => FieldIds.Of(Path);

    /// <summary>What the input shows: what is being typed, else what the job holds.</summary>
    protected string Value => _typed ?? Held;

    /// <summary>What the job holds, as a person would type it.</summary>
    protected virtual string Held => State.Text.Shown(Path);

    /// <summary>What there is to know of the value.</summary>
    protected internal IEnumerable<Finding> Found => State.Findings.At(Path);

    /// <summary>It cannot be used as it stands.</summary>
    protected internal bool IsBad => Found.Any(f => f.Severity == Severity.Error);

    /// <summary>Ids of the texts that describe the input; null if none.</summary>
    protected string? DescribedBy => (Found.Any(), Help) switch { (true, _) => Id + "-found", (_, not null) => Id + "-help", _ => null };

    /// <summary>Takes what was typed.</summary>
    /// <remarks>Inputs bind to it: a bound input alone keeps what is typed faster than the answers come.</remarks>
    protected void Typed(string? typed)
    {
        _typed = typed ?? "";
        Desk.Apply(Optional && string.IsNullOrWhiteSpace(_typed) ? JobEdit.Remove(Path) : Edit(_typed), Path);
    }

    /// <summary>The field is left: the next change is a step of its own.</summary>
    protected void Left()
    {
        _typed = null;
        Desk.EndStrand();
    }

    /// <summary>The change that puts what was typed into the job.</summary>
    protected virtual JobEdit Edit(string typed) => JobEdit.Type(Path, typed);
}
