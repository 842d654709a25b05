using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using QRCoder;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>What the terminal says when the bench is ready.</summary>
internal static class BenchGreeting
{
    /// <summary>Address of the page on this machine.</summary>
    public static string Address(WebApplication app) => $"http://127.0.0.1:{Port(app)}";

    /// <summary>Addresses of the page in the shop's network; none if it is not served.</summary>
    public static IEnumerable<string> Shared(BenchAddresses addresses, int port) =>
        addresses.Names.Where(n => n is not ("127.0.0.1" or "localhost" or "[::1]")).Select(n => $"http://{n}:{port}");

    /// <summary>The port that is served.</summary>
    public static int Port(WebApplication app) =>
        new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First().Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal)).Port;

    public static void Write(TextWriter to, WebApplication app, BenchOptions options)
    {
        to.WriteLine($"The layout bench is ready: {Address(app)}");
        to.WriteLine($"Jobs are kept in {options.Folder}. Stop with Ctrl+C; everything is saved as you type.");
        if (!options.Share) return;
        ShareDoor door = app.Services.GetRequiredService<ShareDoor>();
        string? shared = Shared(app.Services.GetRequiredService<BenchAddresses>(), Port(app)).FirstOrDefault();
        if (shared is null)
        {
            to.WriteLine("This machine is in no network of the shop, so no phone can reach it.");
            return;
        }
        to.WriteLine();
        to.WriteLine($"For a phone in the same network: {shared}   code {door.Code[..3]} {door.Code[3..]}");
        using QRCodeData code = QRCodeGenerator.GenerateQrCode(shared, QRCodeGenerator.ECCLevel.M);
        using var picture = new AsciiQRCode(code);
        to.WriteLine(picture.GetGraphicSmall());
        to.WriteLine("Everyone in that network can read what goes to and fro. Share in the shop's own network alone.");
    }
}
