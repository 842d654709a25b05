using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>The measured printer that this window prints on. It is no part of the job: another shop has other printers.</summary>
public sealed class ChosenPrinter
{
    /// <summary>How it prints; null: true.</summary>
    public PrinterScale? Scale { get; set; }
}
