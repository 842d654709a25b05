using Microsoft.Playwright;
using SurfaceUnroll.Tests;

namespace SurfaceUnroll.Benchmarks.Bench;

/// <summary>Takes the pictures of the layout bench that stand in the guide, on a laptop and on a phone, by day and by night.</summary>
internal static class BenchPictures
{
    private static readonly (string Name, string Stop, int Width, int Height, bool Dark)[] Pictures =
    [
        ("measure-1280", "measure", 1280, 900, false),
        ("fit-up-1280", "fit-up", 1280, 900, false),
        ("check-1280-dark", "check", 1280, 900, true),
        ("cut-1280", "cut", 1280, 900, false),
        ("measure-390", "measure", 390, 844, false),
        ("form-390-dark", "form", 390, 844, true),
    ];

    public static int Run() => RunAsync().GetAwaiter().GetResult();

    private static async Task<int> RunAsync()
    {
        await using RunningBench bench = await RunningBench.StartAsync(1, "trike-full-cover");
        foreach ((string name, string stop, int width, int height, bool dark) in Pictures)
        {
            IPage page = await bench.OpenAsync(0, stop, new BrowserNewPageOptions
            {
                ViewportSize = new ViewportSize { Width = width, Height = height },
                ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
                IsMobile = width < 500,
                HasTouch = width < 500,
            });
            // Pages are counted and pictures in space drawn a moment after the sheet is there.
            await page.Locator(".papers", new() { HasTextRegex = new System.Text.RegularExpressions.Regex("page") }).WaitForAsync(new() { State = WaitForSelectorState.Attached });
            await page.WaitForTimeoutAsync(2500);
            string file = Path.Combine(Repository.Root, "docs", "images", $"bench-{name}.png");
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = file });
            Console.WriteLine(file);
            await page.CloseAsync();
        }
        return 0;
    }
}
