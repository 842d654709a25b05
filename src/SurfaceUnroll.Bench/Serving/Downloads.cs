using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Files.Output;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>Hands out the files of a job.</summary>
internal static class Downloads
{
    /// <summary>Address of a file of a job.</summary>
    public static string Address(string job, string file) => $"/files/{Uri.EscapeDataString(job)}/{Uri.EscapeDataString(file)}";

    /// <summary>Address of all files of a job in one archive.</summary>
    public static string Everything(string job) => $"/everything/{Uri.EscapeDataString(job)}";

    public static void Map(WebApplication app)
    {
        app.MapGet("/files/{job}/{file}", async (string job, string file, JobShelf shelf, PatternStore patterns, HttpContext context, bool show = false) =>
        {
            if (shelf.Open(job) is not { } desk) return Results.NotFound("There is no such job.");
            DeskState state = await SettledAsync(desk, context.RequestAborted);
            if (!state.IsSound) return Results.Conflict("The job has faults; see its page.");
            OutputFile? found = patterns.Files(state.Development!).FirstOrDefault(f => f.Name == file);
            if (found is null) return Results.NotFound("There is no such file.");
            context.Response.Headers.CacheControl = "no-store";
            return Results.File(found.Content.ToArray(), TypeOf(file), show ? null : file);
        });
        app.MapGet("/everything/{job}", async (string job, JobShelf shelf, PatternStore patterns, HttpContext context) =>
        {
            if (shelf.Open(job) is not { } desk) return Results.NotFound("There is no such job.");
            DeskState state = await SettledAsync(desk, context.RequestAborted);
            if (!state.IsSound) return Results.Conflict("The job has faults; see its page.");
            context.Response.Headers.CacheControl = "no-store";
            return Results.File(PatternStore.Zip(patterns.Files(state.Development!), state.Text.Text, desk.Name), "application/zip", desk.Name + "-pattern.zip");
        });
    }

    // What is downloaded is made of the last key pressed.
    private static async Task<DeskState> SettledAsync(JobDesk desk, CancellationToken end)
    {
        while (desk.State is { Stopped: false } state && state.Looked != state.Version) await Task.Delay(20, end);
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
