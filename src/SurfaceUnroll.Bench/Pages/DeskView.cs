using Microsoft.AspNetCore.Components;
using SurfaceUnroll.Bench.Desk;

namespace SurfaceUnroll.Bench.Pages;

/// <summary>A part of the page that shows the job on the desk; it is drawn again with every change.</summary>
public abstract class DeskView : ComponentBase
{
    /// <summary>The desk, to change the job.</summary>
    [CascadingParameter]
    public required JobDesk Desk { get; set; }

    /// <summary>The job as it stands.</summary>
    [CascadingParameter]
    public required DeskState State { get; set; }

    /// <summary>The job is in inches.</summary>
    protected bool Inches => State.Text.Inches();
}
