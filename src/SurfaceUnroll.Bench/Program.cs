using System.Diagnostics;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Bench.Serving;

(BenchOptions? options, string? problem) = BenchOptions.Read(args);
if (args.Any(a => a is "--help" or "-h"))
{
    Console.WriteLine(BenchOptions.Usage);
    return 0;
}
if (options is null)
{
    Console.Error.WriteLine(problem);
    Console.Error.WriteLine(BenchOptions.Usage);
    return 2;
}
WebApplication app = BenchServer.Build(options);
try
{
    await app.StartAsync();
}
catch (IOException) when (options.Port == BenchOptions.UsualPort)
{
    // Another bench has the usual port.
    await app.DisposeAsync();
    options = options with { Port = 0 };
    app = BenchServer.Build(options);
    await app.StartAsync();
}
catch (IOException e)
{
    Console.Error.WriteLine($"Port {options.Port} cannot be used: {e.Message}");
    Console.Error.WriteLine("Name another with --port, or leave it out.");
    return 2;
}
string address = BenchGreeting.Address(app);
BenchGreeting.Write(Console.Out, app, options);
if (options.Open) Browser(options.Job is { } job ? $"{address}/job/{Uri.EscapeDataString(Path.GetFileNameWithoutExtension(job))}" : address);
await app.WaitForShutdownAsync();
app.Services.GetRequiredService<JobShelf>().Dispose();
return 0;

// Where there is no browser to open, the address stands in the terminal.
static void Browser(string address)
{
    try
    {
        using Process? _ = Process.Start(new ProcessStartInfo(address) { UseShellExecute = true, RedirectStandardOutput = false });
    }
    catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException or PlatformNotSupportedException)
    {
    }
}
