using System.Buffers;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Cli;

/// <summary>Prints what came of laying a mesh flat.</summary>
internal static class FlatteningText
{
    /// <summary>As a table.</summary>
    public static void Write(TextWriter to, string path, string target, TriangleMesh mesh, FlattenedMesh blank, int repeat, double seconds)
    {
        string start = blank.Start switch
        {
            FlatteningStart.Given => "blank of a coarser grid",
            FlatteningStart.Conformal => "least-squares conformal map",
            _ => "border on a circle, each inner vertex amid its neighbours",
        };
        string runs = repeat == 1 ? "one run" : string.Create(CultureInfo.InvariantCulture, $"median of {repeat} runs");
        to.WriteLine(path);
        Row("Triangles", $"{mesh.Faces.Length}");
        Row("Start", $"{start}");
        Row("Iterations", $"{blank.Iterations}");
        Row("Energy", $"{blank.Energy:G6} mm²");
        Row("Stretch, shrink", $"largest {100 * blank.MaxStretch:0.###} %, {100 * blank.MaxShrink:0.###} %");
        Row("Time", $"{seconds:G3} s, {runs} after one to warm up");
        to.WriteLine();
        to.WriteLine($"Written to {target}");

        void Row(string label, FormattableString value) => to.WriteLine($"  {label,-15}  {value.ToString(CultureInfo.InvariantCulture)}");
    }

    /// <summary>As one JSON object. Energy in mm²; stretch and shrink as fractions; memory in millions of bytes.</summary>
    public static void WriteJson(TextWriter to, TriangleMesh mesh, FlattenedMesh blank, double seconds)
    {
        using var process = Process.GetCurrentProcess();
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("faces", mesh.Faces.Length);
            json.WriteNumber("iterations", blank.Iterations);
            json.WriteNumber("energy", blank.Energy);
            json.WriteNumber("maxStretch", blank.MaxStretch);
            json.WriteNumber("maxShrink", blank.MaxShrink);
            json.WriteNumber("seconds", seconds);
            json.WriteNumber("peakMemoryMb", Math.Round(process.PeakWorkingSet64 / 1e6, 1));
            json.WriteEndObject();
        }
        to.WriteLine(Encoding.UTF8.GetString(buffer.WrittenSpan));
    }
}
