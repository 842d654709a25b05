using System.Diagnostics;
using System.Text;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Files.Wavefront;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Flattening;

namespace SurfaceUnroll.Tests.Files.Wavefront;

public class ObjMeshReaderTests
{
    private const string Square = "v 0 0 0\nv 10 0 0\nv 10 10 0\nv 0 10 0\n";

    [Theory]
    [InlineData("f 1 2 3\nf 1 3 4\n")]
    [InlineData("f 1 2 3 4\n")]
    [InlineData("f 1 2 3 4")]
    [InlineData("f 1/1 2/2 3/3 4/4\n")]
    [InlineData("f 1//9 2//9 3//9 4//9\n")]
    [InlineData("f 1/1/9 2/2/9 3/3/9 4/4/9\r\n")]
    [InlineData("f -4 -3 -2 -1\nv 99 99 99\n")]
    [InlineData("f 1 2 \\\n 3 4\n")]
    [InlineData("f 1 2 3\\\r\n 4\r\n")]
    [InlineData("\tf  1\t2 3   4  # the square\r")]
    [InlineData("# f 9 9 9 \\\nf 1 2 3 4\n")]
    [InlineData("curv 0 1 \\\nf 9 9 9\nf 1 2 3 4\n")]
    [InlineData("vt 0 0\nvn 0 0 1\ns off\no f\ng v 1\nusemtl f\nf 1 2 3 4\nl 1 2\n")]
    public void Ways_to_write_one_square_are_read_alike(string faces)
    {
        TriangleMesh mesh = Read(Square + faces);
        Assert.Equal([Vec3.Zero, new(10, 0, 0), new(10, 10, 0), new(0, 10, 0)], mesh.Places.AsEnumerable());
        Assert.Equal([(0, 1, 2), (0, 2, 3)], mesh.Faces.AsEnumerable());
    }

    [Theory]
    [InlineData("1", 1)]
    [InlineData("+1.5", 1.5)]
    [InlineData("-.25", -0.25)]
    [InlineData("7.", 7)]
    [InlineData("1e3", 1000)]
    [InlineData("1.25E-02", 0.0125)]
    [InlineData("0.1000000000000000055511151231257827", 0.1)]
    public void Numbers_are_read_as_written(string text, double value) =>
        Assert.Equal(value, Read($"\uFEFFv {text} 0 0 1.0\nv 0 1 0 0.5 0.5 0.5\nv 0 0 1\nf 1 2 3\n").Places[0].X);

    [Fact]
    public void Vertices_without_a_face_are_left_out_and_the_others_keep_order_and_number()
    {
        MeshReading reading = ObjMeshReader.Read("v 9 9 9\nv 3 0 0\nf 4 2 5 6\nv 9 9 9\nv 1 0 0\n"u8.ToArray().Concat("v 1 1 0\nv 0 9 0\nf 2 5 6\n"u8.ToArray()).ToArray());
        Assert.Equal([new(3, 0, 0), new(1, 0, 0), new(1, 1, 0), new Vec3(0, 9, 0)], reading.Mesh!.Places.AsEnumerable());
        Assert.Equal([2, 4, 5, 6], reading.Numbers!.Vertices.AsEnumerable());
        Assert.Equal([1, 1, 2], reading.Numbers.Faces.AsEnumerable());
    }

    [Theory]
    [InlineData("", "mesh-not-a-mesh", 0)]
    [InlineData("{ \"units\": \"mm\" }", "mesh-not-a-mesh", 0)]
    [InlineData("solid cover\nfacet normal 0 0 1\n", "mesh-not-a-mesh", 0)]
    [InlineData(Square, "mesh-no-faces", 0)]
    [InlineData(Square + "f 1 2 5\n", "mesh-index", 5)]
    [InlineData(Square + "\nf 1 2 \\\n 0\n", "mesh-index", 7)]
    [InlineData(Square + "f 1 2 -5\n", "mesh-index", 5)]
    [InlineData(Square + "f 1 2 3.5\n", "mesh-index", 5)]
    [InlineData(Square + "f 1 2 99999999999\n", "mesh-index", 5)]
    [InlineData(Square + "f a b c\n", "mesh-index", 5)]
    [InlineData("f 1 2 3", "mesh-index", 1)]
    [InlineData(Square + "f 1 2\n", "mesh-corners", 5)]
    [InlineData(Square + "f", "mesh-corners", 5)]
    [InlineData(Square + "v 1 2\nf 1 2 3", "mesh-corners", 5)]
    [InlineData(Square + "v 1 2 x\nf 1 2 3", "mesh-number", 5)]
    [InlineData(Square + "v 1 2 0,5\nf 1 2 3", "mesh-number", 5)]
    [InlineData(Square + "v 1 nan 0\nf 1 2 3", "mesh-number", 5)]
    [InlineData(Square + "v 1 -inf 0\nf 1 2 3", "mesh-number", 5)]
    [InlineData(Square + "v 1 NaN 0\nf 1 2 3", "mesh-number", 5)]
    [InlineData(Square + "v 1 Infinity 0\nf 1 2 3", "mesh-number", 5)]
    [InlineData(Square + "v 1 1e999 0\nf 1 2 3", "mesh-number", 5)]
    [InlineData(Square + "v 1 1e30 0\nf 1 2 3", "mesh-number", 5)]
    public void Fault_has_its_code_and_line(string text, string code, int line)
    {
        MeshReading reading = ObjMeshReader.Read(Encoding.Latin1.GetBytes(text));
        MeshFault fault = Assert.Single(reading.Faults);
        Assert.Null(reading.Mesh);
        Assert.Equal((code, line), (fault.Code, fault.Line));
        Assert.False(string.IsNullOrWhiteSpace(fault.Message) || string.IsNullOrWhiteSpace(fault.Mend));
    }

    [Fact]
    public void Faults_come_at_once_in_the_order_of_the_file_but_not_without_end()
    {
        MeshReading few = ObjMeshReader.Read(Encoding.Latin1.GetBytes(Square + "f 1 2 7\nf 1 x 3\nv 1\nf 1 2 8 9\n"));
        Assert.Equal([(5, "mesh-index"), (6, "mesh-index"), (7, "mesh-corners"), (8, "mesh-index")], few.Faults.Select(f => (f.Line, f.Code)));
        Assert.Equal(20, ObjMeshReader.Read(Encoding.Latin1.GetBytes(string.Concat(Enumerable.Repeat("v 1 2\n", 1000)))).Faults.Length);
    }

    [Fact]
    public void More_than_two_million_triangles_are_too_many()
    {
        string polygon = "f" + string.Concat(Enumerable.Repeat(" 1 2 3 4", 500_001)) + "\n";
        Assert.Equal("mesh-too-many", Assert.Single(ObjMeshReader.Read(Encoding.Latin1.GetBytes(Square + polygon)).Faults).Code);
    }

    // Any beginning of a good file, and any one byte of it changed, is read or refused.
    [Fact]
    public void Damaged_file_is_read_or_refused()
    {
        byte[] good = Encoding.Latin1.GetBytes("\u00EF\u00BB\u00BF# c\r\nv 0 0 0\nv 1e1 0 0 \\\n 1\nv 10 10 -.5\nv 0 10 0\nvt 0 0\nf 1/1 2/1 3/1 4/1\nf -4//1 -3 -2/1/1\n");
        for (int i = 0; i <= good.Length; i++) Sound(ObjMeshReader.Read(good.AsSpan(0, i)));
        foreach (byte slip in "\\\n\r/-9e.# fv\0\xff"u8)
        {
            for (int i = 0; i < good.Length; i++)
            {
                byte[] bad = [.. good];
                bad[i] = slip;
                Sound(ObjMeshReader.Read(bad));
            }
        }
    }

    // A quiet machine takes 0.06 s; the limit leaves room for a busy one with a debugging build.
    [Fact]
    public void Two_hundred_thousand_triangles_are_read_in_a_moment()
    {
        TriangleMesh mesh = TestMeshes.Grid(316, 316, (i, j) => new Vec3(i / 7.0, j / 3.0, Math.Sin(i)));
        byte[] bytes = TestMeshes.Obj(mesh);
        var watch = Stopwatch.StartNew();
        MeshReading reading = ObjMeshReader.Read(bytes);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 20);
        Assert.Equal(mesh.Places.AsEnumerable(), reading.Mesh!.Places);
        Assert.Equal(mesh.Faces.AsEnumerable(), reading.Mesh.Faces);
    }

    private static void Sound(MeshReading reading)
    {
        Assert.Equal(reading.Mesh is null, reading.Faults.Length > 0);
        if (reading.Mesh is { } mesh) Assert.All(mesh.Faces, f => Assert.InRange(Math.Max(f.A, Math.Max(f.B, f.C)), 0, mesh.Places.Length - 1));
    }

    private static TriangleMesh Read(string text)
    {
        MeshReading reading = ObjMeshReader.Read(Encoding.UTF8.GetBytes(text));
        Assert.Empty(reading.Faults);
        return reading.Mesh!;
    }
}
