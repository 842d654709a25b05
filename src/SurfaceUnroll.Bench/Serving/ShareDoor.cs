using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>Lets devices of the shop's network in that have given the code; this machine itself comes and goes as it likes.</summary>
/// <remarks>Code and passes live in memory alone: both are gone when the server stops.</remarks>
public sealed class ShareDoor
{
    /// <summary>Wrong codes of one device, and of all together, after which it is closed for a while.</summary>
    public const int MostTries = 5, MostTriesOfAll = 50;

    /// <summary>How long it then stays closed.</summary>
    public static readonly TimeSpan Closed = TimeSpan.FromMinutes(5);

    internal const string Cookie = "bench-pass";

    private readonly ConcurrentDictionary<string, byte> _passes = new();
    private readonly List<(string Device, DateTimeOffset When)> _wrong = [];
    private readonly TimeProvider _clock;

    /// <summary>Opens the door with a new code.</summary>
    public ShareDoor(TimeProvider? clock = null)
    {
        _clock = clock ?? TimeProvider.System;
        Code = RandomNumberGenerator.GetInt32(1_000_000).ToString("000000", CultureInfo.InvariantCulture);
    }

    /// <summary>Six digits.</summary>
    public string Code { get; }

    /// <summary>The device has given the code, or is this machine.</summary>
    internal bool IsOpenTo(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } address && IPAddress.IsLoopback(address)
        || (context.Request.Cookies[Cookie] is { } pass && _passes.ContainsKey(pass));

    /// <summary>Tries a code.</summary>
    /// <param name="device">Address of the device.</param>
    /// <param name="code">What was typed; spaces do not count.</param>
    /// <returns>A pass, or why there is none.</returns>
    public (string? Pass, string? Problem) Try(string device, string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        DateTimeOffset now = _clock.GetUtcNow();
        lock (_wrong)
        {
            _wrong.RemoveAll(w => now - w.When > Closed);
            if (_wrong.Count >= MostTriesOfAll || _wrong.Count(w => w.Device == device) >= MostTries)
                return (null, "Too many wrong codes. Wait five minutes, then look at the screen of the laptop again.");
            string digits = new([.. code.Where(char.IsAsciiDigit)]);
            if (!CryptographicOperations.FixedTimeEquals(System.Text.Encoding.ASCII.GetBytes(digits), System.Text.Encoding.ASCII.GetBytes(Code)))
            {
                _wrong.Add((device, now));
                return (null, "That is not the code. It stands on the screen of the laptop, six digits.");
            }
        }
        string pass = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        _passes[pass] = 0;
        return (pass, null);
    }
}

/// <summary>Sends devices without a pass to the page that asks for the code.</summary>
internal sealed class DoorKeeper(RequestDelegate next, ShareDoor door)
{
    public const string Address = "/door";

    public Task InvokeAsync(HttpContext context)
    {
        if (door.IsOpenTo(context) || context.Request.Path == Address || context.Request.Path == "/bench.css") return next(context);
        if (HttpMethods.IsGet(context.Request.Method) && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal))
        {
            context.Response.Redirect(Address);
            return Task.CompletedTask;
        }
        context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Task.CompletedTask;
    }

    public static void Map(WebApplication app, ShareDoor door)
    {
        app.MapGet(Address, () => Results.Content(Page(""), "text/html; charset=utf-8")).DisableAntiforgery();
        app.MapPost(Address, async (HttpContext context) =>
        {
            IFormCollection form = await context.Request.ReadFormAsync();
            (string? pass, string? problem) = door.Try(context.Connection.RemoteIpAddress?.ToString() ?? "", form["code"].ToString());
            if (pass is null) return Results.Content(Page(problem!), "text/html; charset=utf-8", statusCode: StatusCodes.Status403Forbidden);
            context.Response.Cookies.Append(ShareDoor.Cookie, pass, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true });
            return Results.Redirect("/");
        }).DisableAntiforgery();
    }

    // Another page's post is refused by the guard before it comes here.
    private static string Page(string problem) => $"""
        <!doctype html>
        <html lang="en">
        <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>SurfaceUnroll: code</title><link rel="stylesheet" href="/bench.css"></head>
        <body class="door">
        <main>
          <h1>Layout bench</h1>
          <p>Type the six digits that the laptop shows. This phone is asked once.</p>
          <form method="post" action="{Address}">
            <label for="code">Code</label>
            <input id="code" name="code" inputmode="numeric" autocomplete="one-time-code" maxlength="7" required autofocus{(problem.Length > 0 ? " aria-invalid=\"true\" aria-describedby=\"problem\"" : "")}>
            {(problem.Length > 0 ? $"<p id=\"problem\" class=\"fault\" role=\"alert\">{WebUtility.HtmlEncode(problem)}</p>" : "")}
            <button type="submit" class="main">Let me in</button>
          </form>
        </main>
        </body>
        </html>
        """;
}
