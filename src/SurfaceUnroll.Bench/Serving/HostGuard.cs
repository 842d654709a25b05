using System.Net;
using System.Net.Sockets;
using Microsoft.Net.Http.Headers;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>Refuses requests that a page from elsewhere could have sent.</summary>
/// <remarks>
/// A name of somebody else's that points at this machine (DNS rebinding) shows in the Host header; a form or script of another page in the Origin header or in
/// Sec-Fetch-Site. Sockets of the page go through here too.
/// </remarks>
internal sealed class HostGuard(RequestDelegate next, BenchAddresses addresses)
{
    public Task InvokeAsync(HttpContext context)
    {
        HttpRequest request = context.Request;
        if (!addresses.IsOurs(request.Host.Host))
            return RefuseAsync(context, StatusCodes.Status421MisdirectedRequest, $"This bench answers to {string.Join(", ", addresses.Names)} alone.");
        string origin = request.Headers[HeaderNames.Origin].ToString(), site = request.Headers["Sec-Fetch-Site"].ToString();
        bool socket = request.Headers.Upgrade.ToString().Equals("websocket", StringComparison.OrdinalIgnoreCase);
        bool changes = socket || !(HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method));
        bool elsewhere = (origin.Length > 0 && origin != $"{request.Scheme}://{request.Host}") || site is "cross-site" or "same-site";
        if (changes && elsewhere) return RefuseAsync(context, StatusCodes.Status403Forbidden, "Another page cannot change a job.");
        return next(context);
    }

    private static Task RefuseAsync(HttpContext context, int status, string words)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(words);
    }
}

/// <summary>The names under which this machine is reached.</summary>
/// <param name="share">The shop's own network is served too.</param>
internal sealed class BenchAddresses(bool share)
{
    private static readonly string[] Loopback = ["127.0.0.1", "localhost", "[::1]"];

    /// <summary>Names, best first.</summary>
    public IReadOnlyList<string> Names { get; } = share ? [.. Network(), .. Loopback] : Loopback;

    /// <summary>A request to this host is meant for us.</summary>
    public bool IsOurs(string host) => Names.Contains(host, StringComparer.OrdinalIgnoreCase);

    // The addresses of this machine in networks that are private (RFC 1918, RFC 3927).
    private static IEnumerable<string> Network()
    {
        try
        {
            return [.. Dns.GetHostAddresses(Dns.GetHostName()).Where(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a)).Concat(OfInterfaces())
                .Where(IsPrivate).Select(a => a.ToString()).Distinct()];
        }
        catch (SocketException)
        {
            return [.. OfInterfaces().Where(IsPrivate).Select(a => a.ToString()).Distinct()];
        }
    }

    private static IEnumerable<IPAddress> OfInterfaces() =>
        System.Net.NetworkInformation.NetworkInterface.GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == System.Net.NetworkInformation.OperationalStatus.Up)
            .SelectMany(n => n.GetIPProperties().UnicastAddresses).Select(a => a.Address)
            .Where(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a));

    private static bool IsPrivate(IPAddress address) => address.GetAddressBytes() is [10, ..] or [172, >= 16 and < 32, ..] or [192, 168, ..] or [169, 254, ..];
}
