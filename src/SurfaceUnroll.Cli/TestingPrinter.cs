using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>page-test</c>: prints the page, or takes what was measured on it.</summary>
internal static class TestingPrinter
{
    private const string DefaultFile = "page-test.pdf", DefaultName = "printer";

    /// <summary>Runs the command.</summary>
    /// <param name="paper">Paper size.</param>
    /// <param name="file">PDF to write; null for one in this folder.</param>
    /// <param name="measured">Two or four measures; empty: the page is written.</param>
    /// <param name="name">Of the printer; null for one that has no other name.</param>
    /// <param name="screen">Where to write.</param>
    /// <param name="printers">Where measures are kept.</param>
    public static int Run(string? paper, string? file, ImmutableArray<string> measured, string? name, Screen screen, PrinterStore printers)
    {
        PaperSpec spec = PaperSpec.Default;
        if (paper is not null)
        {
            (PaperSpec? sized, string problem, string mend) = PaperText.On(paper, spec, LengthUnit.Millimetre);
            if (sized is null) return Refuse(screen, "--paper", problem, mend);
            spec = sized;
        }
        return measured.IsEmpty ? WritePage(spec, file ?? DefaultFile, screen) : Take(spec, measured, string.IsNullOrWhiteSpace(name) ? DefaultName : name.Trim(), screen, printers);
    }

    private static int WritePage(PaperSpec paper, string file, Screen screen)
    {
        string full = Path.GetFullPath(file);
        byte[] content = PrinterTestPdf.Write(paper);
        if (OutputFolder.Write(Path.GetDirectoryName(full) ?? full, [new OutputFile(Path.GetFileName(full), content)]) is { } fault) return Refuse(screen, fault);
        screen.Out.WriteLine($"Wrote {file}. Print it at 100 %, measure both bars and, if you can, both diagonals, and type what you measured:");
        screen.Out.WriteLine("surfaceunroll page-test --measured ACROSS ALONG [UP DOWN] --name \"shop printer\"" + (paper.Size == PaperSize.A4 ? "" : $" --paper \"{paper.Size.Name}\""));
        return ExitStatus.Done;
    }

    private static int Take(PaperSpec paper, ImmutableArray<string> measured, string name, Screen screen, PrinterStore printers)
    {
        var measures = PrinterMeasures.Read(name, paper, measured, "Write: --measured ACROSS ALONG, or --measured ACROSS ALONG UP DOWN.");
        foreach ((string message, string? mend) in measures.Faults) FaultText.Write(screen.Error, "--measured", message, mend);
        if (measures.Scale is not { } scale) return ExitStatus.CannotUse;
        if (printers.Keep(scale) is { } fault) return Refuse(screen, fault);
        screen.Out.WriteLine($"Kept as “{name}”: {measures.Said}");
        if (measures.Doubt is var (doubt, remedy)) FaultText.Write(screen.Out, "--measured", $"note: {doubt}", remedy);
        screen.Out.WriteLine($"Patterns that come out true of it: surfaceunroll develop JOB.json --printer \"{name}\"");
        return ExitStatus.Done;
    }

    private static int Refuse(Screen screen, OutputFault fault)
    {
        FaultText.Write(screen.Error, fault.Path, fault.Message, fault.Mend);
        return fault.OfTheMachine ? ExitStatus.Failed : ExitStatus.CannotUse;
    }

    private static int Refuse(Screen screen, string place, string problem, string mend)
    {
        FaultText.Write(screen.Error, place, problem, mend);
        return ExitStatus.CannotUse;
    }
}
