using Microsoft.Playwright;

namespace SurfaceUnroll.Bench.Tests.Browser;

/// <summary>The pages by day and by night, at a desk and on a phone, against the rules for access.</summary>
[Collection(OneBrowser.Name)]
public sealed class AccessTests(BrowserFixture fixture) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [SkippableTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task No_finding(bool phone)
    {
        string demos = Path.Combine(Repository.Root, "fixtures", "jobs");
        string[] all = ["trike-full-cover.json", "crowned-side-panel-ways.json", "six-mistakes.json", "drawn-cowl.json", "drawn-cowl-front.dxf", "drawn-cowl-rear.svg", "scanned-bonnet.obj"];
        foreach (string file in all) _folder.Write(file, await File.ReadAllTextAsync(Path.Combine(demos, file)));
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address, phone);
        // Colours that pass into each other are neither those of the day nor those of the night.
        await window.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        List<string> found = [.. await FindingsAsync(window.Page, "start")];
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
    private static async Task<IEnumerable<string>> FindingsAsync(IPage page, string where)
    {
        await page.Locator("h1").First.WaitForAsync();
        string[] day = await Accessibility.FindingsAsync(page);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        string[] night = await Accessibility.FindingsAsync(page, contrast: true);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        return [.. day.Select(f => $"{where}: {f}"), .. night.Select(f => $"{where}, by night: {f}")];
    }
}
