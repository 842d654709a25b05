using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Tests.Drawings.ShopSheet;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Patterns;

public class TogetherPagesTests
{
    public static TheoryData<string> Papers => ["A4", "A2", "roll 610", "roll 300"];

    [Theory]
    [MemberData(nameof(Papers))]
    public void All_pieces_lie_in_one_run_at_one_scale_apart_from_each_other_and_take_no_more_paper(string size)
    {
        (Development cover, ImmutableArray<Drawing> drawings) = On(size);
        TilePlan plan = TogetherPages.Plan(cover, drawings).Plan;
        Stroke[] cuts = [.. plan.Drawing.Strokes.Where(s => s.Role == Role.Cut)];
        // Every cut line is there once, as long as it is by itself.
        Assert.Equal(drawings.Sum(d => d.Strokes.Count(s => s.Role == Role.Cut)), cuts.Length);
        Assert.Equal(drawings.SelectMany(d => d.Strokes).Where(s => s.Role == Role.Cut).Sum(Length), cuts.Sum(Length), 1e-6);
        Stroke[] outlines = [.. drawings.SelectMany(d => cuts.Where(c => Math.Abs(Length(c) - Length(d.Strokes.First(s => s.Role == Role.Cut))) < 1e-6)).Distinct()];
        Assert.Equal(5, outlines.Length);
        for (int i = 0; i < outlines.Length; i++)
            for (int j = 0; j < i; j++) Assert.True(outlines[i].Points.Min(p => DrawingPlaces.Distance(p, [.. outlines[j].Points, outlines[j].Points[0]])) > 7.9);
        double apart = drawings.Sum(d => TileLayout.Plan(d, cover.Job.Paper).Cost);
        Assert.True(plan.Cost <= apart, $"{plan.Cost} together, {apart} apart");
        Box[] windows = [.. plan.Printed.Select(t => t.Window)];
        Assert.All(cuts.SelectMany(c => c.Points), p => Assert.Contains(windows, w => w.Contains(p)));
    }

    [Fact]
    public void The_print_is_written_where_it_is_asked_for_and_no_panel_has_its_name()
    {
        (Development cover, _) = On("A3");
        Assert.Single(PatternFiles.Of(cover), f => f.Name == "all-pieces.pdf");
        Assert.DoesNotContain(PatternFiles.Of(cover with { Job = cover.Job with { Paper = cover.Job.Paper with { Together = false } } }), f => f.Name == "all-pieces.pdf");
        Assert.Null(JobFile.Read(StarterJob.Text.Replace("\"name\": \"cover\"", "\"name\": \"All pieces\"", StringComparison.Ordinal)).Job);
    }

    private static (Development, ImmutableArray<Drawing>) On(string size)
    {
        Development cover = PlannedSamples.Cover;
        cover = cover with { Job = cover.Job with { Paper = PaperSpec.Default with { Size = PaperText.Read(size, LengthUnit.Millimetre).Size!, Together = true } } };
        return (cover, [.. cover.Panels.Select(p => PatternDrawing.Of(p, cover.Job, cover.Joints))]);
    }

    private static double Length(Stroke stroke) => stroke.Points.Select((p, i) => (stroke.Points[(i + 1) % stroke.Points.Length] - p).Length).Sum();
}
