using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Globalization;
using SurfaceUnroll.Files.Report;

namespace SurfaceUnroll.Cli;

/// <summary>Takes the command line apart and runs the command.</summary>
internal static class CommandLine
{
    // More tell nothing new.
    internal const int MostRepeats = 10_000;

    /// <summary>Runs the program.</summary>
    /// <param name="arguments">Without the program's own name.</param>
    /// <param name="screen">Where to write.</param>
    /// <param name="pipeline">Steps to run; the real ones by default.</param>
    /// <returns>An <see cref="ExitStatus"/>.</returns>
    public static int Run(string[] arguments, Screen screen, Pipeline? pipeline = null)
    {
        try
        {
            ParseResult parsed = Build(screen, pipeline ?? Pipeline.Real).Parse(arguments);
            if (parsed.Errors.Count > 0 && parsed.Action is not (HelpAction or TextAction)) return CommandLineFaults.Write(parsed, arguments, screen);
            return parsed.Invoke(new InvocationConfiguration { Output = screen.Out, Error = screen.Error, EnableDefaultExceptionHandler = false });
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            FaultText.Write(screen.Error, "surfaceunroll", $"Something went wrong that should not: {e.GetType().Name}: {e.Message}",
                "This is a mistake in the program. Please report it with the job file.");
            return ExitStatus.Failed;
        }
    }

    private static RootCommand Build(Screen screen, Pipeline pipeline)
    {
        var root = new RootCommand("Flat patterns at 1:1 from measured profiles of sheet-metal covers.");
        root.Add(DevelopCommand(screen, pipeline));
        root.Add(CheckCommand(screen, pipeline));
        root.Add(FlattenCommand(screen));
        root.Add(TraceCommand(screen));
        root.Add(NewCommand(screen));
        root.Add(MaterialsCommand(screen));
        root.Add(PageTestCommand(screen, pipeline));
        root.Add(VerifyCommand(screen));
        root.Add(BenchCommand(screen));
        var schema = new Command("schema", "Print the JSON Schema of the job file.");
        schema.SetAction(_ => SchemaPrinting.Run(screen));
        root.Add(schema);
        root.SetAction(_ =>
        {
            screen.Error.WriteLine(HelpText.Of(""));
            return ExitStatus.CannotUse;
        });
        foreach (Option option in root.Options)
        {
            if (option is HelpOption) option.Action = new TextAction(screen, parsed => HelpText.Of(parsed.CommandResult.Command.Name));
            if (option is VersionOption) option.Action = new TextAction(screen, _ => ReportJson.Generator);
        }
        return root;
    }

    private static Command DevelopCommand(Screen screen, Pipeline pipeline)
    {
        Argument<string> job = new("JOB.json") { Description = "Job file." };
        Option<string?> folder = new("--out", "-o") { Description = "Folder to write into.", HelpName = "DIR" };
        Option<bool> strict = Strict();
        Option<string?> paper = Paper(), printer = new("--printer") { Description = "Measured printer to correct for.", HelpName = "NAME" };
        Option<string?> kerf = new("--kerf") { Description = "Full width of the cut.", HelpName = "LENGTH" };
        Option<string?> dxf = new("--dxf") { Description = "Version of the DXF.", HelpName = "r2000|r12" };
        var command = new Command("develop", "Write the pattern of every panel.") { job, folder, strict, paper, printer, kerf, dxf };
        command.SetAction(parsed => Developing.Run(
            parsed.GetRequiredValue(job), parsed.GetValue(folder), parsed.GetValue(strict),
            new JobChanges(parsed.GetValue(paper), parsed.GetValue(printer), parsed.GetValue(kerf), parsed.GetValue(dxf)), screen, pipeline));
        return command;
    }

    private static Command CheckCommand(Screen screen, Pipeline pipeline)
    {
        Argument<string> job = new("JOB.json") { Description = "Job file." };
        Option<bool> strict = Strict();
        var command = new Command("check", "Print verdicts and tables; write nothing.") { job, strict };
        command.SetAction(parsed => Checking.Run(parsed.GetRequiredValue(job), parsed.GetValue(strict), screen, pipeline));
        return command;
    }

    private static Command FlattenCommand(Screen screen)
    {
        Argument<string> mesh = new("MESH.obj") { Description = "Mesh file." };
        Option<string?> target = new("--out", "-o") { Description = "File to write.", HelpName = "OUT.obj" };
        Option<int> repeat = new("--repeat") { Description = "Timed runs.", HelpName = "N", DefaultValueFactory = _ => 1 };
        Option<bool> json = new("--json") { Description = "Print one JSON object." };
        repeat.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && !(int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count is >= 1 and <= MostRepeats)) result.AddError("out of range");
        });
        var command = new Command("flatten", "Lay a mesh flat.") { mesh, target, repeat, json };
        command.SetAction(parsed => LayingFlat.Run(
            parsed.GetRequiredValue(mesh), parsed.GetValue(target), parsed.GetValue(repeat), parsed.GetValue(json), screen));
        return command;
    }

    private static Command TraceCommand(Screen screen)
    {
        Argument<string> photo = new("PHOTO") { Description = "JPEG or PNG." };
        Option<string?> sheet = Text("--sheet", "SIZE"), marks = Text("--marks", "MARKS.csv"), follow = Text("--follow", "edge|line|taps"), tape = Text("--tape", "LENGTH"),
            units = Text("--units", "mm|in"), zero = Text("--zero", "ends|reference"), picture = Text("--picture", "FILE.png"), target = new("--out", "-o") { Description = "Table to write.", HelpName = "CURVE.csv" };
        Option<string[]> corners = Places("--corners"), edge = Places("--edge");
        Option<bool> level = new("--level") { Description = "Turn the curve so that both ends are at one height." };
        var command = new Command("trace", "Measure an edge on a photo.") { photo, sheet, corners, marks, edge, follow, tape, units, zero, level, target, picture };
        command.SetAction(parsed => Tracing.Run(
            new TraceWords(parsed.GetRequiredValue(photo), parsed.GetValue(sheet), [.. parsed.GetValue(corners) ?? []], parsed.GetValue(marks), [.. parsed.GetValue(edge) ?? []], parsed.GetValue(follow),
                parsed.GetValue(tape), parsed.GetValue(units), parsed.GetValue(zero), parsed.GetValue(level), parsed.GetValue(target), parsed.GetValue(picture)), screen));
        return command;

        static Option<string?> Text(string name, string value) => new(name) { HelpName = value };
        static Option<string[]> Places(string name) => new(name) { HelpName = "X,Y", Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = true };
    }

    private static Command NewCommand(Screen screen)
    {
        Argument<string> file = new("FILE.json") { Description = "File to write." };
        var command = new Command("new", "Write a commented starter job.") { file };
        command.SetAction(parsed => Starting.Run(parsed.GetRequiredValue(file), screen));
        return command;
    }

    private static Command MaterialsCommand(Screen screen)
    {
        // Names of several words need no quotes.
        Argument<string[]> name = new("NAME") { Description = "Material.", Arity = ArgumentArity.ZeroOrMore };
        var command = new Command("materials", "List the materials and their numbers.") { name };
        command.SetAction(parsed => MaterialPrinting.Run(string.Join(' ', parsed.GetValue(name) ?? []), screen));
        return command;
    }

    private static Command PageTestCommand(Screen screen, Pipeline pipeline)
    {
        Option<string?> paper = Paper(), file = new("--out", "-o") { Description = "PDF to write.", HelpName = "FILE.pdf" }, name = new("--name") { Description = "Name of the printer.", HelpName = "NAME" };
        Option<string[]> measured = new("--measured") { Description = "What was measured.", HelpName = "MM", Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = true };
        var command = new Command("page-test", "Measure how true a printer prints.") { paper, file, measured, name };
        command.SetAction(parsed => TestingPrinter.Run(
            parsed.GetValue(paper), parsed.GetValue(file), [.. parsed.GetValue(measured) ?? []], parsed.GetValue(name), screen, pipeline.Printers));
        return command;
    }

    private static Command VerifyCommand(Screen screen)
    {
        Argument<string> folder = new("DIR") { Description = "Folder of a developed job." };
        var command = new Command("verify", "Read the files back and compare them.") { folder };
        command.SetAction(parsed => Verifying.Run(parsed.GetRequiredValue(folder), screen));
        return command;
    }

    private static Command BenchCommand(Screen screen)
    {
        // What they mean is the bench's own business.
        Argument<string[]> rest = new("FOLDER") { Description = "Folder of the jobs, or a job; then options.", Arity = ArgumentArity.ZeroOrMore };
        var command = new Command("bench", "Open the layout bench in the browser.") { rest };
        command.TreatUnmatchedTokensAsErrors = false;
        command.SetAction(parsed => OpeningBench.Run([.. parsed.GetValue(rest) ?? [], .. parsed.UnmatchedTokens], screen));
        return command;
    }

    private static Option<string?> Paper() => new("--paper") { Description = "Paper to print on.", HelpName = "SIZE" };

    private static Option<bool> Strict() => new("--strict") { Description = "End with status 3 if a panel is past a limit." };

    // Prints a text of ours in place of the generated one.
    private sealed class TextAction(Screen screen, Func<ParseResult, string> text) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            screen.Out.WriteLine(text(parseResult));
            return ExitStatus.Done;
        }
    }
}
