using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Uncertainty;

namespace SurfaceUnroll.Benchmarks.Uncertainty;

/// <summary>The fast band beside random jobs, on twenty fixed jobs: how far the two disagree, how often the edges of random jobs lie within the band, and what the fast one takes.</summary>
internal static class ErrorComparison
{
    private const int Jobs = 2000;

    // Another than that of the library's own random jobs.
    private const ulong Seed = 20;

    // Places whose band is narrower than a scribed line, mm, are left out of the comparison.
    private const double Narrow = 0.1;

    /// <summary>Compares.</summary>
    /// <param name="args">Number of random jobs to each, 2,000 if left out; then a part of the names of the jobs that are wanted.</param>
    public static int Run(string[] args)
    {
        int count = args is [var number, ..] && int.TryParse(number, CultureInfo.InvariantCulture, out int given) ? given : Jobs;
        string wanted = args is [_, var part, ..] ? part : "";
        Console.WriteLine($"{count.ToString(CultureInfo.InvariantCulture)} random jobs each; the standard error of their band is {100 / Math.Sqrt(2.0 * count):F1} %");
        Console.WriteLine("job                            panel            method  readings  band, mm     disagree, %     within band, %        failed  seconds  differences");
        Console.WriteLine("                                                                  least  most  most   rms      least   mean   most                   alone, %");
        double worst = 0;
        foreach ((string name, Job job) in ErrorCases.All.Where(c => c.Name.Contains(wanted, StringComparison.Ordinal)))
        {
            var clock = Stopwatch.StartNew();
            Development development = Developer.Develop(job);
            double seconds = clock.Elapsed.TotalSeconds;
            ImmutableArray<PanelInWork> net = Developer.Net(job, (_, curves) => curves, default);
            var jobs = new MovedJobs(job, net, default);
            foreach (string panel in jobs.Panels)
            {
                if (development.Panels.FirstOrDefault(p => p.Spec.Name == panel)?.Error is not { } error)
                {
                    Console.WriteLine($"{name,-30} {panel,-16} not told");
                    continue;
                }
                double[] bands = [.. error.Edges.SelectMany(e => e.Places).Select(p => p.Band)];
                ImmutableArray<double[]?> moves = RandomErrors.Moves(jobs, panel, count, Seed, default);
                double[][] done = [.. moves.OfType<double[]>()];
                double[] standard = RandomErrors.Standard(done, bands.Length);
                EdgeSlopes slopes = LinearErrors.Of(jobs, default)[panel];
                double[] alone = [.. slopes.Standard.Zip(standard).Where(b => BlankError.Coverage * b.Second >= Narrow).Select(b => Math.Abs(100 * (b.First / b.Second - 1)))];
                double[] apart = [.. bands.Zip(standard).Where(b => b.First >= Narrow).Select(b => 100 * (b.First / (BlankError.Coverage * b.Second) - 1))];
                double[] within = [.. Enumerable.Range(0, bands.Length).Where(i => bands[i] >= Narrow).Select(i => 100.0 * done.Count(m => Math.Abs(m[i]) <= bands[i]) / done.Length)];
                double most = apart.Select(Math.Abs).DefaultIfEmpty().Max();
                worst = Math.Max(worst, most);
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{name,-30} {panel,-16} {error.Method,-6}  {error.Readings.Length,8}  {bands.Min(),5:F2}  {bands.Max(),4:F2}  {most,4:F1}  {Math.Sqrt(apart.Select(a => a * a).DefaultIfEmpty().Average()),4:F1}      {within.DefaultIfEmpty().Min(),5:F1}  {within.DefaultIfEmpty().Average(),5:F1}  {within.DefaultIfEmpty().Max(),5:F1}      {moves.Length - done.Length,6}  {seconds,7:F2}  {alone.DefaultIfEmpty().Max(),5:F1}"));
                seconds = 0;
            }
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"largest disagreement {worst:F1} %"));
        return 0;
    }
}
