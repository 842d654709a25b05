using System.Diagnostics;
using System.Globalization;
using SurfaceUnroll.Tests.Photos;

namespace SurfaceUnroll.Benchmarks.Photos;

/// <summary>Traces many photos of a known scene and prints how far the curves are off, and how often the stated error covers that.</summary>
internal static class PhotoTrials
{
    private static readonly string[] Names = ["sheet of A4", "eight marks", "four taped marks"];

    public static int Run(int count, int width)
    {
        var clock = Stopwatch.StartNew();
        TrialError[][] errors = [.. Enumerable.Range(0, count).Select(i =>
        {
            var trial = new StudioTrial(1000 + i, width);
            return trial.Errors(trial.Sheet(), trial.Marks(), trial.Taped());
        })];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} photos of {width} by {width * 3 / 4} pixels, {clock.Elapsed.TotalSeconds / count:F2} s each with drawing them"));
        Console.WriteLine("reference          covered, %   true error, mm: median    95 %   worst   stated: median");
        for (int r = 0; r < Names.Length; r++)
        {
            double[] real = [.. errors.Select(e => e[r].True).Order()], stated = [.. errors.Select(e => e[r].Stated).Order()];
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{Names[r],-17}  {100.0 * errors.Count(e => e[r].True <= e[r].Stated) / count,10:F1}   {real[count / 2],22:F3}  {real[(int)(0.95 * (count - 1))],6:F3}  {real[^1],6:F3}   {stated[count / 2],14:F3}"));
        }
        return 0;
    }
}
