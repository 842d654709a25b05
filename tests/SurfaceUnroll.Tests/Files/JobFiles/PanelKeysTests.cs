using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Cli;
using SurfaceUnroll.Tests.Flattening;

namespace SurfaceUnroll.Tests.Files.JobFiles;

public class PanelKeysTests
{
    private const string Curves = "\"curves\": { \"a\": { \"chord\": 9, \"rise\": 1 }, \"b\": { \"chord\": 9, \"rise\": 2 }, \"c\": { \"chord\": 9, \"rise\": 3 } }";

    [Fact]
    public void What_is_left_out_has_a_default()
    {
        PanelSpec panel = Loft("");
        Assert.Equal((1.0, 1, SeamDirection.Lengthwise), (panel.ShrinkCost, panel.Pieces, panel.Along));
        Assert.Null(panel.Mesh);
        Assert.Empty(panel.Hold);
        Assert.Empty(panel.Slits);
    }

    [Fact]
    public void Held_edges_cost_and_pieces_are_read()
    {
        PanelSpec panel = Loft(", \"hold\": [\"rear\", \"left\"], \"shrinkCost\": 2.5, \"pieces\": 6, \"along\": \"across\"");
        Assert.Equal(["rear", "left"], panel.Hold.AsEnumerable());
        Assert.Equal((2.5, 6, SeamDirection.Across), (panel.ShrinkCost, panel.Pieces, panel.Along));
    }

    [Fact]
    public void Slits_are_read_with_what_is_left_to_be_found()
    {
        Assert.Equal([new SlitSpec("", null, null)], Loft(", \"slits\": \"auto\"").Slits.AsEnumerable());
        Assert.Equal(
            [new("front", 0, 25.4), new("rear", null, 60), new SlitSpec("left", null, null)],
            Loft(", \"slits\": [ { \"edge\": \"front\", \"at\": 0, \"depth\": \"1 in\" }, { \"edge\": \"rear\", \"at\": \"auto\", \"depth\": 60 }, { \"edge\": \"left\" } ]").Slits.AsEnumerable());
    }

    [Fact]
    public void Loft_through_three_curves_is_read() =>
        Assert.Equal(["a", "b", "c"], Read("{ \"units\": \"mm\", " + Curves + ", \"panels\": [{ \"name\": \"p\", \"loft\": [\"a\", \"b\", \"c\"] }] }").Loft.AsEnumerable());

    [Theory]
    [InlineData("", 1)]
    [InlineData(", \"meshUnits\": \"mm\"", 1)]
    [InlineData(", \"meshUnits\": \"in\"", 25.4)]
    public void Mesh_is_read_in_its_own_units_and_needs_no_curves_nor_face(string units, double scale)
    {
        string asked = "";
        JobReading reading = JobFile.Read(
            "{ \"units\": \"in\", \"sheet\": { \"thickness\": \"1 mm\" }, \"panels\": [{ \"name\": \"p\", \"mesh\": \"scans/a.OBJ\", \"hold\": [\"rim\"], \"shrinkCost\": 3" + units + " }] }",
            name =>
            {
                asked = name;
                return TestMeshes.Obj(TestMeshes.Sheet());
            });
        Assert.Empty(reading.Faults);
        PanelSpec panel = reading.Job!.Panels[0];
        Assert.Equal("scans/a.OBJ", asked);
        Assert.Equal("scans/a.OBJ", panel.Mesh!.File);
        Assert.Equal(TestMeshes.Sheet().Places.Select(p => scale * p), panel.Mesh.Mesh.Places);
        Assert.Equal(TestMeshes.Sheet().Faces.AsEnumerable(), panel.Mesh.Mesh.Faces);
        Assert.Equal(["rim"], panel.Hold.AsEnumerable());
        Assert.Empty(panel.Loft);
    }

    [Fact]
    public void Faults_of_a_mesh_name_its_file_its_line_and_the_numbers_in_it()
    {
        string text = "{ \"units\": \"mm\", " + Curves + ", \"panels\": [{ \"name\": \"p\", \"mesh\": \"a.obj\" }, { \"name\": \"q\", \"mesh\": \"b.obj\" }] }";
        byte[] first = "v 9 9 9\nv 0 0 0\nv 1 0 0\nv 0 1 0\nv 1 1 9\n\nf 2 3 4\nf 2 3 5\n"u8.ToArray(), second = "v 0 0\nf 1 2 3\n"u8.ToArray();
        JobReading reading = JobFile.Read(text, name => name == "a.obj" ? first : second);
        Assert.Equal(["mesh-face-turned", "mesh-corners", "mesh-index"], reading.Faults.Select(f => f.Code));
        Assert.Equal(["panels[0].mesh", "panels[1].mesh", "panels[1].mesh"], reading.Faults.Select(f => f.Path));
        Assert.StartsWith("a.obj: 1 face is turned over against its neighbours, first face 2 at", reading.Faults[0].Message, StringComparison.Ordinal);
        Assert.StartsWith("b.obj, line 1: ", reading.Faults[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Mesh_is_looked_for_beside_the_job_and_what_hinders_is_told()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a.obj", TestMeshes.Obj(TestMeshes.Sheet()));
        Directory.CreateDirectory(folder.At("b.obj"));
        Assert.Equal(TestMeshes.Obj(TestMeshes.Sheet()), JobFolder.Open(folder.Path, "a.obj").Bytes);
        Assert.Contains("no such file", JobFolder.Open(folder.Path, "c.obj").Problem, StringComparison.Ordinal);
        Assert.Contains("folder", JobFolder.Open(folder.Path, "b.obj").Problem, StringComparison.Ordinal);
        Assert.Contains("the limit is 0 MB", JobFolder.Open(folder.Path, "a.obj", largest: 100).Problem, StringComparison.Ordinal);
        Assert.NotEmpty(JobFolder.Open(folder.Path, "\0.obj").Problem);

        string job = "{ \"units\": \"mm\", \"panels\": [{ \"name\": \"p\", \"mesh\": \"a.obj\" }, { \"name\": \"q\", \"mesh\": \"b.obj\" }] }";
        Fault fault = Assert.Single(JobFile.ReadIn(job, folder.Path).Faults);
        Assert.Equal(("mesh-file", "panels[1].mesh", "b.obj: this is a folder, not a file."), (fault.Code, fault.Path, fault.Message));
    }

    [Fact]
    public void Curves_are_needed_as_soon_as_one_panel_is_a_loft() =>
        Assert.Contains(JobFile.Read("{ \"units\": \"mm\", \"panels\": [{ \"name\": \"p\", \"mesh\": \"a.obj\" }, { \"name\": \"q\", \"loft\": [\"a\", \"b\"] }] }",
            _ => TestMeshes.Obj(TestMeshes.Sheet())).Faults, f => f is { Code: "key-missing", Path: "curves" });

    [Fact]
    public void Command_line_finds_the_mesh_beside_the_job()
    {
        using var folder = new TemporaryFolder();
        folder.Write("tube.obj", TestMeshes.Obj(TestMeshes.Tube()));
        string job = folder.Write("job.json", "{ \"units\": \"mm\",\n \"panels\": [{ \"name\": \"p\", \"mesh\": \"tube.obj\" }] }");
        InProcess.Result result = InProcess.Run("check", job);
        Assert.Equal(2, result.Status);
        Assert.StartsWith($"{job}:2:36  tube.obj: The surface is a tube or a ring", result.Error, StringComparison.Ordinal);
    }

    private static PanelSpec Loft(string keys) => Read("{ \"units\": \"mm\", " + Curves + ", \"panels\": [{ \"name\": \"p\", \"loft\": [\"a\", \"b\"]" + keys + " }] }");

    private static PanelSpec Read(string text)
    {
        JobReading reading = JobFile.Read(text);
        Assert.Empty(reading.Faults);
        return Assert.Single(reading.Job!.Panels);
    }
}
