using SurfaceUnroll.Bench.Stops.FittingUp;
using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Bench.Tests.Components;

public sealed class FreedomFieldTests : IDisposable
{
    private readonly DeskContext _context = new(StarterJob.Text);

    public void Dispose() => _context.Dispose();

    [Fact]
    public void Curve_that_may_move_is_chosen_changed_and_taken_back()
    {
        string before = _context.Desk.State.Text.Text;
        IRenderedComponent<FreedomFields> Fields() => _context.Render<FreedomFields>(p => p.Add(f => f.Path, "panels[0]"));
        Assert.Single(Fields().FindAll("select"));
        Assert.Empty(Fields().FindAll("input"));
        Fields().Find("select").Change("rear");
        Assert.Equal("4", _context.Desk.State.Text.Shown("panels[0].freedom.rear"));
        Fields().Find("input").Input("2.5");
        Fields().Find("select").Change("front");
        Assert.Equal("2.5", _context.Desk.State.Text.Shown("panels[0].freedom.front"));
        Assert.Null(_context.Desk.State.Text.Find("panels[0].freedom.rear"));
        Fields().Find("select").Change("");
        Assert.Equal(before, _context.Desk.State.Text.Text);
    }
}
