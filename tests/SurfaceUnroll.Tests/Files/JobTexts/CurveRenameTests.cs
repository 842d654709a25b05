using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Files.JobTexts;

public class CurveRenameTests
{
    private const string Text = """
        {
          "job": "rear", "units": "mm",
          "curves": {
            "front": { "chord": 240, "rise": 90 }, // kept
            "rear": { "points": [ [0, 100], [90, 0] ], "mirror": true, "at": { "origin": [300, 0, 0] } }
          },
          "panels": [ { "name": "rear", "loft": ["front", "rear"], "openings": [ { "name": "rear", "curve": "rear" } ] }, { "name": "floor", "flat": "rear" },
                      { "name": "side", "bent": { "plan": ["rear"], "side": "rear" } } ],
          "joints": [ [ "rear.left", "side.right" ] ]
        }
        """;

    [Fact]
    public void Everything_made_of_the_curve_follows_and_nothing_else_of_that_name()
    {
        JobText text = JobText.Of(Text).With(CurveRename.To(JobText.Of(Text), "rear", "tail"));
        Assert.Equal("front, tail", string.Join(", ", text.Find("curves")!.Keys));
        foreach (string path in new[] { "panels[0].loft[1]", "panels[0].openings[0].curve", "panels[1].flat", "panels[2].bent.plan[0]", "panels[2].bent.side" })
            Assert.Equal("tail", text.Shown(path));
        foreach (string path in new[] { "job", "panels[0].name", "panels[0].openings[0].name" }) Assert.Equal("rear", text.Shown(path));
        Assert.Equal("rear.left", text.Shown("joints[0][0]"));
        Assert.Contains("// kept", text.Text, StringComparison.Ordinal);
        Assert.Equal(Text, text.With(CurveRename.To(text, "tail", "rear")).Text);
    }

    [Fact]
    public void Curve_is_read_by_itself_or_not_at_all()
    {
        var spec = Assert.IsType<PointsSpec>(CurveFragment.Read(JobText.Of(Text).Written("curves.rear")!, LengthUnit.Inch));
        Assert.True(spec.Mirror);
        Assert.Equal(2540, spec.Points[0].Place.Y, 9);
        Assert.Equal(7620, spec.At.Origin.X, 9);
        Assert.Null(CurveFragment.Read("""{ "chord": "wide", "rise": 90 }""", LengthUnit.Millimetre));
        Assert.Null(CurveFragment.Read("""{ "chord": 240 """, LengthUnit.Millimetre));
    }
}
