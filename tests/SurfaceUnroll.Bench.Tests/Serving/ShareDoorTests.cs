using System.Net;
using SurfaceUnroll.Bench.Serving;

namespace SurfaceUnroll.Bench.Tests.Serving;

public class ShareDoorTests
{
    private sealed class Clock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 1, 1, 8, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }

    private static string Wrong(ShareDoor door) => door.Code == "000000" ? "111111" : "000000";

    [Fact]
    public void Code_has_six_digits_and_gives_a_pass_of_its_own_each_time()
    {
        var door = new ShareDoor();
        Assert.Matches("^[0-9]{6}$", door.Code);
        (string? first, _) = door.Try("a", door.Code);
        (string? second, _) = door.Try("b", $"{door.Code[..3]} {door.Code[3..]}");
        Assert.NotNull(first);
        Assert.NotNull(second);
        Assert.NotEqual(first, second);
    }

    [Fact]
    public void After_five_wrong_codes_even_the_right_one_waits()
    {
        var clock = new Clock();
        var door = new ShareDoor(clock);
        for (int i = 0; i < ShareDoor.MostTries; i++) Assert.Null(door.Try("a", Wrong(door)).Pass);
        Assert.Contains("five minutes", door.Try("a", door.Code).Problem, StringComparison.Ordinal);
        Assert.NotNull(door.Try("b", door.Code).Pass);
        clock.Now += ShareDoor.Closed + TimeSpan.FromSeconds(1);
        Assert.NotNull(door.Try("a", door.Code).Pass);
    }

    [Fact]
    public void Many_devices_together_guess_no_better()
    {
        var door = new ShareDoor(new Clock());
        for (int i = 0; i < ShareDoor.MostTriesOfAll; i++) door.Try($"device {i}", Wrong(door));
        Assert.Null(door.Try("another", door.Code).Pass);
    }

    [Fact]
    public async Task Shared_bench_asks_a_phone_for_the_code_once()
    {
        using var folder = new TemporaryFolder();
        WebApplication app = BenchServer.Build(new BenchOptions(folder.Path, 0, Share: true));
        await app.StartAsync();
        try
        {
            string? shared = BenchGreeting.Shared(app.Services.GetRequiredService<BenchAddresses>(), BenchGreeting.Port(app)).FirstOrDefault();
            if (shared is null) return; // In no private network: nobody can come.
            using var phone = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = new Uri(shared) };
            phone.DefaultRequestHeaders.Add("Accept", "text/html");
            HttpResponseMessage sent = await phone.GetAsync("/");
            Assert.Equal("/door", sent.Headers.Location?.ToString());
            Assert.Equal(HttpStatusCode.Unauthorized, (await phone.PostAsync("/_blazor/negotiate", null)).StatusCode);
            ShareDoor door = app.Services.GetRequiredService<ShareDoor>();
            Assert.Equal(HttpStatusCode.Forbidden, (await Post(Wrong(door))).StatusCode);
            Assert.Equal(HttpStatusCode.Redirect, (await Post(door.Code)).StatusCode);
            Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("/")).StatusCode);

            Task<HttpResponseMessage> Post(string code) => phone.PostAsync("/door", new FormUrlEncodedContent([new("code", code)]));
        }
        finally
        {
            await app.StopAsync();
        }
    }
}
