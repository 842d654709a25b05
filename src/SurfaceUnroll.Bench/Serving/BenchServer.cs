using System.Net;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.XmlEncryption;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Bench.Pages;
using SurfaceUnroll.Files.Printers;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>Puts the server together.</summary>
public static class BenchServer
{
    // The largest thing that a page sends is a mesh or a photo.
    private const long LargestUpload = 64 << 20;

    /// <summary>The server, not started.</summary>
    public static WebApplication Build(BenchOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        // Found beside the program, wherever it is started from.
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, ApplicationName = typeof(BenchServer).Assembly.GetName().Name });
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        builder.Logging.ClearProviders().AddConsole().SetMinimumLevel(LogLevel.Warning)
            // A start that fails is told by the program, in its own words.
            .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestUpload;
            kestrel.Listen(options.Share ? IPAddress.Any : IPAddress.Loopback, options.Port, listen => listen.Protocols = HttpProtocols.Http1);
        });
        // Nothing that must be read again after a restart is protected by keys, so none are kept.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        // A ring of keys is made all the same; kept in memory it leaves no file in the user's folder and no warning before the first words.
        builder.Services.Configure<KeyManagementOptions>(keys => (keys.XmlRepository, keys.XmlEncryptor) = (new PassingKeys(), new NullXmlEncryptor()));
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton(new BenchAddresses(options.Share));
        builder.Services.AddSingleton(new ShareDoor());
        builder.Services.AddSingleton(_ => new JobShelf(options.Folder));
        builder.Services.AddSingleton<PatternStore>();
        builder.Services.AddSingleton<Stops.Forming.TickBoards>();
        builder.Services.AddSingleton<Stops.Measuring.Photos.PhotoTable>();
        builder.Services.AddSingleton(options.Printers ?? PrinterStore.OfUser());
        builder.Services.AddScoped<ChosenPrinter>();
        builder.Services.AddRazorComponents().AddInteractiveServerComponents(circuit =>
        {
            // A closed lid is opened again within the shift.
            circuit.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(30);
            circuit.DisconnectedCircuitMaxRetained = 50;
        }).AddHubOptions(hub => hub.MaximumReceiveMessageSize = 1 << 20);

        WebApplication app = builder.Build();
        app.UseMiddleware<SecurityHeaders>();
        app.UseMiddleware<HostGuard>();
        app.UseMiddleware<DoorKeeper>();
        app.UseAntiforgery();
        app.MapStaticAssets();
        DoorKeeper.Map(app, app.Services.GetRequiredService<ShareDoor>());
        EmbeddedModules.Map(app);
        Downloads.Map(app);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(render => render.ContentSecurityFrameAncestorsPolicy = null); // Ours says it already.
        return app;
    }
}
