using Spectre.Console;

namespace SurfaceUnroll.Cli;

/// <summary>Where the program writes.</summary>
/// <param name="Out">Standard output.</param>
/// <param name="Error">Standard error.</param>
/// <param name="Rich">Standard output is a terminal: colours, frames and a progress line. Otherwise plain text.</param>
internal sealed record Screen(TextWriter Out, TextWriter Error, bool Rich)
{
    private readonly Lazy<IAnsiConsole> _console = new(() => AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Out) }));

    /// <summary>The real one. Plain where output is piped, or where the terminal says that it knows no control codes.</summary>
    public static Screen OfConsole()
    {
        // Windows would turn ° and × into question marks.
        if (OperatingSystem.IsWindows()) Console.OutputEncoding = System.Text.Encoding.UTF8;
        return new Screen(Console.Out, Console.Error, !Console.IsOutputRedirected && Environment.GetEnvironmentVariable("TERM") != "dumb");
    }

    /// <summary>Draws something of Spectre.Console; for <see cref="Rich"/> only.</summary>
    public IAnsiConsole Terminal => _console.Value;

    /// <summary>Runs work while a line tells how far it is; without a word where output is piped.</summary>
    public T WithProgress<T>(string first, Func<IProgress<string>, T> work)
    {
        if (!Rich) return work(new StepLine(_ => { }));
        return Terminal.Status().Start(Markup.Escape(first), context => work(new StepLine(step => context.Status(Markup.Escape(step)))));
    }

    // Progress<T> would report on another thread, later than the step it speaks of.
    private sealed class StepLine(Action<string> show) : IProgress<string>
    {
        public void Report(string value) => show(value + " …");
    }
}
