using System.Reflection;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>Serves the modules of three.js that are embedded in the program.</summary>
internal static class EmbeddedModules
{
    private const string Folder = "three/";

    public static void Map(WebApplication app)
    {
        Assembly assembly = typeof(EmbeddedModules).Assembly;
        foreach (string name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(Folder, StringComparison.Ordinal)))
        {
            app.MapGet("/" + name, (HttpContext context) =>
            {
                context.Response.Headers.CacheControl = "max-age=86400";
                return Results.Stream(assembly.GetManifestResourceStream(name)!, "text/javascript; charset=utf-8");
            });
        }
    }
}
