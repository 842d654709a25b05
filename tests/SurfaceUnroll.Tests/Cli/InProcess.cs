using SurfaceUnroll.Cli;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Cli;

/// <summary>Runs the command line without a process of its own.</summary>
internal static class InProcess
{
    internal sealed record Result(int Status, string Out, string Error);

    public static Result Run(params string[] arguments) => Run(null, arguments);

    public static Result Run(Pipeline? pipeline, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int status = CommandLine.Run(arguments, new Screen(output, error, Rich: false), pipeline);
        return new Result(status, output.ToString(), error.ToString());
    }

    /// <summary>Steps that give a development made by hand, whatever the job file says.</summary>
    public static Pipeline Giving(Development development, params OutputFile[] files) =>
        new((_, _) => new JobReading(development.Job, []), (_, _) => development, _ => [.. files]);
}
