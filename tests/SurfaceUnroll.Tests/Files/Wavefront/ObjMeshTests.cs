using System.Globalization;
using System.Text;
using SurfaceUnroll.Files.Wavefront;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.Wavefront;

public class ObjMeshTests
{
    private static readonly SheetMesh Mesh = Samples.HalfCylinder().Panels[0].Mesh;

    [Fact]
    public void Every_vertex_and_flat_place_reads_back_exactly()
    {
        string[] lines = Lines();
        double[][] formed = [.. Numbers(lines, "v ")], flat = [.. Numbers(lines, "vt ")];
        Assert.Equal(Mesh.Formed, formed.Select(p => new Vec3(p[0], p[1], p[2])));
        Assert.Equal(Mesh.Flat, flat.Select(p => new Vec2(p[0], p[1])));
    }

    [Fact]
    public void Faces_name_vertex_and_flat_place_by_the_same_number_from_one()
    {
        (int, int, int)[] faces = [.. Lines().Where(l => l.StartsWith("f ", StringComparison.Ordinal)).Select(Face)];
        Assert.Equal(Mesh.Faces, faces);

        static (int, int, int) Face(string line)
        {
            int[] corners = [.. line[2..].Split(' ').Select(corner =>
            {
                string[] pair = corner.Split('/');
                Assert.Equal(pair[0], pair[1]);
                return int.Parse(pair[0], CultureInfo.InvariantCulture) - 1;
            })];
            Assert.Equal(3, corners.Length);
            return (corners[0], corners[1], corners[2]);
        }
    }

    [Fact]
    public void A_line_break_in_the_name_cannot_start_a_line_of_its_own()
    {
        string text = Encoding.UTF8.GetString(ObjMesh.Write("a\nv 1 2 3", Mesh));
        Assert.Contains("\no a v 1 2 3\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Minus_zero_is_written_as_zero() =>
        Assert.DoesNotContain("-0 ", Encoding.UTF8.GetString(ObjMesh.Write("zero", new SheetMesh([new Vec3(-0.0, -0.0, 1)], [Vec2.Zero], []))),
            StringComparison.Ordinal);

    private static string[] Lines() => Encoding.UTF8.GetString(ObjMesh.Write("cover", Mesh)).Split('\n');

    private static IEnumerable<double[]> Numbers(string[] lines, string prefix) => lines
        .Where(l => l.StartsWith(prefix, StringComparison.Ordinal))
        .Select(l => l[prefix.Length..].Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray());
}
