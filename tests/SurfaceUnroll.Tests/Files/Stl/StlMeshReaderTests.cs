using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Files.Stl;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Flattening;

namespace SurfaceUnroll.Tests.Files.Stl;

public class StlMeshReaderTests
{
    private static readonly TriangleMesh Sheet = TestMeshes.Sheet(4);

    [Fact]
    public void Binary_and_text_are_welded_to_the_mesh_they_were_made_of()
    {
        foreach (byte[] bytes in new[] { Binary(Sheet), Binary(Sheet, "solid binary, for all that"), Text(Sheet), Text(Sheet, "\r\n"), Text(Sheet, " ") })
        {
            MeshReading reading = StlMeshReader.Read(bytes);
            Assert.Empty(reading.Faults);
            Assert.Equal(Corners(Sheet).AsEnumerable(), Corners(reading.Mesh!));
            Assert.Equal(Sheet.Places.Length, reading.Mesh!.Places.Length);
            Assert.Equal(Enumerable.Range(1, Sheet.Faces.Length), reading.Numbers!.Faces);
            Assert.Empty(DiscCheck.Check(reading.Mesh, reading.Numbers));
        }
    }

    [Fact]
    public void Several_solids_of_one_file_are_one_mesh_whatever_their_names()
    {
        string text = "SOLID vertex 1 2 3\n" + Facet(0, 0, 0, 9, 0, 0, 9, 9, 0) + "endsolid vertex\nsolid\n" + Facet(0, 0, 0, 9, 9, 0, 0, 9, 0) + "endsolid\n";
        TriangleMesh mesh = StlMeshReader.Read(Encoding.Latin1.GetBytes(text)).Mesh!;
        Assert.Equal([(0, 1, 2), (0, 2, 3)], mesh.Faces.AsEnumerable());
    }

    [Fact]
    public void Corners_a_rounding_apart_are_welded_where_borders_are_open()
    {
        int n = 0;
        TriangleMesh loose = Sheet.Loose();
        MeshReading reading = StlMeshReader.Read(Binary(loose with { Places = [.. loose.Places.Select(p => p + new Vec3(2e-5 * (n++ % 3), 0, 0))] }));
        Assert.Equal(Sheet.Places.Length, reading.Mesh!.Places.Length);
        Assert.Empty(DiscCheck.Check(reading.Mesh));
    }

    [Fact]
    public void Corners_farther_apart_stay_two()
    {
        int n = 0;
        TriangleMesh loose = Sheet.Loose();
        MeshReading reading = StlMeshReader.Read(Binary(loose with { Places = [.. loose.Places.Select(p => p + new Vec3(0.01 * n++, 0, 0))] }));
        Assert.Equal("mesh-pieces", DiscCheck.Check(reading.Mesh!)[0].Code);
    }

    [Fact]
    public void Minus_zero_is_zero_and_triangles_of_two_corners_are_left_out()
    {
        string text = "solid\n" + Facet(0, 0, 0, 0, 0, 0, 1, 1, 1) + Facet(0, 0, 0, 9, 0, 0, 9, 9, 0) + Facet(-0.0, 0, 0, 9, 9, 0, 0, 9, 0) + "endsolid\n";
        MeshReading reading = StlMeshReader.Read(Encoding.Latin1.GetBytes(text));
        Assert.Equal(4, reading.Mesh!.Places.Length);
        Assert.Equal([2, 3], reading.Numbers!.Faces.AsEnumerable());
    }

    [Theory]
    [InlineData("", "mesh-not-a-mesh", 0)]
    [InlineData("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", "mesh-not-a-mesh", 0)]
    [InlineData("solid a\nendsolid a\n", "mesh-no-faces", 0)]
    [InlineData("solid a", "mesh-cut-short", 1)]
    [InlineData("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0", "mesh-cut-short", 5)]
    [InlineData("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nendloop\nendfacet\nendsolid\n", "mesh-corners", 7)]
    [InlineData("solid a\nfacet\nvertex 0 0 0\nvertex 1 0 0\nvertex 1 1 0\nvertex 0 1 0\nendfacet\nendsolid\n", "mesh-corners", 7)]
    [InlineData("solid a\nfacet\nvertex 0 0 nan\nvertex 1 0 0\nvertex 1 1 0\nendfacet\nendsolid\n", "mesh-number", 3)]
    [InlineData("solid a\nfacet\nvertex 0 0 1e12\nvertex 1 0 0\nvertex 1 1 0\nendfacet\nendsolid\n", "mesh-number", 3)]
    [InlineData("solid a\nfacet\nvertex 0 0 0\nvertex 0 0 0\nvertex 1 1 0\nendfacet\nendsolid\n", "mesh-no-faces", 0)]
    public void Fault_of_a_text_has_its_code_and_line(string text, string code, int line) => Refused(Encoding.Latin1.GetBytes(text), code, line);

    [Fact]
    public void Fault_of_a_binary_file_has_its_code()
    {
        Refused(Binary(Sheet)[..^1], "mesh-cut-short", 0);
        Refused([.. Binary(Sheet), 0], "mesh-cut-short", 0);
        Refused(new byte[84], "mesh-no-faces", 0);
        Refused(Binary(Sheet with { Places = Sheet.Places.SetItem(24, new Vec3(double.NaN, 0, 0)) }), "mesh-number", 0);
        Refused(Binary(Sheet with { Places = Sheet.Places.SetItem(24, new Vec3(0, double.NegativeInfinity, 0)) }), "mesh-number", 0);
        byte[] many = new byte[84 + 50 * 2_000_001];
        BitConverter.TryWriteBytes(many.AsSpan(80), 2_000_001);
        Refused(many, "mesh-too-many", 0);
    }

    [Fact]
    public void Damaged_file_is_read_or_refused()
    {
        foreach (byte[] good in new[] { Binary(TestMeshes.Sheet(1)), Text(TestMeshes.Sheet(1)) })
        {
            for (int i = 0; i <= good.Length; i++) Sound(StlMeshReader.Read(good.AsSpan(0, i)));
            foreach (byte slip in "\n\r-9e.sv \0\x7f\xff"u8)
            {
                for (int i = 0; i < good.Length; i++)
                {
                    byte[] bad = [.. good];
                    bad[i] = slip;
                    Sound(StlMeshReader.Read(bad));
                }
            }
        }
    }

    // A quiet machine takes 0.15 s; the limit leaves room for a busy one with a debugging build.
    [Fact]
    public void Two_hundred_thousand_triangles_are_read_in_a_moment()
    {
        byte[] bytes = Binary(TestMeshes.Grid(316, 316, (i, j) => new Vec3(i / 7.0, j / 3.0, Math.Sin(i))));
        var watch = Stopwatch.StartNew();
        Assert.Equal(317 * 317, StlMeshReader.Read(bytes).Mesh!.Places.Length);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 20);
    }

    private static void Refused(byte[] bytes, string code, int line)
    {
        MeshReading reading = StlMeshReader.Read(bytes);
        Assert.Null(reading.Mesh);
        Assert.Contains((code, line), reading.Faults.Select(f => (f.Code, f.Line)));
        Assert.Single(reading.Faults.Select(f => f.Code).Distinct());
    }

    private static void Sound(MeshReading reading)
    {
        Assert.Equal(reading.Mesh is null, reading.Faults.Length > 0);
        if (reading.Mesh is { } mesh) Assert.All(mesh.Faces, f => Assert.InRange(Math.Max(f.A, Math.Max(f.B, f.C)), 0, mesh.Places.Length - 1));
    }

    private static ImmutableArray<Vec3> Corners(TriangleMesh mesh) => mesh.Loose().Places;

    private static byte[] Binary(TriangleMesh mesh, string header = "")
    {
        using var stream = new MemoryStream();
        using var writer = new BinaryWriter(stream);
        writer.Write(Encoding.Latin1.GetBytes(header.PadRight(80)));
        writer.Write(mesh.Faces.Length);
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            writer.Write(new byte[12]);
            foreach (int v in new[] { a, b, c })
            {
                writer.Write((float)mesh.Places[v].X);
                writer.Write((float)mesh.Places[v].Y);
                writer.Write((float)mesh.Places[v].Z);
            }
            writer.Write((short)0);
        }
        return stream.ToArray();
    }

    private static byte[] Text(TriangleMesh mesh, string lineEnd = "\n")
    {
        string facets = string.Concat(mesh.Faces.Select(f =>
        {
            (Vec3 a, Vec3 b, Vec3 c) = (mesh.Places[f.A], mesh.Places[f.B], mesh.Places[f.C]);
            return Facet(a.X, a.Y, a.Z, b.X, b.Y, b.Z, c.X, c.Y, c.Z);
        }));
        return Encoding.Latin1.GetBytes("solid sheet\n" + facets.Replace("\n", lineEnd, StringComparison.Ordinal) + "endsolid sheet\n");
    }

    private static string Facet(params double[] n)
    {
        string[] w = [.. n.Select(x => x.ToString("R", CultureInfo.InvariantCulture))];
        return $"facet normal 0 0 nan\n outer loop\n  vertex {w[0]} {w[1]} {w[2]}\n  vertex {w[3]} {w[4]} {w[5]}\n  vertex {w[6]} {w[7]} {w[8]}\n endloop\nendfacet\n";
    }
}
