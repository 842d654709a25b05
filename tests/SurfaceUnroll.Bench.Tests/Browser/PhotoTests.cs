using Microsoft.Playwright;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Photos;

namespace SurfaceUnroll.Bench.Tests.Browser;

/// <summary>A curve measured on a photo, by thumb and by keyboard.</summary>
[Collection(OneBrowser.Name)]
public sealed class PhotoTests(BrowserFixture fixture) : IDisposable
{
    private static readonly StudioCamera Camera = StudioCamera.Over(Studio.Scene, 1600, 1200, 0.35, 1, 0.05, 0.01, default);

    private static readonly Vec2[] Corners = [new(0, 0), new(Studio.SheetWidth, 0), new(Studio.SheetWidth, Studio.SheetHeight), new(0, Studio.SheetHeight)];

    private static readonly Vec2[] Edge = [.. Enumerable.Range(0, 5).Select(i => new Vec2(75 * i, Studio.Edge(75 * i)))];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [SkippableFact]
    public async Task Edge_is_traced_by_thumb_on_a_phone_and_taken_as_the_curve()
    {
        (IPage page, BenchPage window, BenchProcess bench, string file) = await OpenAsync(phone: true);
        using BenchProcess running = bench;
        await using BenchPage open = window;
        ILocator stage = page.Locator(".photostage svg[data-ready]");
        await stage.WaitForAsync();
        int made = 0;
        foreach (Vec2 place in Corners.Concat(Edge))
        {
            float[] at = await ScreenAsync(stage, Camera.Sees(place));
            // A thumb is not exact: two pixels of the screen, nine of the photo, to one side and the other.
            await page.Touchscreen.TapAsync(at[0] + (made % 2 == 0 ? 2 : -2), at[1]);
            made++;
            await Assertions.Expect(page.Locator(".photohandle")).ToHaveCountAsync(made, new() { Timeout = 60_000 }); // A loaded machine is slow; nothing is measured by it.
        }
        await page.GetByText("True within").WaitForAsync();
        await page.GetByText("How well the reference fits").ClickAsync();
        Assert.Empty(await Accessibility.FindingsAsync(page));
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"), "the page is wider than the phone");
        await TakenAsync(page, file);
        Assert.Empty(window.Complaints);
        // Nothing of it went anywhere else.
        Assert.All(window.Requests, r => Assert.True(r.StartsWith(bench.Address, StringComparison.Ordinal) || r.StartsWith("data:", StringComparison.Ordinal) || r.StartsWith("blob:", StringComparison.Ordinal), r));
    }

    [SkippableFact]
    public async Task Points_are_put_and_moved_by_keyboard_alone()
    {
        (IPage page, BenchPage window, BenchProcess bench, string file) = await OpenAsync(phone: false);
        using BenchProcess running = bench;
        await using BenchPage open = window;
        ILocator stage = page.Locator(".photostage svg[data-ready]");
        await stage.WaitForAsync();
        int made = 0;
        foreach (Vec2 place in Corners.Concat(Edge))
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Put a point in the middle" }).FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            made++;
            await Assertions.Expect(page.Locator(".photohandle")).ToHaveCountAsync(made, new() { Timeout = 60_000 }); // A loaded machine is slow; nothing is measured by it.
            // The new one is the one in the middle.
            ILocator handle = page.Locator(".photohandle[data-x='800'][data-y='600']");
            await handle.FocusAsync();
            Vec2 to = Camera.Sees(place);
            double step = Math.Max(1, 1 / await stage.EvaluateAsync<double>("s => s.getScreenCTM().a"));
            async Task Go(double way, string forth, string back)
            {
                int tens = (int)(Math.Abs(way) / (10 * step)), ones = (int)Math.Round(Math.Abs(way) / step) - 10 * tens;
                for (int k = 0; k < tens; k++) await page.Keyboard.PressAsync($"Shift+{(way > 0 ? forth : back)}");
                for (int k = 0; k < ones; k++) await page.Keyboard.PressAsync(way > 0 ? forth : back);
            }
            await Go(to.X - 800, "ArrowRight", "ArrowLeft");
            await Go(to.Y - 600, "ArrowDown", "ArrowUp");
        }
        await LookedAndDraggedAsync(page, stage);
        await TakenAsync(page, file);
        Assert.Empty(window.Complaints);
    }

    // Come nearer, look at the whole again, and move the first corner with the mouse: the point goes along and is traced anew.
    private static async Task LookedAndDraggedAsync(IPage page, ILocator stage)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Nearer" }).ClickAsync();
        await Assertions.Expect(stage).Not.ToHaveAttributeAsync("viewBox", "0 0 1600 1200", new() { Timeout = 60_000 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Whole photo" }).ClickAsync();
        await Assertions.Expect(stage).ToHaveAttributeAsync("viewBox", "0 0 1600 1200", new() { Timeout = 60_000 });
        Vec2 corner = Camera.Sees(Corners[0]);
        float[] from = await ScreenAsync(stage, corner), to = await ScreenAsync(stage, corner + new Vec2(-30, 20));
        await page.Mouse.MoveAsync(from[0], from[1]);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(to[0], to[1], new() { Steps = 5 });
        await page.Mouse.UpAsync();
        double[] place = [double.NaN, double.NaN];
        for (int i = 0; i < 300 && !(new Vec2(place[0] - corner.X + 30, place[1] - corner.Y - 20).Length < 8); i++)
        {
            place = await stage.EvaluateAsync<double[]>("s => { const h = s.querySelector('[data-handle=\"0\"]'); return [Number(h.dataset.x), Number(h.dataset.y)]; }");
            await Task.Delay(20);
        }
        // Thirty pixels to the left and twenty down, from where the keys had put it to within a step or two.
        Assert.Equal(corner.X - 30, place[0], 8.0);
        Assert.Equal(corner.Y + 20, place[1], 8.0);
    }

    private async Task<(IPage, BenchPage, BenchProcess, string)> OpenAsync(bool phone)
    {
        string file = _folder.Write("cover.json", StarterJob.Text);
        string photo = Path.Combine(Directory.CreateDirectory(_folder.At("elsewhere")).FullName, "Hood edge.JPG");
        await File.WriteAllBytesAsync(photo, Studio.Jpeg(Studio.Pixels(Camera, 7, new Vec2(Studio.SheetWidth, Studio.SheetHeight), 0.01), 1600, 1200, 90));
        IBrowser browser = await fixture.BrowserAsync();
        BenchProcess bench = BenchProcess.Run(_folder.Path);
        BenchPage window = await BenchPage.OpenAsync(browser, bench.Address + "/job/cover", phone);
        await window.VerdictAsync("Bends only");
        IPage page = window.Page;
        ILocator card = page.Locator(".curvecard").First;
        await card.GetByText("From a photo").ClickAsync();
        await card.GetByLabel("Bring a photo for").SetInputFilesAsync(photo);
        await Waiting.Until(() => File.Exists(_folder.At("hood-edge.jpg")));
        return (page, window, bench, file);
    }

    private static async Task<float[]> ScreenAsync(ILocator stage, Vec2 pixel)
    {
        await stage.EvaluateAsync("s => s.scrollIntoView({ block: 'center' })");
        return await stage.EvaluateAsync<float[]>("(s, p) => { const q = new DOMPoint(p[0], p[1]).matrixTransform(s.getScreenCTM()); return [q.x, q.y]; }", new[] { pixel.X, pixel.Y });
    }

    private static async Task TakenAsync(IPage page, string file)
    {
        await page.GetByText("True within").WaitForAsync();
        await page.Locator(".photostage .traced").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        string name = JobText.Of(await File.ReadAllTextAsync(file)).Find("curves")!.Keys[0];
        await page.GetByRole(AriaRole.Button, new() { Name = $"Take it as {name}" }).ClickAsync();
        string path = JobPath.Under("curves", name);
        await Waiting.Until(() => JobText.Of(File.ReadAllText(file)).Find(JobPath.Under(path, "points")) is { Count: > 4 });
        JobReading job = JobFile.Read(await File.ReadAllTextAsync(file), _ => null);
        Assert.Empty(job.Faults);
        CurveReading built = MeasuredCurve.Build(job.Job!.Curves[0].Spec, path);
        // Places of the job's own placement do not change a length: the edge is as long as the true one to a thousandth.
        double real = Enumerable.Range(0, 3000).Sum(i => Math.Sqrt(0.01 + Math.Pow(Studio.Edge(0.1 * (i + 1)) - Studio.Edge(0.1 * i), 2)));
        // Its ends are where the thumb was, nine pixels off at most, two millimetres and a half each.
        Assert.Equal(real, built.Curve!.Pieces.Sum(p => p.Length(0, 1)), 6.0);
    }
}
