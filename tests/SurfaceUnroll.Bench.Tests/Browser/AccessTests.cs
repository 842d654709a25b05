using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace SurfaceUnroll.Bench.Tests.Browser;

/// <summary>The pages against axe-core's rules for WCAG 2.0 to 2.2, A and AA (Deque axe-core, run in the page).</summary>
[Collection(OneBrowser.Name)]
public sealed class AccessTests(BrowserFixture fixture) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [SkippableTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task No_serious_finding(bool phone)
    {
        string demos = Path.Combine(Repository.Root, "fixtures", "jobs");
        string[] all = ["trike-full-cover.json", "crowned-side-panel-ways.json", "six-mistakes.json", "drawn-cowl.json", "drawn-cowl-front.dxf", "drawn-cowl-rear.svg", "scanned-bonnet.obj"];
        foreach (string file in all) _folder.Write(file, await File.ReadAllTextAsync(Path.Combine(demos, file)));
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address, phone);
        // Colours that pass into each other are neither those of the day nor those of the night.
        await window.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        List<string> found = await FindingsAsync(window.Page, "start");
        (string Key, string Name)[] stops = [("measure", "Measure"), ("fit-up", "Fit up"), ("check", "Check"), ("cut", "Cut"), ("form", "Form")];
        foreach (string job in new[] { "trike-full-cover", "crowned-side-panel-ways", "six-mistakes", "drawn-cowl" })
        {
            // Curves of files differ from others where they are measured alone.
            foreach ((string key, string name) in job == "drawn-cowl" ? stops[..1] : stops)
            {
                await window.Page.GotoAsync($"{bench.Address}/job/{job}/{key}");
                await window.StopAsync(name);
                await window.Page.Locator(job == "six-mistakes" ? ".verdict.bad" : ".verdict.good, .verdict.some, .verdict.bad").First.WaitForAsync();
                found.AddRange(await FindingsAsync(window.Page, $"{job}/{key}"));
            }
        }
        Assert.True(found.Count == 0, string.Join('\n', found));
        Assert.Empty(window.Complaints);
    }

    // By day every rule; by night the same elements have other colours, which contrast alone depends on.
    private static async Task<List<string>> FindingsAsync(IPage page, string where)
    {
        await page.Locator("h1").First.WaitForAsync();
        AxeResult day = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        AxeResult night = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "rule", Values = ["color-contrast"] } });
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        return [.. Serious(day, where), .. Serious(night, $"{where}, by night")];
    }

    private static IEnumerable<string> Serious(AxeResult result, string where) =>
        result.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{where}: {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}");
}
