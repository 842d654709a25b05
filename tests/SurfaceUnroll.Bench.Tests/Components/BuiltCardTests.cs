using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Bench.Fields;
using SurfaceUnroll.Bench.Stops.Forming;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Tests.Components;

public sealed class BuiltCardTests
{
    [Fact]
    public async Task Lengths_are_typed_beside_those_wanted_and_what_they_tell_is_said()
    {
        string text = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "fixtures", "jobs", "as-built.json"));
        using var context = new DeskContext(text);
        DeskState state = await context.LookedAsync();
        PanelDevelopment panel = state.Development!.Panels[0];
        var card = context.Render<BuiltCard>(p => p.Add(c => c.Panel, panel));
        Assert.Equal("482.5", card.Find($"#{FieldIds.Of("built.blank.a-d")}").GetAttribute("value"));
        // The demo's blank is too long at one corner: an edge is named.
        Assert.Contains("edge", card.Find("[role=status] p").TextContent, StringComparison.Ordinal);

        card.FindAll("button")[^1].Click();
        Assert.Null(context.Desk.State.Text.Find("built"));
        card = context.Render<BuiltCard>(p => p.Add(c => c.Panel, panel));
        card.Find("button").Click();
        card = context.Render<BuiltCard>(p => p.Add(c => c.Panel, panel));
        // Every tape check and every edge that has a length, each place of the job once.
        Assert.Equal(panel.Plan!.Tapes.DistinctBy(t => (t.From, t.To)).Count() + panel.Edges.Count(e => e.FlatLength > 1), card.FindAll("tbody tr").Count);
        string?[] ids = [.. card.FindAll("input").Select(i => i.Id)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        TapeCheck tape = panel.Plan.Tapes[0];
        card.Find("tbody tr input").Input("480");
        Assert.Equal("480", context.Desk.State.Text.Shown($"built.blank.{tape.From}-{tape.To}"));
        Assert.True((await context.LookedAsync()).IsSound);
    }
}
