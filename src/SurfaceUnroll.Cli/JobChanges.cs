using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Cli;

/// <summary>What the command line asks for in place of what the job says.</summary>
/// <param name="Paper">Paper size; null: the job's.</param>
/// <param name="Printer">Name of a measured printer; null: one that prints true.</param>
internal sealed record JobChanges(string? Paper = null, string? Printer = null)
{
    /// <summary>The job as it is.</summary>
    public static JobChanges None { get; } = new();

    /// <summary>The changed job; null, with every fault on standard error, if it cannot be so.</summary>
    /// <param name="job">As read.</param>
    /// <param name="printers">The measured printers.</param>
    /// <param name="screen">Where faults go.</param>
    public Job? On(Job job, PrinterStore printers, Screen screen)
    {
        PaperSpec paper = job.Paper;
        bool sound = true;
        if (Paper is not null)
        {
            (PaperSize? size, string problem, string mend) = PaperText.Read(Paper, job.Units);
            if (size is not null)
            {
                paper = paper with { Size = size };
                if (PaperRoom.Fault(paper, mm => ShopLength.Print(mm, job.Units)) is var (_, room, more)) (size, problem, mend) = (null, room, more);
            }
            if (size is null) Refuse("--paper", problem, mend);
        }
        if (Printer is not null)
        {
            (ImmutableArray<PrinterScale> known, OutputFault? fault) = printers.Read();
            PrinterScale? printer = known.FirstOrDefault(p => PrinterStore.IsCalled(p, Printer));
            if (fault is not null) Refuse(fault.Path, fault.Message, fault.Mend);
            else if (printer is null)
            {
                Refuse("--printer", $"No printer called “{Printer}” was measured on this machine.",
                    known.IsEmpty ? "Print and measure a page first: surfaceunroll page-test." : $"Measured are: {string.Join(", ", known.Select(p => p.Name))}. For another one: surfaceunroll page-test.");
            }
            paper = paper with { Printer = printer };
        }
        return sound ? job with { Paper = paper } : null;

        void Refuse(string place, string problem, string mend)
        {
            sound = false;
            FaultText.Write(screen.Error, place, problem, mend);
        }
    }
}
