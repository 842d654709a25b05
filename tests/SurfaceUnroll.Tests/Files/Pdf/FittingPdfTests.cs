using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Tests.Drawings;

namespace SurfaceUnroll.Tests.Files.Pdf;

public class FittingPdfTests
{
    [Fact]
    public void First_page_tells_the_bends_openings_allowances_and_joints_of_its_piece()
    {
        PaperSheet[] sheets = Read(FittedSamples.Cover());
        Assert.Equal(7, sheets.Length);
        string first = Words(sheets[0]);
        foreach (string said in new[]
        {
            "Bend 1, lip rear", "DOWN 85–95°, inside R 0.9", "allowance 2.04, deduction 1.56 mm, K 0.440", "Opening lamp", "Ø 90", "Openings row", "6 × Ø 5.5",
            "lip, 11.20 mm, joint A, square corners", "trim, 3.00 mm taken off, joint B", "Cover/rear – Front plate/arch", "lip 12 mm on", "DOES NOT FIT", "143 mm along",
            "stretches 3.4 %, 1 notch", "match marks 9", "pinch", "Deburr every hole", "On a road vehicle: a changed body, lamps and openings too",
        })
            Assert.Contains(said, first, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_piece_of_the_job_is_told_only_its_own_joints()
    {
        Development cover = FittedSamples.Cover();
        JointFit other = cover.Joints[0] with { Label = "Z", Mates = [.. cover.Joints[0].Mates.Select(m => m with { Edge = new EdgeName("Another", "front") })] };
        Assert.DoesNotContain("Joint Z", Words(Read(cover with { Joints = [.. cover.Joints, other] })[0]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_list_goes_on_further_pages_whole_and_in_order()
    {
        PaperSheet[] sheets = Read(FittedSamples.Bent(60));
        Assert.Contains("60 bends: see the last page", Words(sheets[0]), StringComparison.Ordinal);
        PaperSheet[] listed = [.. sheets.Where(s => Words(s).Contains("bends and joints", StringComparison.Ordinal))];
        Assert.True(listed.Length > 1);
        Assert.Equal(sheets[^listed.Length..], listed);
        string[] words = [.. listed.SelectMany(s => s.Words).Select(w => w.Text)];
        string[] labels = [.. words.Zip(words[1..]).Where(pair => pair.First == "Bend" && pair.Second.All(char.IsDigit)).Select(pair => pair.Second)];
        Assert.Equal(Enumerable.Range(1, 60).Select(i => $"{i}"), labels);
        Assert.All(listed.SelectMany(s => s.Words), w => Assert.InRange(w.At.Y, 10, 287));
        Assert.Contains("pinch", Words(listed[^1]), StringComparison.Ordinal);
    }

    [Fact]
    public void Bends_ticks_and_finished_edges_are_narrow_and_cut_lines_wide()
    {
        PaperSheet tile = Read(FittedSamples.Cover(radius: 50, length: 150))[1];
        // Outline and seven openings.
        Assert.Equal(8, tile.Lines.Count(l => Math.Abs(l.Thickness - PaperSheet.WideLine) < 0.01));
        // The bend and the two lines beside it are 50π − 16 mm long.
        Assert.Equal(3, tile.Straight(PaperSheet.NarrowLine, 50 * Math.PI - 16).Count());
    }

    private static PaperSheet[] Read(Development development) => PdfSheets.Read(PatternPdf.Write(
        development.Panels[0], development.Job, TileLayout.Plan(PatternDrawing.Of(development.Panels[0], development.Job, development.Joints), development.Job.Paper), null, development.Joints));

    private static string Words(PaperSheet sheet) => string.Join(' ', sheet.Words.Select(w => w.Text));
}
