using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Files.JobTexts;

public class UnitSwitchTests
{
    private static string Folder => Fixtures.PathOf("jobs");

    public static TheoryData<string> Demos => [.. Directory.GetFiles(Folder, "*.json").Select(f => Path.GetFileName(f)).Where(f => f != "six-mistakes.json")];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Job_in_other_units_is_the_same_job(string file)
    {
        string text = File.ReadAllText(Path.Combine(Folder, file));
        JobText was = JobText.Of(text);
        JobReading reading = JobFile.ReadIn(text, Folder);
        string other = was.Shown("units") == "mm" ? "in" : "mm";
        JobText turned = was.With(UnitSwitch.To(was, reading, other)!);
        JobReading again = JobFile.ReadIn(turned.Text, Folder);
        Assert.Empty(again.Faults);
        // Every length is the same number of millimetres, not nearly.
        Job a = reading.Job!, b = again.Job!;
        Assert.Equal(a.Sheet.Thickness, b.Sheet.Thickness);
        Assert.Equal(a.Curves.Select(c => Numbers(c.Spec)), b.Curves.Select(c => Numbers(c.Spec)));
        Assert.NotEqual(a.Units, b.Units);
        JobText back = turned.With(UnitSwitch.To(turned, again, was.Shown("units"))!);
        Assert.Equal(Plain(text), Plain(back.Text));
    }

    // A fraction in quotes gets its unit when the units change, and keeps it: "6 7/8" comes back as "6 7/8 in".
    private static string Plain(string text) => text.Replace(" in\"", "\"", StringComparison.Ordinal).Replace(" mm\"", "\"", StringComparison.Ordinal);

    private static string Numbers(CurveSpec spec) => spec switch
    {
        PointsSpec points => string.Join(' ', points.Points),
        RunSpec run => string.Join(' ', run.Steps),
        ChordSpec chord => $"{chord.Chord:R} {chord.Rise:R}",
        SpaceSpec space => string.Join(' ', space.Points),
        PlanSideSpec both => $"{Numbers(both.Plan)} / {string.Join(' ', both.Side)}",
        DrawnSpec drawn => string.Join(' ', drawn.Pieces.Select(p => $"{p.At(0).Point} {p.At(0.5).Point} {p.At(1).Point}")),
        SectionSpec section => $"{section.Plane} {section.Noise:R} {section.Join:R} {string.Join(' ', section.Scan.Mesh.Places)}",
        _ => throw new ArgumentException(spec.GetType().Name),
    };

    [Fact]
    public void Units_that_it_has_already_change_nothing()
    {
        JobText text = JobText.Of(StarterJob.Text);
        Assert.Null(UnitSwitch.To(text, JobFile.Read(text.Text), "mm"));
    }
}
