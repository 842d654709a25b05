using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Cli;

/// <summary>What the command line asks for in place of what the job says; null: as the job has it.</summary>
/// <param name="Paper">Paper size.</param>
/// <param name="Printer">Name of a measured printer; without one the printer prints true.</param>
/// <param name="Kerf">Full width of the cut.</param>
/// <param name="Dxf">Version of the DXF.</param>
internal sealed record JobChanges(string? Paper = null, string? Printer = null, string? Kerf = null, string? Dxf = null)
{
    private const string KerfMend = "Write a number in the units of the job, or a length with its unit, such as 0.2mm.";

    /// <summary>The job as it is.</summary>
    public static JobChanges None { get; } = new();

    private DxfVersion? Version => CuttingReader.DxfWords.Where(w => w.Word == Dxf).Select(w => (DxfVersion?)w.Version).FirstOrDefault();

    /// <summary>True if the options can be read, whatever the job says; if not, every fault is on standard error.</summary>
    public bool AreWords(Screen screen)
    {
        bool length = Kerf is null || ShopLength.Parse(Kerf, LengthUnit.Millimetre).IsLength, version = Dxf is null || Version is not null;
        if (!length) FaultText.Write(screen.Error, "--kerf", $"“{Kerf}” is no length.", KerfMend);
        if (!version) FaultText.Write(screen.Error, "--dxf", $"There is no version of DXF called “{Dxf}” here.", "Write r2000, or r12 for an old machine.");
        return length && version;
    }

    /// <summary>The changed job; null, with every fault on standard error, if it cannot be so. The options are words that can be read.</summary>
    /// <param name="job">As read.</param>
    /// <param name="printers">The measured printers.</param>
    /// <param name="screen">Where faults go.</param>
    public Job? On(Job job, PrinterStore printers, Screen screen)
    {
        bool sound = true;
        void Refuse(string place, string problem, string mend)
        {
            sound = false;
            FaultText.Write(screen.Error, place, problem, mend);
        }
        Job changed = job with { Paper = OnPaper(job, printers, Refuse), Cutting = job.Cutting.With(KerfIn(job, Refuse), Version) };
        return sound ? changed : null;
    }

    private PaperSpec OnPaper(Job job, PrinterStore printers, Action<string, string, string> refuse)
    {
        PaperSpec paper = job.Paper;
        if (Paper is not null)
        {
            (PaperSpec? sized, string problem, string mend) = PaperText.On(Paper, paper, job.Units);
            if (sized is null) refuse("--paper", problem, mend);
            paper = sized ?? paper;
        }
        if (Printer is null) return paper;
        (ImmutableArray<PrinterScale> known, OutputFault? fault) = printers.Read();
        PrinterScale? printer = PrinterStore.Find(known, Printer);
        if (fault is not null) refuse(fault.Path, fault.Message, fault.Mend);
        else if (printer is null)
        {
            refuse("--printer", $"No printer called “{Printer}” was measured on this machine.",
                known.IsEmpty ? "Print and measure a page first: surfaceunroll page-test." : $"Measured are: {string.Join(", ", known.Select(p => p.Name))}. For another one: surfaceunroll page-test.");
        }
        return paper with { Printer = printer };
    }

    private double? KerfIn(Job job, Action<string, string, string> refuse)
    {
        if (Kerf is null) return null;
        double kerf = ShopLength.Parse(Kerf, job.Units).Millimetres;
        if (kerf is < 0 or > CuttingSpec.WidestKerf) refuse("--kerf", $"{Kerf} is no width of a cut from 0 to {CuttingSpec.WidestKerf:0} mm.", KerfMend);
        return kerf;
    }
}
