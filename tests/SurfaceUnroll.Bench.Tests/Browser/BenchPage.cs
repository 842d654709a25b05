using Microsoft.Playwright;

namespace SurfaceUnroll.Bench.Tests.Browser;

/// <summary>A window on a bench, that knows what it asked of the network and what it complained of.</summary>
internal sealed class BenchPage : IAsyncDisposable
{
    private readonly IBrowserContext _context;

    private BenchPage(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning" && !Ignored(message.Text)) Complaints.Add(message.Text);
        };
        page.PageError += (_, error) => Complaints.Add(error);
        page.Request += (_, request) => Requests.Add(request.Url);
    }

    public IPage Page { get; }

    /// <summary>Errors of the console.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>Addresses that were asked for.</summary>
    public List<string> Requests { get; } = [];

    /// <summary>Opens a window.</summary>
    /// <param name="browser">The browser.</param>
    /// <param name="address">What to open.</param>
    /// <param name="phone">390 px wide, with touch.</param>
    public static async Task<BenchPage> OpenAsync(IBrowser browser, string address, bool phone = false)
    {
        IBrowserContext context = await browser.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = phone ? new ViewportSize { Width = 390, Height = 844 } : new ViewportSize { Width = 1280, Height = 900 },
            HasTouch = phone,
            IsMobile = phone,
            AcceptDownloads = true,
        });
        context.SetDefaultTimeout(60_000); // A loaded machine is slow; nothing is measured by it.
        var page = new BenchPage(context, await context.NewPageAsync());
        await page.Page.GotoAsync(address);
        return page;
    }

    /// <summary>The page of a stop is there.</summary>
    public Task StopAsync(string name) => Page.GetByRole(AriaRole.Heading, new() { Name = name, Level = 1, Exact = true }).WaitForAsync();

    /// <summary>The verdict says so.</summary>
    public Task VerdictAsync(string words) => Page.Locator(".verdict", new() { HasText = words }).First.WaitForAsync();

    public async ValueTask DisposeAsync() => await _context.DisposeAsync();

    // Software rendering tells that it is slow, and a killed server is missed: neither is the page's fault.
    private static bool Ignored(string text) => text.Contains("GPU stall", StringComparison.Ordinal) || text.Contains("WebSocket", StringComparison.Ordinal) || text.Contains("ERR_CONNECTION_REFUSED", StringComparison.Ordinal) || text.Contains("Connection disconnected", StringComparison.Ordinal);
}
