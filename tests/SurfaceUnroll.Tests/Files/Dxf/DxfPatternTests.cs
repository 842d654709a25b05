using System.Text;
using System.Text.Json;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Dxf;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.Dxf;

public class DxfPatternTests
{
    private static readonly Drawing Drawing = SampleDrawing.OfHalfCylinder();

    // Starting Python takes seconds: once for all tests.
    private static readonly Lazy<DxfReader.Reading> Read = new(() => DxfReader.Read(DxfPattern.Write(Drawing, CuttingSpec.Default)));

    [SkippableFact]
    public void Ezdxf_finds_nothing_to_complain_of() => Assert.Empty(Read.Value.Findings);

    [SkippableFact]
    public void File_is_R2000_in_millimetres_with_the_five_layers()
    {
        DxfReader.Reading read = Read.Value;
        Assert.Equal("AC1015", read.Version);
        Assert.Equal(4, read.Insunits);
        // ezdxf adds a layer Defpoints of its own to every document it loads.
        Assert.Equal(["0", "CONTOUR", "CUT", "ELEMENT", "MARK", "NOTE"], read.Layers.Except(["Defpoints"]).Order(StringComparer.Ordinal));
    }

    [SkippableFact]
    public void Cut_line_is_one_closed_polyline_of_the_drawings_points()
    {
        DxfReader.Entity cut = Assert.Single(Read.Value.Entities, e => e.Layer == "CUT");
        Assert.Equal("LWPOLYLINE", cut.Kind);
        Assert.True(cut.Closed);
        Vec2[] expected = [.. Drawing.Strokes.Single(s => s.Role == Role.Cut).Points];
        Assert.Equal(expected.Length, cut.Points.Length);
        // Written to 1e-9 mm.
        Assert.All(expected.Zip(cut.Points), pair => Assert.True((pair.First - new Vec2(pair.Second[0], pair.Second[1])).Length < 2e-9));
    }

    [SkippableFact]
    public void Every_stroke_and_text_is_written_once_on_the_layer_of_its_role()
    {
        DxfReader.Entity[] entities = Read.Value.Entities;
        Assert.Equal(Drawing.Strokes.Length + Drawing.Letterings.Length, entities.Length);
        Assert.Equal(Drawing.Strokes.Count(s => s.Role is Role.Element or Role.Centre), entities.Count(e => e.Layer == "ELEMENT"));
        Assert.Equal(["CENTRE", "DASHED"], entities.Where(e => e.Linetype != "BYLAYER").Select(e => e.Linetype));
        Assert.Equal(["LWPOLYLINE", "LINE", "TEXT"], entities.Where(e => e.Layer == "CONTOUR").Select(e => e.Kind));
        string[] places = [.. entities.Select(e => JsonSerializer.Serialize(e.Points.OrderBy(p => p[0]).ThenBy(p => p[1])))];
        Assert.Equal(places.Length, places.Distinct().Count());
    }

    [SkippableFact]
    public void Words_outside_ascii_come_back_as_they_were() =>
        Assert.Contains(Read.Value.Entities, e => e.Text == "R 150 \"a\" & <b> Ø 20°");

    [Fact]
    public void File_is_plain_ascii_and_the_same_every_time()
    {
        byte[] bytes = DxfPattern.Write(Drawing, CuttingSpec.Default);
        Assert.All(bytes, b => Assert.InRange(b, (byte)'\n', (byte)'~'));
        Assert.Equal(bytes, DxfPattern.Write(SampleDrawing.OfHalfCylinder(), CuttingSpec.Default));
    }

    [Fact]
    public void Every_handle_is_used_once_and_the_seed_lies_above_them()
    {
        string[] lines = Encoding.ASCII.GetString(DxfPattern.Write(Drawing, CuttingSpec.Default)).Split('\n');
        int entities = Array.IndexOf(lines, "TABLES");
        int[] handles = [.. Enumerable.Range(0, lines.Length / 2).Where(i => 2 * i > entities && lines[2 * i].Trim() is "5" or "105")
            .Where(i => 2 * i > entities).Select(i => Convert.ToInt32(lines[2 * i + 1], 16))];
        Assert.Equal(handles.Length, handles.Distinct().Count());
        int seed = Convert.ToInt32(lines[Array.IndexOf(lines, "$HANDSEED") + 2], 16);
        Assert.True(handles.Max() < seed);
    }
}
