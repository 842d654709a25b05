using SurfaceUnroll.Bench.Stops.FittingUp;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Tests.Stops;

public class FitEditsTests
{
    private static readonly JobText Job = JobText.Of("""
        {
          "curves": { "arch": {}, "hoop": {} },
          "panels": [
            // The cover.
            { "name": "cover", "loft": ["arch", "hoop"], "pieces": 2, "trims": [ { "plane": {}, "keep": "up" } ] },
            { "name": "cover plate", "flat": "arch", "holes": [ { "round": 8, "pattern": { "across": 2, "up": 1, "pitch": 30 } } ], "trims": [ { "name": "seat", "by": "cover", "keep": "up" } ] }
          ],
          "openings": [ { "name": "bolt", "round": 6, "through": ["cover", "cover plate"] } ],
          "joints": [
            { "edges": ["cover 1 of 2/front", "cover plate/arch"], "kind": "lip", "width": 12, "on": "cover plate" },
            { "edges": ["cover plate/seat"], "kind": "trim", "extra": 4 }
          ]
        }
        """);

    [Fact]
    public void Piece_is_renamed_wherever_it_is_named_and_nowhere_else()
    {
        JobText text = Job.With(FitEdits.RenamePanel(Job, "panels[0]", "tail"));
        Assert.Equal("tail", text.Shown("panels[0].name"));
        Assert.Equal("tail 1 of 2/front", text.Shown("joints[0].edges[0]"));
        Assert.Equal("tail", text.Shown("panels[1].trims[0].by"));
        Assert.Equal("tail", text.Shown("openings[0].through[0]"));
        // A longer name that begins alike is another piece.
        Assert.Equal("cover plate/arch", text.Shown("joints[0].edges[1]"));
        Assert.Equal("cover plate", text.Shown("joints[0].on"));
        Assert.Contains("// The cover.", text.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Joint_along_a_trim_follows_its_name()
    {
        JobText text = Job.With(FitEdits.RenameEdge(Job, "panels[1].trims[0]", "seat", "saddle"));
        Assert.Equal("saddle", text.Shown("panels[1].trims[0].name"));
        Assert.Equal("cover plate/saddle", text.Shown("joints[1].edges[0]"));
    }

    [Fact]
    public void Piece_goes_with_the_joints_along_its_edges()
    {
        JobText text = Job.With(FitEdits.RemovePanel(Job, "panels[0]"));
        Assert.Equal(["cover plate"], FitText.Panels(text).ToArray());
        Assert.Equal("cover plate/seat", Assert.Single(text.Inside("joints").Select(j => text.Shown(j.Under("edges") + "[0]"))));
    }

    [Fact]
    public void Edges_to_choose_from_are_those_of_sides_curves_holes_trims_and_pieces()
    {
        Assert.Equal(
            [
                "cover 1 of 2/front", "cover 1 of 2/right", "cover 1 of 2/rear", "cover 1 of 2/left", "cover 1 of 2/trim 1", "cover 1 of 2/bolt",
                "cover 2 of 2/front", "cover 2 of 2/right", "cover 2 of 2/rear", "cover 2 of 2/left", "cover 2 of 2/trim 1", "cover 2 of 2/bolt",
                "cover plate/arch", "cover plate/hole 1 1", "cover plate/hole 1 2", "cover plate/seat", "cover plate/bolt",
            ],
            FitText.Edges(Job, null).ToArray());
    }
}
