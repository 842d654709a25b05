using System.Text.Json;
using Microsoft.Playwright;
using SurfaceUnroll.Bench.Fields;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Tests.Browser;

/// <summary>Curves put in by keyboard alone and points moved by a finger.</summary>
[Collection(OneBrowser.Name)]
public sealed class MeasuringTests(BrowserFixture fixture) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [SkippableFact]
    public async Task Every_kind_of_curve_is_entered_by_keyboard()
    {
        string file = _folder.Write("cover.json", StarterJob.Text);
        _folder.Write("hoop.csv", "across,up\n-100,0\n-60,70\n0,95\n60,70\n100,0\n");
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover");
        IPage page = window.Page;
        await window.VerdictAsync("Bends only");
        (string Kind, string[] Values, string[] Typed)[] kinds =
        [
            ("Table of points", ["points[0][1]", "points[1][0]", "points[1][1]"], ["121", "6 7/8 in", "30.5"]),
            ("Straights and arcs", ["run[0].line", "run[1].arc", "run[1].turn"], ["60", "90", "120"]),
            ("Chord and rise", ["chord", "rise"], ["310", "1' 2 1/2\""]),
            ("Plan and side view", ["plan.run[0].line", "side[1][0]", "side[2][1]"], ["150", "141", "44"]),
            ("Points in space", ["xyz[0][0]", "xyz[2][2]"], ["-3", "118"]),
            ("Drawing or table", ["file"], ["hoop.csv"]),
        ];
        foreach ((string kind, string[] values, string[] typed) in kinds)
        {
            HashSet<string> before = Curves(file);
            await TabToAsync(page, $"document.activeElement.closest('.kinds') && document.activeElement.innerText.includes({JsonSerializer.Serialize(kind)})");
            await page.Keyboard.PressAsync("Enter");
            string name = "";
            await Waiting.Until(() => (name = Curves(file).Except(before).SingleOrDefault() ?? "").Length > 0);
            foreach ((string value, string text) in values.Zip(typed))
            {
                string path = $"{JobPath.Under("curves", name)}.{value}";
                await TabToAsync(page, $"document.activeElement.id === {JsonSerializer.Serialize(FieldIds.Of(path))}");
                await page.Keyboard.PressAsync("ControlOrMeta+A");
                await page.Keyboard.TypeAsync(text);
                await Waiting.Until(() => JobText.Of(File.ReadAllText(file)).Shown(path) == text);
            }
            Assert.Empty(JobFile.ReadIn(await File.ReadAllTextAsync(file), _folder.Path).Faults);
        }
        Assert.Equal(kinds.Length + 2, Curves(file).Count);
        Assert.Empty(window.Complaints);
    }

    [SkippableFact]
    public async Task Point_is_dragged_by_a_finger_and_put_back_by_one_undo()
    {
        string file = _folder.Write("cover.json", StarterJob.Text);
        IBrowser browser = await fixture.BrowserAsync();
        using BenchProcess bench = BenchProcess.Run(_folder.Path);
        await using BenchPage window = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover", phone: true);
        IPage page = window.Page;
        await window.VerdictAsync("Bends only");
        // The second point of the hoop, [62, 272].
        ILocator handle = page.Locator("[aria-labelledby] svg[aria-label^=rear] [data-handle='1']").First;
        await handle.ScrollIntoViewIfNeededAsync();
        LocatorBoundingBoxResult box = (await handle.BoundingBoxAsync())!;
        float x = box.X + box.Width / 2, y = box.Y + box.Height / 2;
        ICDPSession finger = await page.Context.NewCDPSessionAsync(page);
        Task TouchAsync(string type, params object[] points) => finger.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object> { ["type"] = type, ["touchPoints"] = points });
        await TouchAsync("touchStart", new { x, y });
        for (int k = 1; k <= 10; k++) await TouchAsync("touchMove", new { x, y = y - 0.5 * k });
        await TouchAsync("touchEnd");

        // Up the page is aft: the point has gone that way and no other has moved.
        await Waiting.Until(() => !File.ReadAllText(file).Contains("[62, 272]", StringComparison.Ordinal));
        await StillAsync(file);
        JobText now = JobText.Of(await File.ReadAllTextAsync(file));
        Assert.True(double.Parse(now.Shown("curves.rear.points[1][1]"), System.Globalization.CultureInfo.InvariantCulture) > 272);
        Assert.Equal("295", now.Shown("curves.rear.points[0][1]"));
        Assert.Equal("210", now.Shown("curves.rear.points[2][1]"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Waiting.Until(() => File.ReadAllText(file) == StarterJob.Text);
        Assert.Empty(window.Complaints);
    }

    private static HashSet<string> Curves(string file) => [.. JobText.Of(File.ReadAllText(file)).Find("curves")!.Keys];

    // Goes on with the Tab key until the condition holds, once around the page at most.
    private static async Task TabToAsync(IPage page, string condition)
    {
        for (int k = 0; k < 400; k++)
        {
            if (await page.EvaluateAsync<bool>($"() => !!({condition})")) return;
            await page.Keyboard.PressAsync("Tab");
        }
        Assert.Fail($"Not reached by the Tab key: {condition}");
    }

    // The last move has come when the file stays as it is: a drag is saved more often than that.
    private static async Task StillAsync(string file)
    {
        string before;
        do
        {
            before = await File.ReadAllTextAsync(file);
            await Task.Delay(1500);
        }
        while (before != await File.ReadAllTextAsync(file));
    }
}
