using System.Text.Json;

namespace SurfaceUnroll.Tests.Files.Dxf;

/// <summary>Reads DXF back with ezdxf, a reader that knows nothing of ours.</summary>
internal static class DxfReader
{
    private static readonly JsonSerializerOptions Options = new() { PropertyNameCaseInsensitive = true };

    internal sealed record Reading(string Version, int Insunits, string[] Findings, string[] Layers, Entity[] Entities);

    internal sealed record Entity(string Kind, string Layer, string Linetype, bool Closed, double[][] Points, string? Text, double? Area, double? Length);

    public static Reading Read(byte[] dxf)
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("pattern.dxf", dxf);
        string script = Path.Combine(AppContext.BaseDirectory, "read_dxf.py");
        // Debian's package is seen by Debian's own Python only.
        string json = DebianTool.Run("python3-ezdxf", ["/usr/bin/python3", "-c", "import ezdxf"], "/usr/bin/python3", script, path);
        return JsonSerializer.Deserialize<Reading>(json.Trim().Split('\n')[^1], Options)!;
    }
}
