using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Tests;

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
        string root = Repository.Root, folder = Directory.CreateTempSubdirectory("bench-soak-").FullName;
        string program = Path.Combine(root, "src", "SurfaceUnroll.Bench", "bin", "Release", "net10.0", "SurfaceUnroll.Bench.dll");
        if (!File.Exists(program))
        {
            Console.Error.WriteLine("Build the bench first: dotnet build -c Release src/SurfaceUnroll.Bench");
            return 2;
        }
        string job = await File.ReadAllTextAsync(Path.Combine(root, "fixtures", "jobs", "trike-tail-cover.json"));
        for (int i = 0; i < pages; i++) await File.WriteAllTextAsync(Path.Combine(folder, $"job-{i}.json"), job);

        var clock = Stopwatch.StartNew();
        using Process server = Process.Start(new ProcessStartInfo("dotnet", [program, folder, "--no-browser", "--port", "0"]) { RedirectStandardOutput = true })!;
        string address = (await server.StandardOutput.ReadLineAsync())!.Split(' ')[^1];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"ready after {clock.Elapsed.TotalSeconds:0.00} s"));
        using IPlaywright playwright = await Playwright.CreateAsync();
        await using IBrowser browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = "/usr/bin/chromium",
            Args = ["--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--disable-background-networking", "--disable-renderer-backgrounding", "--disable-backgrounding-occluded-windows"],
        });
        var times = new ConcurrentBag<double>();
        var end = DateTime.UtcNow.AddMinutes(minutes);
        Task memory = WatchAsync(server, end);
        string[] last = await Task.WhenAll(Enumerable.Range(0, pages).Select(i => EditAsync(browser, $"{address}/job/job-{i}", i, end, times)));
        await memory;
        int lost = 0;
        for (int i = 0; i < pages; i++)
        {
            string thickness = JobText.Of(await File.ReadAllTextAsync(Path.Combine(folder, $"job-{i}.json"))).Shown("sheet.thickness");
            if (thickness != last[i]) lost++;
        }
        double[] sorted = [.. times.Order()];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{pages} pages, {minutes} min: {sorted.Length} changes, median {sorted[sorted.Length / 2]:0} ms, 95th percentile {sorted[(int)(0.95 * sorted.Length)]:0} ms, last changes lost: {lost}"));
        server.Kill(entireProcessTree: true);
        Directory.Delete(folder, recursive: true);
        return lost == 0 ? 0 : 1;
    }

    // One page that changes the thickness again and again and waits each time until the page says that it is seen.
    private static async Task<string> EditAsync(IBrowser browser, string address, int seed, DateTime end, ConcurrentBag<double> times)
    {
        IPage page = await browser.NewPageAsync();
        page.SetDefaultTimeout(120_000);
        await page.GotoAsync(address);
        await page.Locator(".verdict.good").WaitForAsync();
        ILocator field = page.Locator("#field-sheet-thickness");
        string typed = "0.9";
        for (int k = 0; DateTime.UtcNow < end; k++)
        {
            string before = await page.Locator("#timing").GetAttributeAsync("data-count") ?? "0";
            typed = string.Create(CultureInfo.InvariantCulture, $"1.{(k * 7 + seed) % 9 + 1}");
            await field.FillAsync(typed);
            await page.WaitForFunctionAsync("count => Number(document.querySelector('#timing').dataset.count ?? 0) > Number(count)", before);
            if (await page.Locator("#timing").GetAttributeAsync("data-last") is { } time) times.Add(double.Parse(time, CultureInfo.InvariantCulture));
            // A person looks before the next change.
            await Task.Delay(500 + 37 * seed % 400);
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
