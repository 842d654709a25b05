using System.Collections.Immutable;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Cli;

/// <summary>What the command <c>trace</c> was told, as written.</summary>
internal sealed record TraceWords(
    string Photo, string? Sheet, ImmutableArray<string> Corners, string? Marks, ImmutableArray<string> Edge, string? Follow, string? Tape, string? Units, string? Zero, bool Level, string? Out, string? Picture);

/// <summary>The command <c>trace</c>: measures an edge on a photo.</summary>
internal static class Tracing
{
    private static readonly InputFile PhotoInput = new(
        "photo", PhotoFile.LargestFile, ("This photo file is too large.", "Save it as a JPEG."), "Check the name.");

    private static readonly InputFile MarksInput = new(
        "table of marks", 1 << 20, ("This is no table of marks: it has more than a megabyte.", "Name a .csv file."), "Check the name.");

    /// <summary>Traces and writes the curve.</summary>
    public static int Run(TraceWords words, Screen screen)
    {
        var reading = TraceReading.Of(words);
        FaultText.WriteAll(screen.Error, reading.Faults.Select(f => (f.Place, f.Message, (string?)f.Mend)));
        if (!reading.Faults.IsEmpty || Reference(words, reading, screen) is not { } reference || PhotoInput.Read(words.Photo, screen) is not { } bytes) return ExitStatus.CannotUse;
        (GreyPhoto? photo, PhotoTrace? trace) = screen.WithProgress("Tracing", _ => Trace(bytes, reference, reading, words, screen));
        if (photo is null || trace is null) return ExitStatus.CannotUse;
        FaultText.WriteAll(screen.Error, trace.Findings.Where(f => f.Severity == Severity.Error).Select(f => (Place(words, f), f.Message, f.Mend)));
        if (trace.Curve is not { } curve)
        {
            // What else was seen may tell why.
            foreach (Notice f in trace.Findings.Where(f => f.Severity != Severity.Error)) FaultText.Doubt(screen.Error, Place(words, f), f.Message, f.Mend);
            return ExitStatus.CannotUse;
        }
        if (Write(words, reading, curve, photo, reference) is { } fault)
        {
            FaultText.Write(screen.Error, fault.Path, fault.Message, fault.OfTheMachine ? fault.Mend : "Name another file with --out.");
            return fault.OfTheMachine ? ExitStatus.Failed : ExitStatus.CannotUse;
        }
        TracingText.Write(screen, words, trace, reference, photo, reading.Units);
        return ExitStatus.Done;
    }

    private static PhotoReference? Reference(TraceWords words, TraceReading reading, Screen screen)
    {
        if (reading.Sheet is { } sheet) return sheet;
        if (MarksInput.Read(words.Marks!, screen) is not { } bytes) return null;
        MarksReading marks = MarksFile.Read(bytes, reading.Units, reading.Spread);
        FaultText.WriteAll(screen.Error, marks.Faults.Select(f => ($"{words.Marks}, {f.Where}", f.Message, f.Mend)));
        return marks.Marks;
    }

    private static (GreyPhoto?, PhotoTrace?) Trace(byte[] bytes, PhotoReference reference, TraceReading reading, TraceWords words, Screen screen)
    {
        PhotoReading read = PhotoFile.Read(bytes);
        if (read.Fault is { } fault) FaultText.Write(screen.Error, words.Photo, fault.Message, fault.Mend);
        return read.Photo is { } photo ? (photo, PhotoTracing.Trace(photo, reference, reading.Edge!, reading.Frame)) : default;
    }

    private static OutputFault? Write(TraceWords words, TraceReading reading, TracedCurve curve, GreyPhoto photo, PhotoReference reference)
    {
        string full = Path.GetFullPath(words.Out!), said = $"Traced on {Path.GetFileName(words.Photo)} by {(reading.Sheet is null ? Path.GetFileName(words.Marks) : words.Sheet)}";
        var table = new OutputFile(Path.GetFileName(full), TracedCsv.Write(curve, said, reading.Units == LengthUnit.Inch ? ShopLength.MillimetresPerInch : 1));
        if (words.Picture is null) return OutputFolder.Write(Path.GetDirectoryName(full) ?? full, [table]);
        string drawn = Path.GetFullPath(words.Picture);
        var picture = new OutputFile(Path.GetFileName(drawn), TracePicture.Write(photo, curve, reference));
        return Path.GetDirectoryName(drawn) == Path.GetDirectoryName(full)
            ? OutputFolder.Write(Path.GetDirectoryName(full) ?? full, [picture, table])
            : OutputFolder.Write(Path.GetDirectoryName(full) ?? full, [table]) ?? OutputFolder.Write(Path.GetDirectoryName(drawn) ?? drawn, [picture]);
    }

    private static string Place(TraceWords words, Notice fault) => fault.Where switch
    {
        "photo" => words.Photo,
        "edge" => "--edge",
        "corners" => "--corners",
        _ => words.Marks ?? fault.Where,
    };
}
