using Microsoft.Playwright;

namespace SurfaceUnroll.Bench.Tests.Browser;

/// <summary>One Chromium for all browser tests: Debian's, since Playwright's own cannot be fetched everywhere.</summary>
public sealed class BrowserFixture : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    Task IAsyncLifetime.InitializeAsync() => Task.CompletedTask;

    /// <summary>The browser; skips the test where there is none and none can be installed.</summary>
    public async Task<IBrowser> BrowserAsync()
    {
        DebianTool.Run("chromium", ["chromium", "--version"], "chromium", "--version");
        _playwright ??= await Playwright.CreateAsync();
        return _browser ??= await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = "/usr/bin/chromium",
            Args = ["--no-sandbox", "--enable-unsafe-swiftshader", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    async Task IAsyncLifetime.DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
    }
}

/// <summary>Tests that share the browser run one after another: each looks at times and pictures of its own.</summary>
[CollectionDefinition(Name)]
public sealed class OneBrowser : ICollectionFixture<BrowserFixture>
{
    /// <summary>Name of the collection.</summary>
    public const string Name = "browser";
}
