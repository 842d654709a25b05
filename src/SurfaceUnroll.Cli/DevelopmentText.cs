using System.Collections.Immutable;
using System.Globalization;
using Spectre.Console;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Cli;

/// <summary>Prints a development: verdicts, tables, notices, files and the usual cautions.</summary>
internal static class DevelopmentText
{
    private const string Cautions =
        "Before you cut, measure the check bars on the print, both ways. Cut edges are sharp; keep loose gloves out of rolls and drills; "
        + "zinc fume is poison: no heat or welding on coated sheet without extraction.";

    // The rest of the readings is in report.json.
    private const int MostReadings = 6;

    /// <summary>Exit status of a development that could be made.</summary>
    public static int Status(Development development, bool strict) =>
        strict && development.Panels.Any(p => p.Verdict == Verdict.PastTheLimit) ? ExitStatus.PastTheLimit : ExitStatus.Done;

    /// <summary>Verdict and table of every panel, then the joints, the sheets of stock and the notices.</summary>
    public static void Write(Screen screen, string path, Development development, JobReading reading)
    {
        screen.Out.WriteLine(development.Job.Name);
        foreach (PanelDevelopment panel in development.Panels)
        {
            if (screen.Rich) WriteRich(screen, panel, development.Job);
            else WritePlain(screen.Out, panel, development.Job);
            if (panel.Error is not { Readings.Length: > 1 } error) continue;
            screen.Out.WriteLine();
            screen.Out.WriteLine($"What the bands of {panel.Spec.Name} come from, the most first{(error.Readings.Length > MostReadings ? $", {MostReadings.ToString(CultureInfo.InvariantCulture)} of {error.Readings.Length.ToString(CultureInfo.InvariantCulture)} readings" : "")}:");
            (string[] headings, ImmutableArray<string[]> rows) = ErrorWords.Table(error, development.Job.Units, MostReadings);
            TextTable.Write(screen, headings, rows);
        }
        foreach (JointFit joint in development.Joints)
        {
            string heading = JointWords.Heading(joint, development.Job.Units);
            (string, string)[] rows = [.. JointWords.Rows(joint, JointWords.Marks(joint, development.Panels), development.Job.Units)];
            if (screen.Rich) WriteTable(screen, heading, joint.Fits ? "" : "does not fit", "red", rows);
            else WriteRows(screen.Out, heading, rows);
        }
        if (development.Nest is { } nest)
        {
            screen.Out.WriteLine();
            screen.Out.WriteLine(NestWords.Summary(nest, development.Job.Units));
        }
        foreach (BuiltCheck check in development.Built)
        {
            screen.Out.WriteLine();
            screen.Out.WriteLine($"{check.Panel} as built");
            (string[] headings, ImmutableArray<string[]> rows) = BuiltWords.Table(check, development.Job.Units);
            TextTable.Write(screen, headings, rows);
            foreach (string sentence in BuiltWords.Sentences(check, development.Panels.First(p => p.Spec.Name == check.Panel), development.Job.Units)) screen.Out.WriteLine(sentence);
        }
        foreach (Notice notice in development.Notices)
        {
            (int line, int column) = reading.Locate(notice.Where);
            string weight = notice.Severity == Severity.Warning ? "warning" : "note";
            FaultText.Write(screen.Out, string.Create(CultureInfo.InvariantCulture, $"{path}:{line}:{column}"), $"{weight}: {notice.Message}", notice.Mend);
        }
    }

    /// <summary>Files that were written, and the cautions.</summary>
    public static void WriteFiles(Screen screen, string folder, ImmutableArray<OutputFile> files, Development development)
    {
        screen.Out.WriteLine();
        screen.Out.WriteLine($"Written to {folder}: {string.Join(", ", files.Select(f => f.Name))}");
        foreach (OutputFile file in files.Where(f => f.Note is not null)) screen.Out.WriteLine($"{file.Name}: {file.Note}");
        screen.Out.WriteLine(Cautions);
        foreach (string caution in ShopCautions.Of(development)) screen.Out.WriteLine(caution);
    }

    private static void WritePlain(TextWriter to, PanelDevelopment panel, Job job) =>
        WriteRows(to, $"{panel.Spec.Name}: {ReportJson.Words(panel.Verdict)}", [.. PanelRows.Of(panel, job)]);

    private static void WriteRows(TextWriter to, string heading, (string Label, string Value)[] rows)
    {
        int width = rows.Max(r => r.Label.Length);
        to.WriteLine();
        to.WriteLine(heading);
        foreach ((string label, string value) in rows)
        {
            to.WriteLine($"  {label.PadRight(width)}  {value}");
        }
    }

    private static void WriteRich(Screen screen, PanelDevelopment panel, Job job)
    {
        string colour = panel.Verdict switch { Verdict.BendsOnly => "green", Verdict.NeedsStretching => "yellow", _ => "red" };
        WriteTable(screen, panel.Spec.Name, ReportJson.Words(panel.Verdict), colour, PanelRows.Of(panel, job));
    }

    private static void WriteTable(Screen screen, string heading, string verdict, string colour, IEnumerable<(string Label, string Value)> rows)
    {
        var table = new Table { Border = TableBorder.Rounded };
        table.AddColumn(new TableColumn($"[bold]{Markup.Escape(heading)}[/]"));
        table.AddColumn(new TableColumn($"[{colour}]{verdict}[/]"));
        foreach ((string label, string value) in rows)
        {
            table.AddRow(Markup.Escape(label), Markup.Escape(value));
        }
        screen.Terminal.Write(table);
    }
}
