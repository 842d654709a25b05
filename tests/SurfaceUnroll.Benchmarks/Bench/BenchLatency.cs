using System.Globalization;
using Microsoft.Playwright;

namespace SurfaceUnroll.Benchmarks.Bench;

/// <summary>What one change takes on the layout bench until its sheet is seen, as the page measures it: numbers typed one by one, and a point dragged without a rest; the readings exact, or with errors that are carried to the edges whenever the job
/// is left alone.</summary>
internal static class BenchLatency
{
    private const int WarmUp = 40, Typed = 60, Dragged = 200;

    public static int Run(bool errors) => RunAsync(errors).GetAwaiter().GetResult();

    private static async Task<int> RunAsync(bool errors)
    {
        await using RunningBench bench = await RunningBench.StartAsync(1, changed: job => errors
            ? job.Replace("\"run\": [ { \"line\": 55 }", "\"error\": 0.5, \"run\": [ { \"line\": 55 }", StringComparison.Ordinal).Replace("\"plan\": {", "\"error\": 0.5, \"plan\": {", StringComparison.Ordinal)
            : job);
        // With errors a second picture follows the first, once they are worked out.
        int rest = errors ? 3000 : 700;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"first page given out {bench.Ready:0.00} s after the start"));
        IPage page = await bench.OpenAsync(0);
        await TypeAsync(page, WarmUp, rest);
        Console.WriteLine($"typed:   {RunningBench.Words(await TypeAsync(page, Typed, rest))}");
        await DragAsync(page, WarmUp);
        List<(double Shown, double Waited)> drag = await DragAsync(page, Dragged);
        Console.WriteLine($"dragged, age of the place that is shown:        {RunningBench.Words(drag.Select(d => d.Shown))}");
        Console.WriteLine($"dragged, wait of the first move not shown yet:  {RunningBench.Words(drag.Select(d => d.Waited))}");
        return 0;
    }

    // A person looks before the next change, and the count of pages is done by then.
    private static async Task<List<double>> TypeAsync(IPage page, int count, int rest)
    {
        List<double> times = [];
        ILocator field = page.Locator("#field-sheet-thickness");
        for (int k = 0; k < count; k++)
        {
            string before = await RunningBench.CountAsync(page);
            await field.FillAsync(string.Create(CultureInfo.InvariantCulture, $"1.{k % 9 + 1}"));
            times.Add(await RunningBench.NextAsync(page, before));
            await page.WaitForTimeoutAsync(rest);
        }
        return times;
    }

    // The pointer moves at 60 Hz whether or not the last move is answered yet.
    private static async Task<List<(double Shown, double Waited)>> DragAsync(IPage page, int moves)
    {
        // A point of the side view, away from its ends, which must stay where those of the front are.
        ILocator handle = page.Locator("[data-handle]").Nth(3);
        await handle.ScrollIntoViewIfNeededAsync();
        LocatorBoundingBoxResult at = (await handle.BoundingBoxAsync())!;
        float x = at.X + at.Width / 2, y = at.Y + at.Height / 2;
        await page.EvaluateAsync("""
            () => {
              const line = document.querySelector('#timing'), told = window.told = [];
              new MutationObserver(() => told.push([Number(line.dataset.last), Number(line.dataset.waited)])).observe(line, { attributes: true, attributeFilter: ['data-count'] });
            }
            """);
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        for (int k = 1; k <= moves; k++)
        {
            await page.Mouse.MoveAsync(x + 4 * MathF.Sin(0.1f * k), y + 4 * MathF.Sin(0.13f * k));
            await page.WaitForTimeoutAsync(16);
        }
        await page.Mouse.UpAsync();
        await page.WaitForTimeoutAsync(1000);
        return [.. (await page.EvaluateAsync<double[][]>("() => window.told")).Select(t => (t[0], t[1]))];
    }
}
