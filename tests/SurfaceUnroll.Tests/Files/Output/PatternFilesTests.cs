using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Files.Dxf;

namespace SurfaceUnroll.Tests.Files.Output;

public class PatternFilesTests
{
    private static ImmutableArray<OutputFile> Files() => PatternFiles.Of(Developer.Develop(JobFile.Read(StarterJob.Text).Job!));

    [Fact]
    public void Every_panel_has_five_files_and_sheet_and_report_of_the_job_come_last() =>
        Assert.Equal(
            ["cover.pdf", "cover.dxf", "cover.svg", "cover.obj", "cover-preview.svg", "shop-sheet.pdf", "report.json"], Files().Select(f => f.Name));

    [Fact]
    public void The_same_job_gives_the_same_bytes_in_every_file()
    {
        foreach ((OutputFile first, OutputFile second) in Files().Zip(Files()))
        {
            Assert.True(Timeless.Of(first.Name, first.Content.ToArray()).SequenceEqual(Timeless.Of(second.Name, second.Content.ToArray())), first.Name);
        }
    }

    [SkippableFact]
    public void Ezdxf_finds_nothing_in_a_real_pattern_and_nothing_is_drawn_twice()
    {
        DxfReader.Reading read = DxfReader.Read(Files().Single(f => f.Name == "cover.dxf").Content.ToArray());
        Assert.Empty(read.Findings);
        Assert.True(Assert.Single(read.Entities, e => e.Layer == "CUT").Closed);
        // Either direction of a line is the same line; a hundredth of a millimetre apart is the same cut.
        string[] strokes = [.. read.Entities.Where(e => e.Text is null).Select(e =>
            string.Join(' ', e.Points.Select(p => $"{p[0]:0.00},{p[1]:0.00}").Order(StringComparer.Ordinal)))];
        Assert.Equal(strokes.Length, strokes.Distinct().Count());
    }
}
