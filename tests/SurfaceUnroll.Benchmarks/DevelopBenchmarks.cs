using BenchmarkDotNet.Attributes;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Benchmarks;

/// <summary>Matching and developing the trike cover, warm, without files. Goal: at most 30 ms.</summary>
[MemoryDiagnoser]
public class DevelopBenchmarks
{
    private readonly Job _job = TrikeCover.Job();

    [Benchmark]
    public Development MatchAndDevelop() => Developer.Develop(_job);
}
