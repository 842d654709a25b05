namespace SurfaceUnroll.Bench.Serving;

/// <summary>The measured printer that this window prints on. It is no part of the job: another shop has other printers.</summary>
public sealed class ChosenPrinter
{
    /// <summary>Its name; null: one that prints true.</summary>
    public string? Name { get; set; }
}
