using Microsoft.Playwright;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;
using UglyToad.PdfPig;

namespace SurfaceUnroll.Bench.Tests.Browser;

/// <summary>What a fabricator does, in a real browser against the real program.</summary>
[Collection(OneBrowser.Name)]
public sealed class WholeJobTests(BrowserFixture fixture) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [SkippableTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task From_nothing_to_a_pattern_in_the_hand(bool phone)
    {
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address, phone);
        IPage page = window.Page;
        await page.GetByRole(AriaRole.Button, new() { Name = "Start from a half arch and a U hoop" }).ClickAsync();
        await window.StopAsync("Measure");
        await page.GetByLabel("Thickness", new() { Exact = true }).FillAsync("1.2");
        await window.VerdictAsync("Bends only");
        await page.GetByRole(AriaRole.Link, new() { Name = "Cut", Exact = true }).ClickAsync();
        await window.StopAsync("Cut");
        IDownload download = await page.RunAndWaitForDownloadAsync(() => page.Locator("a[download][href$='cover.pdf']").First.ClickAsync());
        string got = _folder.At("got.pdf");
        await download.SaveAsAsync(got);

        // The same file as the command line's.
        string job = Directory.GetFiles(_folder.Path, "*.json").Single();
        Assert.Contains("1.2", await File.ReadAllTextAsync(job), StringComparison.Ordinal);
        var files = PatternFiles.Of(Developer.Develop(JobFile.ReadIn(await File.ReadAllTextAsync(job), _folder.Path).Job!));
        byte[] bytes = await File.ReadAllBytesAsync(got);
        Assert.Equal(files.Single(f => f.Name == "cover.pdf").Content.ToArray(), bytes);
        using PdfDocument pdf = PdfDocument.Open(bytes);
        Assert.True(pdf.NumberOfPages > 2);
        Assert.Contains("cover", pdf.GetPage(1).Text, StringComparison.OrdinalIgnoreCase);

        Assert.Empty(window.Complaints);
        Assert.All(window.Requests, url => Assert.True(url.StartsWith(bench.Address, StringComparison.Ordinal) || url.StartsWith("blob:", StringComparison.Ordinal) || url.StartsWith("data:", StringComparison.Ordinal), url));
    }

    [SkippableFact]
    public async Task Fault_is_shown_at_its_field_with_its_mend_and_undone()
    {
        _folder.Write("cover.json", StarterJob.Text);
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover");
        IPage page = window.Page;
        ILocator thickness = page.GetByLabel("Thickness", new() { Exact = true });
        await thickness.FillAsync("thin");
        await page.Locator("#field-sheet-thickness-found .fault").WaitForAsync();
        Assert.Equal("true", await thickness.GetAttributeAsync("aria-invalid"));
        Assert.Equal("field-sheet-thickness-found", await thickness.GetAttributeAsync("aria-describedby"));
        Assert.Contains("Write it like", await page.Locator("#field-sheet-thickness-found").InnerTextAsync(), StringComparison.OrdinalIgnoreCase);
        await window.VerdictAsync("One thing to mend");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await window.VerdictAsync("Bends only");
        Assert.Equal("0.9", await thickness.InputValueAsync());
        Assert.Empty(window.Complaints);
    }

    [SkippableFact]
    public async Task Killed_in_the_middle_of_a_word_the_bench_comes_back_with_it()
    {
        _folder.Write("cover.json", StarterJob.Text);
        IBrowser browser = await fixture.BrowserAsync();
        BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover");
        IPage page = window.Page;
        await window.VerdictAsync("Bends only");
        await page.GetByLabel("Job", new() { Exact = true }).FillAsync("");
        await page.GetByLabel("Job", new() { Exact = true }).PressSequentiallyAsync("Rear mudguar");
        int port = new Uri(bench.Address).Port;
        bench.Dispose();
        // Whole, whatever moment it was.
        JobReading saved = JobFile.Read(await File.ReadAllTextAsync(_folder.At("cover.json")));
        Assert.Empty(saved.Faults);

        using BenchProcess again = BenchProcess.Run(_folder.Path, port);
        // It comes back by itself: nothing is clicked.
        await page.WaitForFunctionAsync("() => document.querySelector('#field-job')?.value === 'Rear mudguar' && document.querySelector('.verdict.good')", null, new() { Timeout = 90_000 });
        await page.Locator(".saved", new() { HasText = "Saved" }).WaitForAsync();
        await page.Locator(".strip .job", new() { HasText = "Rear mudguar" }).WaitForAsync();
        string text = await File.ReadAllTextAsync(_folder.At("cover.json"));
        Assert.Contains("// A tail cover", text, StringComparison.Ordinal);
        Assert.Contains("Rear mudguar", text, StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task Two_windows_follow_each_other()
    {
        _folder.Write("cover.json", StarterJob.Text);
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage one = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover");
        await using BenchPage two = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover", phone: true);
        await two.StopAsync("Measure");
        await one.Page.GetByLabel("Thickness", new() { Exact = true }).FillAsync("1.5");
        await two.Page.WaitForFunctionAsync("() => document.querySelector('#field-sheet-thickness').value === '1.5'");
        await two.Page.GetByLabel("Material", new() { Exact = true }).FillAsync("stainless 304");
        await one.Page.WaitForFunctionAsync("() => document.querySelector('#field-sheet-material').value === 'stainless 304'");
        string text = await File.ReadAllTextAsync(_folder.At("cover.json"));
        Assert.Contains("1.5", text, StringComparison.Ordinal);
        Assert.Empty(one.Complaints.Concat(two.Complaints));
    }

    [SkippableFact]
    public async Task File_changed_on_disk_is_noticed()
    {
        _folder.Write("cover.json", StarterJob.Text);
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover");
        await window.VerdictAsync("Bends only");
        _folder.Write("cover.json", StarterJob.Text.Replace("\"thickness\": 0.9", "\"thickness\": 1.6", StringComparison.Ordinal));
        await window.Page.Locator(".news", new() { HasText = "another program" }).WaitForAsync();
        Assert.Equal("1.6", await window.Page.GetByLabel("Thickness", new() { Exact = true }).InputValueAsync());
    }

    // A stop that is left takes its pictures away while their scripts are still on the way.
    [SkippableFact]
    public async Task Stops_can_be_left_before_their_pictures_are_there()
    {
        _folder.Write("cover.json", StarterJob.Text);
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        foreach (int pause in new[] { 0, 10, 20, 30, 40, 50 })
        {
            await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover");
            foreach (string stop in new[] { "Measure", "Cut", "Measure", "Check", "Fit up", "Check", "Measure", "Form", "Measure", "Cut" })
            {
                await window.Page.GetByRole(AriaRole.Link, new() { Name = stop, Exact = true }).ClickAsync();
                await window.StopAsync(stop);
                await Task.Delay(pause);
            }
            Assert.Empty(window.Complaints);
        }
    }
}
