using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Bench.Stops.Checking;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Tests.Components;

public sealed class CheckingTests
{
    // Lines joined evenly between an arch and a hoop are twisted; those matched to bend are not.
    [Theory]
    [InlineData("bend-only", false)]
    [InlineData("even", true)]
    public async Task Table_of_element_lines_names_the_one_twisted_most(string elements, bool twisted)
    {
        using var context = new DeskContext(StarterJob.Text.Replace("\"loft\": [\"front\", \"rear\"]", $"\"loft\": [\"front\", \"rear\"], \"elements\": \"{elements}\"", StringComparison.Ordinal));
        Development development = (await context.LookedAsync()).Development!;
        PanelDevelopment panel = development.Panels[0];
        var table = context.Render<ElementTable>(p => p.Add(t => t.Panel, panel).Add(t => t.Units, development.Job.Units));
        Assert.Equal(panel.Elements.Count(e => e.Number > 0), table.FindAll("tbody tr").Count);
        if (!twisted)
        {
            Assert.Empty(table.FindAll("tr.worst"));
            Assert.Contains("none twisted", table.Find("summary").TextContent, StringComparison.Ordinal);
            return;
        }
        ElementLine worst = panel.Elements.Where(e => e.Number > 0).MaxBy(e => e.Twist)!;
        string row = table.Find("tr.worst").TextContent;
        Assert.StartsWith($"{worst.Number}", table.Find("tr.worst th").TextContent, StringComparison.Ordinal);
        Assert.Contains(PanelRows.Degrees(worst.Twist), row, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Evenly_spaced_lines_stand_beside_the_matched_ones_on_demand()
    {
        using var context = new DeskContext(StarterJob.Text);
        Development development = (await context.LookedAsync()).Development!;
        var comparison = context.Render<EvenComparison>(p => p.Add(c => c.Panel, development.Panels[0]).Add(c => c.Job, development.Job));
        Assert.Empty(comparison.FindAll("table"));
        comparison.Find("button").Click();
        comparison.WaitForAssertion(() => comparison.Find("table"), TimeSpan.FromSeconds(60));
        Assert.Contains("Bends only", comparison.Find("tbody tr").TextContent, StringComparison.Ordinal);
        Assert.Contains("Needs stretching", comparison.Find("tbody tr").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reading_to_take_again_first_is_named_before_the_others()
    {
        using var context = new DeskContext(await File.ReadAllTextAsync(Path.Combine(Repository.Root, "fixtures", "jobs", "read-with-errors.json")));
        Development development = (await context.LookedAsync()).Development!;
        PanelDevelopment panel = development.Panels[0];
        var table = context.Render<ReadingTable>(p => p.Add(t => t.Panel, panel).Add(t => t.Units, development.Job.Units));
        Assert.Contains(panel.Error!.Readings[0].Words, table.Find("strong").TextContent, StringComparison.Ordinal);
        Assert.Equal(panel.Error.Readings.Take(20).Select(r => r.Words), table.FindAll("tbody th").Select(t => t.TextContent));
        // While a job is being changed it is said that they are those of before, or that they are still to come.
        table.Render(p => p.Add(t => t.Awaited, true));
        Assert.Contains("Before the last change", table.Find(".note").TextContent, StringComparison.Ordinal);
        table.Render(p => p.Add(t => t.Panel, Developer.Follow(development.Job, null).Panels[0]));
        Assert.Contains("being worked out", Assert.Single(table.FindAll("section")).TextContent, StringComparison.Ordinal);
        // A sheet whose readings have no errors says nothing of them.
        using var exact = new DeskContext(StarterJob.Text);
        Development other = (await exact.LookedAsync()).Development!;
        Assert.Empty(exact.Render<ReadingTable>(p => p.Add(t => t.Panel, other.Panels[0]).Add(t => t.Units, other.Job.Units)).FindAll("section"));
    }

    [Fact]
    public async Task Number_of_pieces_is_taken_from_the_table()
    {
        string text = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "fixtures", "jobs", "crowned-side-panel.json"));
        using var context = new DeskContext(text);
        DeskState state = await context.LookedAsync();
        Development development = state.Development!;
        PanelDevelopment panel = development.Panels.First(p => p.Choices.Length > 1);
        var choices = context.Render<PieceChoices>(p => p.Add(c => c.Panel, panel).Add(c => c.Job, development.Job));
        PieceChoice other = panel.Choices.First(c => c.Pieces != panel.Spec.Pieces && c.Pieces > 1);
        choices.FindAll("button").First(b => b.TextContent == $"Take {other.Pieces}").Click();
        JobText now = context.Desk.State.Text;
        int index = now.Inside("panels").Select(p => now.Shown(p.Under("name"))).ToList().IndexOf(panel.Piece?.Panel ?? panel.Spec.Name);
        Assert.Equal($"{other.Pieces}", now.Shown($"panels[{index}].pieces"));
    }
}
