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
    [InlineData(false, false)]
    [InlineData(false, true)]
    [InlineData(true, false)]
    [InlineData(true, true)]
    public async Task No_serious_finding(bool phone, bool dark)
    {
        string demos = Path.Combine(Repository.Root, "fixtures", "jobs");
        foreach (string file in new[] { "trike-full-cover.json", "crowned-side-panel-ways.json", "six-mistakes.json" }) _folder.Write(file, await File.ReadAllTextAsync(Path.Combine(demos, file)));
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address, phone);
        if (dark) await window.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        List<string> found = await FindingsAsync(window.Page, "start");
        foreach (string job in new[] { "trike-full-cover", "crowned-side-panel-ways", "six-mistakes" })
        {
            foreach ((string key, string name) in new[] { ("measure", "Measure"), ("fit-up", "Fit up"), ("check", "Check"), ("cut", "Cut"), ("form", "Form") })
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

    private static async Task<List<string>> FindingsAsync(IPage page, string where)
    {
        await page.Locator("h1").First.WaitForAsync();
        AxeResult result = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });
        return [.. result.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{where}: {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}")];
    }
}
