using System.Globalization;
using System.Text;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Wavefront;

/// <summary>Writes the formed sheet as a Wavefront OBJ triangle mesh whose texture coordinates are the flat blank in mm.</summary>
public static class ObjMesh
{
    /// <summary>The file, one <c>v</c> and one <c>vt</c> a vertex, faces <c>f v/vt</c>.</summary>
    /// <param name="name">Object name; line breaks are turned to spaces.</param>
    /// <param name="mesh">Formed and flat places, mm.</param>
    /// <returns>UTF-8, lines ended by a line feed. Every number reads back to the same double.</returns>
    public static byte[] Write(string name, SheetMesh mesh)
    {
        var text = new StringBuilder(80 * mesh.Formed.Length + 64 * mesh.Faces.Length + 256);
        text.Append("# Formed sheet, middle surface: v = x aft, y right, z up, mm.\n")
            .Append("# Flat blank, outside face up, forward up: vt = place on the blank, mm.\n")
            .Append("# Faces are counter-clockwise seen from outside.\n")
            .Append("o ").Append(name.ReplaceLineEndings(" ")).Append('\n');
        foreach (Vec3 p in mesh.Formed)
        {
            text.Append("v ").Append(Exact(p.X)).Append(' ').Append(Exact(p.Y)).Append(' ').Append(Exact(p.Z)).Append('\n');
        }
        foreach (Vec2 p in mesh.Flat)
        {
            text.Append("vt ").Append(Exact(p.X)).Append(' ').Append(Exact(p.Y)).Append('\n');
        }
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            text.Append('f');
            foreach (int index in (ReadOnlySpan<int>)[a + 1, b + 1, c + 1])
            {
                text.Append(CultureInfo.InvariantCulture, $" {index}/{index}");
            }
            text.Append('\n');
        }
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    // Shortest text that reads back to the same double; + 0.0 turns −0 into 0.
    private static string Exact(double value) => (value + 0.0).ToString("R", CultureInfo.InvariantCulture);
}
