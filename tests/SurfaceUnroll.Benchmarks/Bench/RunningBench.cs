using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using SurfaceUnroll.Tests;

namespace SurfaceUnroll.Benchmarks.Bench;

/// <summary>The layout bench as a program of its own, built for Release, with a browser in front of it and jobs in a folder that goes with it.</summary>
internal sealed class RunningBench : IAsyncDisposable
{
    private readonly IPlaywright _playwright;
    private readonly IBrowser _browser;

    private RunningBench(Process server, string address, string folder, double ready, IPlaywright playwright, IBrowser browser) =>
        (Server, Address, Folder, Ready, _playwright, _browser) = (server, address, folder, ready, playwright, browser);

    public Process Server { get; }

    public string Address { get; }

    public string Folder { get; }

    /// <summary>Seconds from the start of the program to the first page it gave out.</summary>
    public double Ready { get; }

    /// <summary>Starts it.</summary>
    /// <param name="jobs">How many copies of the job lie in its folder.</param>
    /// <param name="demo">The job, one of the fixtures.</param>
    /// <param name="changed">What is made of its text; nothing if left out.</param>
    public static async Task<RunningBench> StartAsync(int jobs, string demo = "trike-tail-cover", Func<string, string>? changed = null)
    {
        string root = Repository.Root, folder = Directory.CreateTempSubdirectory("bench-").FullName;
        string program = Path.Combine(root, "src", "SurfaceUnroll.Bench", "bin", "Release", "net10.0", "SurfaceUnroll.Bench.dll");
        if (!File.Exists(program)) throw new FileNotFoundException("Run the benchmarks with -c Release, so that the bench is built for it too.", program);
        string job = await File.ReadAllTextAsync(Path.Combine(root, "fixtures", "jobs", demo + ".json"));
        if (changed is not null) job = changed(job);
        for (int i = 0; i < jobs; i++) await File.WriteAllTextAsync(Path.Combine(folder, $"job-{i}.json"), job);
        var clock = Stopwatch.StartNew();
        Process server = Process.Start(new ProcessStartInfo("dotnet", [program, folder, "--no-browser", "--port", "0"]) { RedirectStandardOutput = true })!;
        string address = (await server.StandardOutput.ReadLineAsync())!.Split(' ')[^1];
        using (var http = new HttpClient()) (await http.GetAsync(new Uri(address))).EnsureSuccessStatusCode();
        double ready = clock.Elapsed.TotalSeconds;
        IPlaywright playwright = await Playwright.CreateAsync();
        IBrowser browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = "/usr/bin/chromium",
            Args = ["--no-sandbox", "--enable-unsafe-swiftshader", "--disable-background-networking", "--disable-renderer-backgrounding", "--disable-backgrounding-occluded-windows"],
        });
        return new RunningBench(server, address, folder, ready, playwright, browser);
    }

    /// <summary>A window of its own on a job, once its sheet is there.</summary>
    /// <param name="job">Number of the job.</param>
    /// <param name="stop">Key of the stop; the first if empty.</param>
    /// <param name="window">Size and looks; 1280 by 900 if null.</param>
    public async Task<IPage> OpenAsync(int job, string stop = "", BrowserNewPageOptions? window = null)
    {
        IPage page = await _browser.NewPageAsync(window ?? new BrowserNewPageOptions { ViewportSize = new ViewportSize { Width = 1280, Height = 900 } });
        page.SetDefaultTimeout(120_000);
        await page.GotoAsync($"{Address}/job/job-{job}/{stop}");
        await page.Locator(".verdict:is(.good, .some, .bad)").First.WaitForAsync();
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
        Server.Kill(entireProcessTree: true);
        await Server.WaitForExitAsync();
        Server.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>Middle and 95th percentile of times, in words.</summary>
    public static string Words(IEnumerable<double> times)
    {
        double[] sorted = [.. times.Order()];
        return string.Create(CultureInfo.InvariantCulture, $"{sorted.Length} changes, median {sorted[sorted.Length / 2]:0} ms, 95th percentile {sorted[(int)(0.95 * sorted.Length)]:0} ms");
    }

    /// <summary>How many pictures the page has told of.</summary>
    public static async Task<string> CountAsync(IPage page) => await page.Locator("#timing").GetAttributeAsync("data-count") ?? "0";

    /// <summary>Waits for the next picture; the time that its change took, ms.</summary>
    public static async Task<double> NextAsync(IPage page, string before)
    {
        await page.WaitForFunctionAsync("count => Number(document.querySelector('#timing').dataset.count ?? 0) > Number(count)", before);
        return double.Parse((await page.Locator("#timing").GetAttributeAsync("data-last"))!, CultureInfo.InvariantCulture);
    }
}
