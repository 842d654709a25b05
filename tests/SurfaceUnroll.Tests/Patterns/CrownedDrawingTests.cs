using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Patterns;

public class CrownedDrawingTests
{
    // Within the width of two lines and a gap all the way, two lines are a blot, and a cutter charges for both.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void No_line_runs_along_the_centreline(int which)
    {
        Development result = Crowned.Develop(which == 0 ? Crowned.Dome : Crowned.Side);
        Drawing drawing = PatternDrawing.Of(result.Panels[0], result.Job, []);
        Stroke[] upright = [.. drawing.Strokes.Where(s => s.Role is Role.Centre or Role.Element)];
        Assert.NotEmpty(upright);
        foreach (Stroke centre in upright.Where(s => s.Role == Role.Centre))
            foreach (Stroke line in upright.Where(s => s.Role == Role.Element))
                Assert.Contains(line.Points, p => Math.Abs(p.X - centre.Points[0].X) > 1.5);
    }
}
