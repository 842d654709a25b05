using System.Text.Json;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.Report;

public class ReportJsonTests
{
    private static readonly Development Development = Samples.HalfCylinder() with
    {
        Notices = [new Notice("curve-turned-round", Severity.Note, "curves.rear", "The rear curve ran the other way.", "Nothing to do.")],
    };

    private static readonly JsonElement Root = JsonDocument.Parse(ReportJson.Write(Development)).RootElement;

    private static JsonElement Panel => Root.GetProperty("panels")[0];

    [Fact]
    public void Heading_names_job_and_generator()
    {
        Assert.Equal("Half cylinder", Root.GetProperty("job").GetString());
        Assert.Equal("surfaceunroll 0.1.0", Root.GetProperty("generator").GetString());
    }

    [Fact]
    public void Panel_states_kind_verdict_and_areas_of_the_half_cylinder()
    {
        Assert.Equal("Cover", Panel.GetProperty("name").GetString());
        Assert.Equal("loft", Panel.GetProperty("kind").GetString());
        Assert.Equal("bends only", Panel.GetProperty("verdict").GetString());
        // π · 150 · 400 mm², written to 1e-9.
        Assert.Equal(Math.PI * 150 * 400, Panel.GetProperty("formedArea").GetDouble(), 1e-8);
        Assert.Equal(0, Panel.GetProperty("strain").GetProperty("energy").GetDouble());
    }

    [Fact]
    public void Angles_are_degrees()
    {
        Assert.Equal(0, Panel.GetProperty("twist").GetProperty("maxDeg").GetDouble());
        // The sample's 0.3 rad.
        Assert.Equal(0.3 * 180 / Math.PI, Panel.GetProperty("even").GetProperty("maxDeg").GetDouble(), 1e-9);
    }

    [Fact]
    public void Edges_stand_in_the_order_front_right_rear_left()
    {
        JsonElement[] edges = [.. Panel.GetProperty("edges").EnumerateArray()];
        Assert.Equal(["front", "right", "rear", "left"], edges.Select(e => e.GetProperty("name").GetString()!));
        Assert.Equal(150 * Math.PI, edges[0].GetProperty("flatLength").GetDouble(), 1e-9);
        JsonElement first = edges[0].GetProperty("flat")[0];
        Assert.Equal(-75 * Math.PI, first[0].GetDouble(), 1e-9);
        Assert.Equal(0, first[1].GetDouble());
    }

    [Fact]
    public void Elements_carry_their_number_only_where_they_are_drawn()
    {
        JsonElement elements = Panel.GetProperty("elements");
        Assert.Equal(121, elements.GetArrayLength());
        Assert.Equal(1, elements[0].GetProperty("number").GetInt32());
        Assert.Equal(JsonValueKind.Null, elements[1].GetProperty("number").ValueKind);
        Assert.Equal(150, elements[1].GetProperty("bendRadiusFront").GetDouble());
        Assert.Equal(400, elements[1].GetProperty("length").GetDouble());
    }

    [Fact]
    public void A_flat_place_has_no_bend_radius()
    {
        PanelDevelopment panel = Development.Panels[0];
        ElementLine flat = panel.Elements[0] with { BendRadiusFront = double.PositiveInfinity };
        Development development = Development with { Panels = [panel with { Elements = panel.Elements.SetItem(0, flat) }] };
        JsonElement element = JsonDocument.Parse(ReportJson.Write(development)).RootElement.GetProperty("panels")[0].GetProperty("elements")[0];
        Assert.Equal(JsonValueKind.Null, element.GetProperty("bendRadiusFront").ValueKind);
        Assert.Equal(150, element.GetProperty("bendRadiusRear").GetDouble());
    }

    [Fact]
    public void Cut_line_is_the_developments_own()
    {
        JsonElement cut = Panel.GetProperty("cut");
        Assert.Equal(Development.Panels[0].Cut.Length, cut.GetArrayLength());
    }

    [Fact]
    public void Notices_say_what_where_and_how_to_mend()
    {
        JsonElement notice = Root.GetProperty("notices")[0];
        Assert.Equal("curve-turned-round", notice.GetProperty("code").GetString());
        Assert.Equal("note", notice.GetProperty("severity").GetString());
        Assert.Equal("curves.rear", notice.GetProperty("where").GetString());
        Assert.Equal("Nothing to do.", notice.GetProperty("mend").GetString());
    }

    [Fact]
    public void The_same_development_gives_the_same_bytes() => Assert.Equal(ReportJson.Write(Development), ReportJson.Write(Development));
}
