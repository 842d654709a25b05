using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Dxf;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Tests.Files.JobFiles;
using SurfaceUnroll.Tests.Patterns.CutPaths;

namespace SurfaceUnroll.Tests.Files.Dxf;

/// <summary>Cut lines as ezdxf reads them, in both versions, against the dense cut lines of the report.</summary>
public class DxfCutTests
{
    private static readonly Lazy<Development> Whole = new(() => Developer.Develop(Fixtures.Read("jobs/trike-full-cover.json").Job!));

    [SkippableTheory]
    [InlineData(DxfVersion.R2000, "AC1015", "LWPOLYLINE")]
    [InlineData(DxfVersion.R12, "AC1009", "POLYLINE")]
    public void Areas_and_lengths_come_back_and_inner_cuts_stand_first(DxfVersion version, string name, string kind)
    {
        foreach (PanelDevelopment panel in Whole.Value.Panels.Take(3))
        {
            DxfReader.Reading read = DxfReader.Read(DxfPattern.Write(Cut(panel, version), CuttingSpec.Default with { Dxf = version }));
            Assert.Empty(read.Findings);
            Assert.Equal(name, read.Version);
            DxfReader.Entity[] cuts = [.. read.Entities.Where(e => e.Layer == "CUT")];
            Vec2[][] loops = [.. panel.Openings.Select(o => o.Cut.ToArray()), .. panel.InnerCuts.Select(c => c.ToArray()), [.. panel.Cut]];
            Assert.Equal(loops.Length, cuts.Length);
            foreach ((DxfReader.Entity cut, Vec2[] loop) in cuts.Zip(loops))
            {
                Assert.True(cut.Closed && cut.Kind == kind);
                double length = Enumerable.Range(0, loop.Length).Sum(i => (loop[(i + 1) % loop.Length] - loop[i]).Length);
                Assert.Equal(PathRuler.Area(loop), cut.Area!.Value, CutPathFit.Tolerance * length);
                // Directions agree but for a step of the dense line and a break, so lengths do to the square of that.
                Assert.Equal(length, cut.Length!.Value, 1e-3 * length);
            }
        }
    }

    [SkippableFact]
    public void R12_keeps_layers_line_types_and_words_in_its_own_characters()
    {
        Development cover = FittedSamples.Cover();
        Drawing drawing = CutFitting.Of(PatternDrawing.Of(cover.Panels[0], cover.Job, cover.Joints), CuttingSpec.Default);
        DxfReader.Reading old = DxfReader.Read(DxfPattern.Write(drawing, CuttingSpec.Default with { Dxf = DxfVersion.R12 })), now = DxfReader.Read(DxfPattern.Write(drawing, CuttingSpec.Default));
        Assert.Empty(old.Findings);
        Assert.Equal(now.Layers.Order(StringComparer.Ordinal), old.Layers.Order(StringComparer.Ordinal));
        Assert.Equal(now.Entities.Select(e => (e.Layer, e.Linetype, e.Closed)), old.Entities.Select(e => (e.Layer, e.Linetype, e.Closed)));
        Assert.Contains(old.Entities, e => e.Text == "bend 1  DOWN 85-95°  R 0.9");
    }

    [Theory]
    [InlineData(DxfVersion.R2000)]
    [InlineData(DxfVersion.R12)]
    public void Files_are_plain_ascii_and_say_the_kerf(DxfVersion version)
    {
        CuttingSpec cutting = CuttingSpec.Default with { Dxf = version, Kerf = 0.2 };
        PanelDevelopment panel = Whole.Value.Panels[0];
        byte[] bytes = DxfPattern.Write(CutFitting.Of(PatternDrawing.Of(panel, Whole.Value.Job, Whole.Value.Joints), cutting), cutting);
        Assert.All(bytes, b => Assert.InRange(b, (byte)'\n', (byte)'~'));
        string[] lines = System.Text.Encoding.ASCII.GetString(bytes).Split('\n');
        Assert.Equal(2, lines.Count(l => l.StartsWith("Kerf 0.2 mm", StringComparison.Ordinal)));
        Assert.Contains(lines.Zip(lines.Skip(1)), pair => pair.First == "999" && pair.Second.StartsWith("Kerf 0.2 mm", StringComparison.Ordinal));
    }

    private static Drawing Cut(PanelDevelopment panel, DxfVersion version) =>
        CutFitting.Of(PatternDrawing.Of(panel, Whole.Value.Job, Whole.Value.Joints), CuttingSpec.Default with { Dxf = version });
}
