using System.Text;
using System.Text.Json.Nodes;

namespace SurfaceUnroll.Tests;

/// <summary>Outputs without the one part that differs from run to run: what the steps took.</summary>
internal static class Timeless
{
    /// <summary>The content of a file; of the report without <c>timingsMs</c>, which must be there.</summary>
    public static byte[] Of(string name, byte[] content)
    {
        if (Path.GetFileName(name) != "report.json") return content;
        JsonObject report = JsonNode.Parse(content)!.AsObject();
        Assert.True(report.Remove("timingsMs"));
        return Encoding.UTF8.GetBytes(report.ToJsonString());
    }

    /// <summary>The same of a file on disk.</summary>
    public static byte[] Of(string path) => Of(path, File.ReadAllBytes(path));
}
