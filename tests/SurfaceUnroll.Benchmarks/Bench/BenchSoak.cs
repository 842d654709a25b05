using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Benchmarks.Bench;

/// <summary>Many pages that edit at once on one layout bench: what a change takes until it is seen, what the server holds, and whether anything is lost.</summary>
internal static class BenchSoak
{
    /// <summary>Arguments: <c>--pages N --minutes M</c>.</summary>
    public static int Run(string[] arguments) => RunAsync(arguments).GetAwaiter().GetResult();

    private static async Task<int> RunAsync(string[] arguments)
    {
        int pages = (int)Number(arguments, "--pages", 20);
        double minutes = Number(arguments, "--minutes", 10);
        await using RunningBench bench = await RunningBench.StartAsync(pages);
        var times = new ConcurrentBag<double>();
        var windows = new List<IPage>();
        for (int i = 0; i < pages; i++) windows.Add(await bench.OpenAsync(i));
        var end = DateTime.UtcNow.AddMinutes(minutes);
        Task memory = WatchAsync(bench.Server, end);
        string[] last = await Task.WhenAll(windows.Select((page, i) => EditAsync(page, i, end, times)));
        await memory;
        int lost = 0;
        for (int i = 0; i < pages; i++)
        {
            string thickness = JobText.Of(await File.ReadAllTextAsync(Path.Combine(bench.Folder, $"job-{i}.json"))).Shown("sheet.thickness");
            if (thickness != last[i]) lost++;
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{pages} pages, {minutes} min: {RunningBench.Words(times)}, last changes lost: {lost}"));
        return lost == 0 ? 0 : 1;
    }

    // One page that changes the thickness again and again and waits each time until the page says that it is seen.
    private static async Task<string> EditAsync(IPage page, int job, DateTime end, ConcurrentBag<double> times)
    {
        ILocator field = page.Locator("#field-sheet-thickness");
        string typed = "0.9";
        for (int k = 0; DateTime.UtcNow < end; k++)
        {
            string before = await RunningBench.CountAsync(page);
            typed = string.Create(CultureInfo.InvariantCulture, $"1.{(k * 7 + job) % 9 + 1}");
            await field.FillAsync(typed);
            times.Add(await RunningBench.NextAsync(page, before));
            // A person looks before the next change. All browsers and the server share this machine: what is drawn without a graphics chip takes the processor some 80 ms a change.
            await Task.Delay(3000 + 137 * job % 1500);
        }
        await page.Locator(".saved", new() { HasText = "Saved" }).WaitForAsync();
        await Task.Delay(500);
        return typed;
    }

    private static async Task WatchAsync(Process server, DateTime end)
    {
        var clock = Stopwatch.StartNew();
        while (DateTime.UtcNow < end)
        {
            server.Refresh();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{clock.Elapsed.TotalSeconds,5:0} s  server holds {server.WorkingSet64 >> 20} MB"));
            TimeSpan left = end - DateTime.UtcNow;
            await Task.Delay(left < TimeSpan.FromSeconds(30) ? left + TimeSpan.FromMilliseconds(1) : TimeSpan.FromSeconds(30));
        }
    }

    private static double Number(string[] arguments, string name, double otherwise) =>
        Array.IndexOf(arguments, name) is >= 0 and int at && at + 1 < arguments.Length ? double.Parse(arguments[at + 1], CultureInfo.InvariantCulture) : otherwise;
}
