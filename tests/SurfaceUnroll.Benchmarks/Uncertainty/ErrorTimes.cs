using System.Diagnostics;
using System.Globalization;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Benchmarks.Uncertainty;

/// <summary>What it takes to develop the twenty jobs, warm, as if their readings were exact, with their errors taken over from before, as the page does while a job is being changed, and with their errors worked out.</summary>
internal static class ErrorTimes
{
    private const int Runs = 5;

    public static int Run()
    {
        Console.WriteLine("job                            exact, ms  taken over, ms  worked out, ms");
        foreach ((string name, Job job) in ErrorCases.All)
        {
            Development last = Developer.Develop(job);
            Job exact = ErrorCases.Exact(job);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-30}  {Time(() => Developer.Develop(exact)),8:F0}  {Time(() => Developer.Follow(job, last)),14:F0}  {Time(() => Developer.Develop(job)),14:F0}"));
        }
        return 0;
    }

    private static double Time(Func<Development> develop)
    {
        double[] times = [.. Enumerable.Range(0, Runs).Select(_ =>
        {
            var clock = Stopwatch.StartNew();
            develop();
            return clock.Elapsed.TotalMilliseconds;
        })];
        return times.Skip(1).Min();
    }
}
