using System.Net;
using System.Net.Sockets;
using System.Text;
using SurfaceUnroll.Bench.Serving;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Tests.Serving;

/// <summary>Who is let in, and to what.</summary>
public sealed class ServingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly PrinterStore _printers;
    private readonly WebApplication _app;
    private readonly Uri _address;
    private readonly HttpClient _client;

    public ServingTests()
    {
        _printers = new PrinterStore(Path.Combine(_folder.Path, "configuration"));
        _folder.Write("cover.json", SurfaceUnroll.Files.JobFiles.StarterJob.Text);
        File.WriteAllText(Path.Combine(Path.GetDirectoryName(_folder.Path)!, Path.GetFileName(_folder.Path) + "-secret.json"), "{}");
        _app = BenchServer.Build(new BenchOptions(_folder.Path, 0) { Printers = _printers });
        _app.StartAsync().GetAwaiter().GetResult();
        _address = new Uri(BenchGreeting.Address(_app));
        _client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = _address };
    }

    public void Dispose()
    {
        _client.Dispose();
        _app.StopAsync().GetAwaiter().GetResult();
        _app.Services.GetRequiredService<SurfaceUnroll.Bench.Desk.JobShelf>().Dispose();
        File.Delete(Path.Combine(Path.GetDirectoryName(_folder.Path)!, Path.GetFileName(_folder.Path) + "-secret.json"));
        _folder.Dispose();
    }

    [Fact]
    public void A_port_in_use_is_told_in_two_lines()
    {
        using var taken = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        taken.Start();
        int port = ((System.Net.IPEndPoint)taken.LocalEndpoint).Port;
        using var folder = new TemporaryFolder();
        string said = Assert.Throws<InvalidOperationException>(() => BenchProcess.Run(folder.Path, port)).Message;
        string[] lines = said.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, lines.Length);
        Assert.Contains($"Port {port} cannot be used", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("Name another with --port", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Only_this_machine_is_served()
    {
        IPAddress? other = Dns.GetHostAddresses(Dns.GetHostName()).FirstOrDefault(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a));
        if (other is null) return; // A machine without a network is reached by nobody.
        using var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        Assert.Throws<SocketException>(() => socket.Connect(other, _address.Port));
    }

    [Theory]
    [InlineData("evil.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("127.0.0.1.evil.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("192.168.1.20", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("127.0.0.1", HttpStatusCode.OK)]
    public async Task Name_of_somebody_else_is_refused(string host, HttpStatusCode status)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = $"{host}:{_address.Port}";
        Assert.Equal(status, (await _client.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("http://evil.example", null)]
    [InlineData("null", null)]
    [InlineData(null, "cross-site")]
    [InlineData(null, "same-site")]
    public async Task Post_from_another_page_is_refused(string? origin, string? site)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1");
        if (origin is not null) request.Headers.Add("Origin", origin);
        if (site is not null) request.Headers.Add("Sec-Fetch-Site", site);
        Assert.Equal(HttpStatusCode.Forbidden, (await _client.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task Socket_of_another_page_is_refused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/_blazor");
        request.Headers.Add("Origin", "http://evil.example");
        request.Headers.TryAddWithoutValidation("Connection", "Upgrade");
        request.Headers.TryAddWithoutValidation("Upgrade", "websocket");
        request.Headers.TryAddWithoutValidation("Sec-WebSocket-Version", "13");
        request.Headers.TryAddWithoutValidation("Sec-WebSocket-Key", Convert.ToBase64String(new byte[16]));
        Assert.Equal(HttpStatusCode.Forbidden, (await _client.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("..%2F..%2Fetc%2Fpasswd")]
    [InlineData("..%5C..%5Csecret")]
    [InlineData("%2Fetc%2Fpasswd")]
    [InlineData("cover%00")]
    public async Task Name_of_a_job_leads_nowhere_else(string name)
    {
        HttpResponseMessage answer = await _client.GetAsync($"/everything/{name}");
        Assert.NotEqual(HttpStatusCode.OK, answer.StatusCode);
        string secret = Path.GetFileName(_folder.Path) + "-secret";
        Assert.Null(_app.Services.GetRequiredService<SurfaceUnroll.Bench.Desk.JobShelf>().Open($"../{secret}"));
    }

    [Fact]
    public async Task Page_may_load_nothing_from_elsewhere()
    {
        HttpResponseMessage answer = await _client.GetAsync("/");
        string policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        // The page carries a key of random letters in which two slashes mean nothing: an address has them after a colon or begins with them.
        Assert.DoesNotMatch("""(:|=\s*["']?|\(\s*["']?)//""", await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Upload_over_the_limit_is_refused()
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, _address.Port);
        await using NetworkStream stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"POST /door HTTP/1.1\r\nHost: {_address.Authority}\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {1L << 30}\r\n\r\n"));
        using var reader = new StreamReader(stream);
        Assert.Contains("413", await reader.ReadLineAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Files_are_those_of_the_command_line()
    {
        byte[] served = await _client.GetByteArrayAsync("/files/cover/cover.pdf");
        SurfaceUnroll.Jobs.Job job = SurfaceUnroll.Files.JobFiles.JobFile.Read(SurfaceUnroll.Files.JobFiles.StarterJob.Text).Job!;
        var files = SurfaceUnroll.Files.Output.PatternFiles.Of(SurfaceUnroll.Jobs.Developer.Develop(job));
        Assert.Equal(files.Single(f => f.Name == "cover.pdf").Content.ToArray(), served);
        using var archive = new System.IO.Compression.ZipArchive(await _client.GetStreamAsync("/everything/cover"));
        Assert.Equal(files.Select(f => f.Name).Prepend("cover.json").Order(), archive.Entries.Select(e => e.FullName).Order());
    }

    [Fact]
    public void Chosen_printer_is_chosen_in_the_next_window_too()
    {
        var (laser, inkjet) = (new PrinterScale("shop laser", 0.986, 0.997, 0.002), new PrinterScale("inkjet", 1.002, 1.001, 0));
        Assert.Null(_printers.Keep(laser));
        Assert.Null(new ChosenPrinter(_printers).Scale);
        new ChosenPrinter(_printers).Choose(laser);
        Assert.Null(_printers.Keep(inkjet));
        Assert.Equal(laser.Name, new ChosenPrinter(_printers).Scale?.Name);
        new ChosenPrinter(_printers).Choose(null);
        Assert.Null(new ChosenPrinter(_printers).Scale);
        Assert.Equal(2, _printers.Read().Printers.Length);
    }

    [Fact]
    public async Task Files_for_a_measured_printer_are_corrected_and_others_stay_as_they_are()
    {
        var scale = new PrinterScale("shop laser", 0.986, 0.997, 0.002);
        Assert.Null(_printers.Keep(scale));
        // As it is read back: degrees in the file are radians here.
        scale = Assert.Single(_printers.Read().Printers);
        Job job = SurfaceUnroll.Files.JobFiles.JobFile.Read(SurfaceUnroll.Files.JobFiles.StarterJob.Text).Job!;
        var files = PatternFiles.Of(Developer.Develop(job with { Paper = job.Paper with { Printer = scale } }));
        // The report says what each step took, which is never the same twice.
        foreach (OutputFile file in files.Where(f => f.Name != "report.json")) Assert.Equal(file.Content.ToArray(), await _client.GetByteArrayAsync($"/files/cover/{file.Name}?printer=Shop%20Laser"));
        Assert.NotEqual(files.Single(f => f.Name == "cover.pdf").Content.ToArray(), await _client.GetByteArrayAsync("/files/cover/cover.pdf"));
    }

    [Theory]
    [InlineData("/files/cover/cover.pdf?printer=none")]
    [InlineData("/everything/cover?printer=none")]
    public async Task Printer_that_was_not_measured_gives_no_file(string address)
    {
        HttpResponseMessage answer = await _client.GetAsync(address);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("none", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Test_page_is_that_of_the_command_line()
    {
        await _client.GetByteArrayAsync("/files/cover/cover.pdf"); // The job is developed now.
        byte[] page = SurfaceUnroll.Files.Pdf.PdfPages.Write([SurfaceUnroll.Drawings.PrinterTestPage.On(PaperSpec.Default).Draw(PaperSpec.Default)], "Printer test");
        Assert.Equal(page, await _client.GetByteArrayAsync("/printer-test/cover"));
    }
}
