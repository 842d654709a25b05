using BenchmarkDotNet.Attributes;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Benchmarks;

/// <summary>Matching by lattice size. Goal: no faster than quadratic, so a doubled lattice costs at most four times.</summary>
public class LatticeBenchmarks
{
    private readonly SpaceCurve _front = TrikeCover.Curve("front"), _rear = TrikeCover.Curve("rear");

    [Params(60, 120, 240, 480)]
    public int Lattice { get; set; }

    [Benchmark]
    public RuledSheet Match() => Loft.Between(_front, _rear, ElementMatching.BendOnly, Lattice);
}
