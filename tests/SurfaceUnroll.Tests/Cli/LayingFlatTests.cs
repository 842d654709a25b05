using System.Text.Json;
using SurfaceUnroll.Cli;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Flattening;

namespace SurfaceUnroll.Tests.Cli;

public sealed class LayingFlatTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_quarter_of_a_tube_is_laid_flat_at_its_own_size()
    {
        // Strips of flat facets: the blank is their rectangle, edge lengths as they were.
        TriangleMesh tube = TestMeshes.Tube(round: 40, cut: true, along: 8);
        string mesh = _folder.Write("tube.obj", TestMeshes.Obj(tube)), target = _folder.At("flat.obj");
        InProcess.Result result = InProcess.Run("flatten", mesh, "--out", target);
        Assert.Equal("", result.Error);
        Assert.Equal(ExitStatus.Done, result.Status);
        string[] lines = File.ReadAllLines(target);
        Vec3[] formed = [.. lines.Where(l => l.StartsWith("v ", StringComparison.Ordinal)).Select(l => Numbers(l)).Select(n => new Vec3(n[0], n[1], n[2]))];
        Vec2[] flat = [.. lines.Where(l => l.StartsWith("vt ", StringComparison.Ordinal)).Select(l => Numbers(l)).Select(n => new Vec2(n[0], n[1]))];
        Assert.Equal(tube.Places.ToArray(), formed);
        Assert.All(tube.Faces, f => Assert.Equal((formed[f.A] - formed[f.B]).Length, (flat[f.A] - flat[f.B]).Length, 1e-5));
        Assert.Equal(tube.Faces.Select(f => $"f {f.A + 1}/{f.A + 1} {f.B + 1}/{f.B + 1} {f.C + 1}/{f.C + 1}"), lines.Where(l => l[0] == 'f'));
        foreach (string word in (string[])["Start", "Iterations", "Energy", "mm²", "Stretch, shrink", "Time", "one run", target])
            Assert.Contains(word, result.Out, StringComparison.Ordinal);
        Assert.Equal(2, Directory.EnumerateFileSystemEntries(_folder.Path).Count());
    }

    [Fact]
    public void Json_is_one_object_with_the_promised_fields_and_nothing_else()
    {
        TriangleMesh crown = FormedShapes.Grid(9, 9, FormedShapes.Crown);
        string mesh = _folder.Write("crown.obj", TestMeshes.Obj(crown));
        InProcess.Result result = InProcess.Run("flatten", mesh, "--out", _folder.At("flat.obj"), "--repeat", "2", "--json");
        Assert.Equal((ExitStatus.Done, ""), (result.Status, result.Error));
        using var json = JsonDocument.Parse(result.Out);
        Assert.Equal(
            ["faces", "iterations", "energy", "maxStretch", "maxShrink", "seconds", "peakMemoryMb"], json.RootElement.EnumerateObject().Select(p => p.Name));
        Assert.Equal(128, json.RootElement.GetProperty("faces").GetInt32());
        Assert.All(json.RootElement.EnumerateObject(), p => Assert.True(p.Value.GetDouble() > 0, p.Name));
    }

    [Fact]
    public void Every_fault_of_the_mesh_is_listed_and_nothing_is_written()
    {
        TriangleMesh mesh = TestMeshes.Sheet().Without(50).Turned(f => f == 3);
        string path = _folder.Write("holed.obj", TestMeshes.Obj(mesh));
        InProcess.Result result = InProcess.Run("flatten", path, "--out", _folder.At("flat.obj"), "--json");
        Assert.Equal((ExitStatus.CannotUse, ""), (result.Status, result.Out));
        Assert.Contains("hole", result.Error, StringComparison.Ordinal);
        Assert.Contains("2 faults; nothing was written.", result.Error, StringComparison.Ordinal);
        Assert.Equal([path], Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void A_fault_of_the_file_is_shown_with_its_line()
    {
        string path = _folder.Write("broken.obj", "v 0 0 0\nv 1 0 0\nv 0 1 zero\nf 1 2 3\n");
        InProcess.Result result = InProcess.Run("flatten", path, "--out", _folder.At("flat.obj"));
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.StartsWith(path + ":3  ", result.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(_folder.At("flat.obj")));
    }

    [Fact]
    public void Stl_is_read_too()
    {
        string path = _folder.Write("one.stl", "solid one\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 30 0 0\nvertex 0 40 0\nendloop\nendfacet\nendsolid one\n");
        Assert.Equal(ExitStatus.Done, InProcess.Run("flatten", path, "--out", _folder.At("flat.obj")).Status);
        MeshReading back = MeshFile.Read("flat.obj", File.ReadAllBytes(_folder.At("flat.obj")));
        Assert.Equal(3, back.Mesh!.Places.Length);
    }

    [Fact]
    public void An_older_blank_is_replaced_and_the_mesh_never()
    {
        string mesh = _folder.Write("sheet.obj", TestMeshes.Obj(TestMeshes.Sheet(2))), target = _folder.Write("flat.obj", "old");
        Assert.Equal(ExitStatus.Done, InProcess.Run("flatten", mesh, "--out", target).Status);
        Assert.Contains("vt ", File.ReadAllText(target), StringComparison.Ordinal);
        string before = File.ReadAllText(mesh);
        InProcess.Result result = InProcess.Run("flatten", mesh, "--out", Path.Combine(_folder.Path, ".", "sheet.obj"));
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("overwrite the mesh", result.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(mesh));
    }

    [Fact]
    public void The_mesh_is_safe_behind_a_linked_folder_too()
    {
        if (OperatingSystem.IsWindows()) return; // Links need rights there that a test need not have.
        string mesh = _folder.Write("sheet.obj", TestMeshes.Obj(TestMeshes.Sheet(2)));
        Directory.CreateSymbolicLink(_folder.At("link"), _folder.Path);
        Assert.Equal(ExitStatus.CannotUse, InProcess.Run("flatten", mesh, "--out", _folder.At("link", "sheet.obj")).Status);
        File.Delete(_folder.At("link"));
    }

    [Theory]
    [InlineData("sheet.obj", "is not named")]
    [InlineData("sheet.obj --out flat.stl", "written as Wavefront OBJ")]
    [InlineData("sheet.obj --out flat.obj --repeat 0", "a whole number from 1 to 10000, not “0”")]
    [InlineData("sheet.obj --out flat.obj --repeat often", "a whole number from 1 to 10000, not “often”")]
    [InlineData("sheet.ply --out flat.obj", "not a mesh file that can be read")]
    [InlineData("absent.obj --out flat.obj", "There is no such file.")]
    [InlineData("folder.obj --out flat.obj", "This is a folder, not a mesh file.")]
    [InlineData("sheet.obj --out folder.obj", "A folder stands where this file should be written.")]
    public void A_wrong_command_line_ends_with_2_and_writes_nothing(string line, string expected)
    {
        _folder.Write("sheet.obj", TestMeshes.Obj(TestMeshes.Sheet(2)));
        Directory.CreateDirectory(_folder.At("folder.obj"));
        string[] words = [.. line.Split(' ').Select(w => w.Contains('.', StringComparison.Ordinal) ? _folder.At(w) : w)];
        InProcess.Result result = InProcess.Run(["flatten", .. words]);
        Assert.Equal((ExitStatus.CannotUse, ""), (result.Status, result.Out));
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        Assert.Contains("mend: ", result.Error, StringComparison.Ordinal);
        Assert.Equal(2, Directory.EnumerateFileSystemEntries(_folder.Path).Count());
    }

    private static double[] Numbers(string line) =>
        [.. line.Split(' ')[1..].Select(w => double.Parse(w, System.Globalization.CultureInfo.InvariantCulture))];
}
