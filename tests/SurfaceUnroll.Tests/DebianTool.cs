using System.Diagnostics;

namespace SurfaceUnroll.Tests;

/// <summary>Programs of the system that read our files back. Installed when that can be done; else the test is skipped, but never under CI.</summary>
internal static class DebianTool
{
    private static readonly Lock Installing = new();

    /// <summary>Runs a program of a Debian package and gives its exit status and standard output.</summary>
    /// <param name="package">Package that brings it.</param>
    /// <param name="probe">Command that succeeds if the package is there.</param>
    /// <param name="program">Program, then its arguments.</param>
    public static string Run(string package, string[] probe, params string[] program)
    {
        Require(package, probe);
        (int status, string output) = Start(program);
        Assert.True(status == 0, $"{program[0]} ended with {status}: {output}");
        return output;
    }

    private static void Require(string package, string[] probe)
    {
        lock (Installing)
        {
            if (Works(probe)) return;
            if (OperatingSystem.IsLinux() && Environment.UserName == "root" && Works(["apt-get", "--version"]))
            {
                Works(["apt-get", "update", "-qq"]);
                Works(["apt-get", "install", "-y", "-qq", package]);
                if (Works(probe)) return;
            }
        }
        Assert.False(Environment.GetEnvironmentVariable("CI") == "true", $"{package} is missing and could not be installed.");
        Skip.If(true, $"{package} is not installed.");
    }

    private static bool Works(string[] command)
    {
        try
        {
            return Start(command).Status == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static (int Status, string Output) Start(string[] command)
    {
        var start = new ProcessStartInfo(command[0], command[1..]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + error.GetAwaiter().GetResult());
    }
}
