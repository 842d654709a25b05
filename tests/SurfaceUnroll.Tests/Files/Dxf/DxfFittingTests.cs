using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Dxf;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Files.Dxf;

public class DxfFittingTests
{
    private static readonly Development Cover = FittedSamples.Cover();
    private static readonly Drawing Drawing = PatternDrawing.Of(Cover.Panels[0], Cover.Job, Cover.Joints);
    private static readonly Lazy<DxfReader.Reading> Read = new(() => DxfReader.Read(DxfPattern.Write(Drawing, CuttingSpec.Default)));

    [SkippableFact]
    public void Bends_and_finished_edges_have_layers_of_their_own_and_the_file_stays_sound()
    {
        Assert.Empty(Read.Value.Findings);
        Assert.Equal(["0", "BEND", "CONTOUR", "CUT", "ELEMENT", "MARK", "NET", "NOTE"], Read.Value.Layers.Except(["Defpoints"]).Order(StringComparer.Ordinal));
        DxfReader.Entity[] bends = [.. Read.Value.Entities.Where(e => e.Layer == "BEND" && e.Kind == "LINE")];
        Assert.Equal(["BYLAYER", "DASHED", "DASHED"], bends.Select(e => e.Linetype));
        Assert.Equal([-401, -400, -402], bends.Select(e => e.Points[0][1]));
        Assert.Equal("bend 1  DOWN 85–95°  R 0.9", Assert.Single(Read.Value.Entities, e => e.Layer == "BEND" && e.Kind == "TEXT").Text);
        Assert.True(Assert.Single(Read.Value.Entities, e => e.Layer == "NET").Closed);
    }

    [SkippableFact]
    public void Layer_cut_holds_the_outline_and_every_opening_and_nothing_else()
    {
        DxfReader.Entity[] cuts = [.. Read.Value.Entities.Where(e => e.Layer == "CUT")];
        Assert.Equal(8, cuts.Length);
        Assert.All(cuts, e => Assert.True(e.Closed && e.Kind == "LWPOLYLINE"));
        // The lamp: 48 mm from its centre to the cut line.
        BlankOpening lamp = Cover.Panels[0].Openings[0];
        Assert.All(cuts[1].Points, p => Assert.Equal(48, Math.Sqrt(Math.Pow(p[0] - lamp.Centre.X, 2) + Math.Pow(p[1] - lamp.Centre.Y, 2)), 1e-6));
    }

    [SkippableFact]
    public void Marks_are_on_layer_mark_with_their_labels()
    {
        string?[] labels = [.. Read.Value.Entities.Where(e => e.Layer == "MARK" && e.Kind == "TEXT").Select(e => e.Text)];
        Assert.Equal(Enumerable.Range(1, 9).Select(i => $"A{i}"), labels.Order(StringComparer.Ordinal)!);
    }
}
