using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>The measured printer that this window prints on, at first the one that was last chosen on this machine. It is no part of the job: another shop has other printers.</summary>
/// <param name="store">Where it is remembered.</param>
public sealed class ChosenPrinter(PrinterStore store)
{
    /// <summary>How it prints; null: true.</summary>
    public PrinterScale? Scale { get; private set; } = store.Chosen;

    /// <summary>Prints on another one, and remembers it as far as it can.</summary>
    public void Choose(PrinterScale? scale)
    {
        Scale = scale;
        store.Choose(scale?.Name);
    }

    /// <summary>As it is kept now; one that is kept no longer corrects nothing.</summary>
    public void LookAgain(IEnumerable<PrinterScale> known) => Scale = Scale is { } scale ? PrinterStore.Find([.. known], scale.Name) : null;
}
