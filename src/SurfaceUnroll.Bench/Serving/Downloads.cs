using System.Collections.Immutable;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Bench.Stops.Measuring.Photos;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>Hands out the files of a job.</summary>
internal static class Downloads
{
    /// <summary>Address of a file of a job.</summary>
    /// <param name="job">Name of the job.</param>
    /// <param name="file">Name of the file.</param>
    /// <param name="printer">Name of the measured printer that the paper is corrected for; null: none.</param>
    /// <param name="show">Opened in the browser, not saved.</param>
    public static string Address(string job, string file, string? printer = null, bool show = false) =>
        $"/files/{Uri.EscapeDataString(job)}/{Uri.EscapeDataString(file)}{Query(printer, show)}";

    /// <summary>Address of all files of a job in one archive.</summary>
    public static string Everything(string job, string? printer = null) => $"/everything/{Uri.EscapeDataString(job)}{Query(printer, false)}";

    /// <summary>Address of the page to measure a printer by, in the size of the job's paper.</summary>
    public static string PrinterTest(string job) => $"/printer-test/{Uri.EscapeDataString(job)}";

    /// <summary>Address of a photo beside a job, upright.</summary>
    public static string Photo(string job, string photo) => $"/photos/{Uri.EscapeDataString(job)}?photo={Uri.EscapeDataString(photo)}";

    public static void Map(WebApplication app)
    {
        app.MapGet("/photos/{job}", (string job, string photo, JobShelf shelf) => shelf.Open(job) is { } desk && PhotoTable.Shown(desk.Path, photo) is { } shown
            ? Results.File(shown, "image/jpeg")
            : Results.NotFound("There is no such photo."));
        app.MapGet("/files/{job}/{file}", (string job, string file, HttpContext context, string? printer = null, bool show = false) => ServeAsync(context, job, printer, (_, files) =>
            files.FirstOrDefault(f => f.Name == file) is { } found ? Results.File(found.Content.ToArray(), TypeOf(file), show ? null : file) : Results.NotFound("There is no such file.")));
        app.MapGet("/everything/{job}", (string job, HttpContext context, string? printer = null) => ServeAsync(context, job, printer, (desk, files) =>
            Results.File(PatternStore.Zip(files, desk.Text, desk.Name), "application/zip", desk.Name + "-pattern.zip")));
        app.MapGet("/printer-test/{job}", (string job, JobShelf shelf) => shelf.Open(job) is { State.Development: { } development }
            ? Results.File(PrinterPage.Pdf(PrinterPage.PaperOf(development.Job)), "application/pdf", "page-test.pdf")
            : Results.NotFound("There is no such job, or its paper cannot be read yet."));
    }

    private static async Task<IResult> ServeAsync(HttpContext context, string job, string? printer, Func<(string Name, string Text), ImmutableArray<OutputFile>, IResult> serve)
    {
        if (context.RequestServices.GetRequiredService<JobShelf>().Open(job) is not { } desk) return Results.NotFound("There is no such job.");
        DeskState state = await SettledAsync(desk, context.RequestAborted);
        if (!state.IsWhole) return Results.Conflict(state.Stopped ? "The work on this job was stopped; let it go on at its page." : "The job has faults; see its page.");
        PrinterScale? scale = null;
        if (!string.IsNullOrEmpty(printer))
        {
            (ImmutableArray<PrinterScale> known, OutputFault? fault) = context.RequestServices.GetRequiredService<PrinterStore>().Read();
            scale = PrinterStore.Find(known, printer);
            // A pattern that is not corrected must not pass for one that is.
            if (scale is null) return Results.NotFound(fault is null ? $"No printer called “{printer}” was measured on this machine." : $"{fault.Message} {fault.Mend}");
        }
        context.Response.Headers.CacheControl = "no-store";
        return serve((desk.Name, state.Text.Text), context.RequestServices.GetRequiredService<PatternStore>().Files(state.Development!, scale));
    }

    private static string Query(string? printer, bool show)
    {
        string[] parts = [.. string.IsNullOrEmpty(printer) ? Array.Empty<string>() : [$"printer={Uri.EscapeDataString(printer)}"], .. show ? ["show=true"] : Array.Empty<string>()];
        return parts.Length == 0 ? "" : "?" + string.Join('&', parts);
    }

    // What is downloaded is made of the last key pressed.
    private static async Task<DeskState> SettledAsync(JobDesk desk, CancellationToken end)
    {
        while (desk.State is { Stopped: false } state && (state.Looked != state.Version || (state.IsSound && !state.IsWhole))) await Task.Delay(20, end);
        return desk.State;
    }

    private static string TypeOf(string file) => Path.GetExtension(file) switch
    {
        ".pdf" => "application/pdf",
        ".svg" => "image/svg+xml",
        ".dxf" => "image/vnd.dxf",
        ".obj" => "model/obj",
        ".csv" => "text/csv",
        ".json" => "application/json",
        _ => "application/octet-stream",
    };
}
