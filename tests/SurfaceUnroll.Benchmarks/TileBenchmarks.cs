using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Benchmarks;

/// <summary>Drawing the pages by their number. Goal: no faster than linear in the number of tiles.</summary>
public class TileBenchmarks
{
    private Job _job = TrikeCover.Job();
    private PanelDevelopment _panel = Developer.Develop(TrikeCover.Job()).Panels[0];

    /// <summary>Times the size of the trike cover: twice the size is about four times the tiles.</summary>
    [Params(1, 2, 4, 8)]
    public int Size { get; set; }

    [GlobalSetup]
    public void Enlarge()
    {
        PanelDevelopment panel = Developer.Develop(_job).Panels[0];
        _panel = panel with
        {
            Cut = [.. panel.Cut.Select(p => (double)Size * p)],
            Edges = [.. panel.Edges.Select(e => e with { Flat = [.. e.Flat.Select(p => (double)Size * p)] })],
            Elements = [.. panel.Elements.Select(e => e with { Front = (double)Size * e.Front, Rear = (double)Size * e.Rear })],
        };
        _job = _job with { Paper = PaperSpec.Default };
        Console.WriteLine($"size {Size}: {TileLayout.Plan(PatternDrawing.Of(_panel, _job, []), _job.Paper).Printed.Count()} tiles");
    }

    [Benchmark]
    public ImmutableArray<Page> DrawPages() => PatternPages.Of(_panel, _job);
}
