using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Cli;

/// <summary>Says what is wrong with a command line, and what would be right.</summary>
internal static class CommandLineFaults
{
    /// <summary>Writes every fault to standard error.</summary>
    /// <returns><see cref="ExitStatus.CannotUse"/>.</returns>
    public static int Write(ParseResult parsed, string[] arguments, Screen screen)
    {
        Command command = parsed.CommandResult.Command;
        string usage = Usage(command);
        bool written = false;
        foreach (string word in parsed.UnmatchedTokens)
        {
            (string message, string mend) = Unknown(word, command, usage);
            FaultText.Write(screen.Error, "surfaceunroll", message, mend);
            written = true;
        }
        foreach (ParseError error in written ? [] : parsed.Errors)
        {
            FaultText.Write(screen.Error, "surfaceunroll", Reworded(error, command), usage);
            written = true;
        }
        return ExitStatus.CannotUse;
    }

    private static string Usage(Command command)
    {
        string help = HelpText.Of(command.Name);
        return command is RootCommand ? "See surfaceunroll --help." : $"Write: {help[..help.IndexOf('\n', StringComparison.Ordinal)].Trim()}";
    }

    private static (string Message, string Mend) Unknown(string word, Command command, string usage)
    {
        bool option = word.StartsWith('-');
        IEnumerable<string> known = option
            ? command.Options.SelectMany(o => o.Aliases.Append(o.Name)).Where(n => n.StartsWith("--", StringComparison.Ordinal))
            : command.Subcommands.Select(c => c.Name);
        string? meant = NearestWord.To(word, known);
        string message = (option, command is RootCommand) switch
        {
            (true, true) => $"There is no option “{word}”.",
            (true, false) => $"“{command.Name}” has no option “{word}”.",
            (false, true) => $"There is no command “{word}”.",
            (false, false) => $"“{word}” is one word too many for “{command.Name}”.",
        };
        return (message, meant is null ? usage : $"Did you mean “{meant}”? {usage}");
    }

    private static string Reworded(ParseError error, Command command) => error.SymbolResult switch
    {
        OptionResult { Option: Option<int>, Tokens.Count: 1 } option =>
            string.Create(CultureInfo.InvariantCulture, $"“{option.Option.Name}” needs a whole number from 1 to {CommandLine.MostRepeats}, not “{option.Tokens[0].Value}”."),
        OptionResult option => $"“{option.Option.Name}” needs one value and no more.",
        ArgumentResult argument => $"The name of the file is missing: {argument.Argument.Name}.",
        _ when command.Arguments.Count > 0 => $"The name of the file is missing: {command.Arguments[0].Name}.",
        _ => error.Message,
    };
}
