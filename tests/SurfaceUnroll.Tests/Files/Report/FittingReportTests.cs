using System.Text.Json;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.Report;

public class FittingReportTests
{
    private static readonly Development Cover = FittedSamples.Cover();
    private static readonly JsonElement Root = Read(Cover), Panel = Root.GetProperty("panels")[0];

    [Fact]
    public void A_bend_states_its_angles_radius_direction_and_lengths()
    {
        JsonElement bend = Assert.Single(Panel.GetProperty("bends").EnumerateArray());
        Assert.Equal(1, bend.GetProperty("number").GetInt32());
        Assert.Equal("rear", bend.GetProperty("lip").GetString());
        Assert.Equal(90, bend.GetProperty("angleDeg").GetDouble(), 1e-9);
        Assert.Equal(85, bend.GetProperty("leastAngleDeg").GetDouble(), 1e-9);
        Assert.Equal(95, bend.GetProperty("greatestAngleDeg").GetDouble(), 1e-9);
        Assert.Equal("down", bend.GetProperty("direction").GetString());
        Assert.Equal([0.9, 0.44, 2.04, 1.8, 1.56], new[] { "insideRadius", "k", "allowance", "setback", "deduction" }.Select(n => bend.GetProperty(n).GetDouble()));
        Assert.Equal("table: mild steel, R/t 1", bend.GetProperty("source").GetString());
        Assert.Equal(-401, bend.GetProperty("centre")[0][1].GetDouble());
        Assert.Equal(-402, bend.GetProperty("tangents")[1][0][1].GetDouble());
        JsonElement plate = Read(FittedSamples.Bent()).GetProperty("panels")[0];
        Assert.Equal("bent", plate.GetProperty("kind").GetString());
        Assert.Equal(JsonValueKind.Null, plate.GetProperty("bends")[0].GetProperty("lip").ValueKind);
        Assert.Equal("up", plate.GetProperty("bends")[0].GetProperty("direction").GetString());
    }

    [Fact]
    public void An_opening_states_name_size_places_areas_and_both_its_lines()
    {
        JsonElement lamp = Panel.GetProperty("openings")[0];
        Assert.Equal("lamp", lamp.GetProperty("name").GetString());
        Assert.Equal("Ø 90", lamp.GetProperty("size").GetString());
        Assert.Equal(3, lamp.GetProperty("formedCentre").GetArrayLength());
        Assert.Equal(-160, lamp.GetProperty("centre")[1].GetDouble(), 1e-9);
        Assert.Equal(Math.PI * 45 * 45, lamp.GetProperty("flatArea").GetDouble(), 1e-6);
        Assert.Equal(Math.PI * 45 * 45, lamp.GetProperty("formedArea").GetDouble(), 1e-6);
        Assert.Equal(72, lamp.GetProperty("flat").GetArrayLength());
        Assert.Equal(lamp.GetProperty("centre")[0].GetDouble() + 48, lamp.GetProperty("cut")[0][0].GetDouble(), 1e-9);
    }

    [Fact]
    public void Marks_allowances_notches_and_areas_are_told()
    {
        JsonElement mark = Panel.GetProperty("marks")[8];
        Assert.Equal("A9", mark.GetProperty("label").GetString());
        Assert.Equal("rear", mark.GetProperty("edge").GetString());
        Assert.Equal(-400, mark.GetProperty("flat")[1].GetDouble());
        Assert.Equal(1, mark.GetProperty("inward")[1].GetDouble());
        Assert.Equal(400, mark.GetProperty("formed")[0].GetDouble());
        JsonElement lip = Panel.GetProperty("allowances")[0], trim = Panel.GetProperty("allowances")[1];
        Assert.Equal(("lip", 11.2, "square"), (lip.GetProperty("kind").GetString(), lip.GetProperty("width").GetDouble(), lip.GetProperty("corners").GetString()));
        Assert.Equal(("trim", -3, "round"), (trim.GetProperty("kind").GetString(), trim.GetProperty("width").GetDouble(), trim.GetProperty("corners").GetString()));
        Assert.Equal(4, Panel.GetProperty("notches")[0].GetProperty("outline").GetArrayLength());
        JsonElement areas = Panel.GetProperty("areas");
        double sum = new[] { "formed", "bends", "forming", "allowances" }.Sum(n => areas.GetProperty(n).GetDouble());
        Assert.Equal(areas.GetProperty("blank").GetDouble(), sum, 1e-6);
        Assert.Equal(Cover.Panels[0].Net.Length, Panel.GetProperty("net").GetArrayLength());
    }

    [Fact]
    public void A_joint_states_how_the_edges_fit()
    {
        JsonElement joint = Assert.Single(Root.GetProperty("joints").EnumerateArray());
        Assert.Equal(["Cover/rear", "Front plate/arch"], joint.GetProperty("edges").EnumerateArray().Select(e => e.GetString()!));
        Assert.Equal(("A", "lip", "Cover/rear"), (joint.GetProperty("label").GetString(), joint.GetProperty("kind").GetString(), joint.GetProperty("on").GetString()));
        Assert.Equal([12, 1.5, 0.8, 143], new[] { "width", "difference", "largestGap", "gapAt" }.Select(n => joint.GetProperty(n).GetDouble()));
        Assert.Equal(2, joint.GetProperty("lengths").GetArrayLength());
        Assert.Equal(150, joint.GetProperty("gapPlace")[2].GetDouble());
        Assert.Equal(85, joint.GetProperty("leastAngleDeg").GetDouble(), 1e-9);
        Assert.Equal(95, joint.GetProperty("greatestAngleDeg").GetDouble(), 1e-9);
        Assert.False(joint.GetProperty("fits").GetBoolean());
        Assert.Equal(0.034, joint.GetProperty("lip").GetProperty("maxStretch").GetDouble());
        Assert.Equal(1, joint.GetProperty("lip").GetProperty("notches").GetInt32());
        Assert.Equal(9, joint.GetProperty("marks").GetInt32());
    }

    [Fact]
    public void Plates_have_every_list_and_other_panels_only_those_that_hold_something()
    {
        string[] lists = ["bends", "openings", "innerCuts", "marks", "allowances", "notches"];
        JsonElement plate = Read(FittedSamples.Plate()).GetProperty("panels")[0], plain = Read(Samples.HalfCylinder()).GetProperty("panels")[0];
        Assert.Equal("flat", plate.GetProperty("kind").GetString());
        Assert.All(lists, name => Assert.Equal(JsonValueKind.Array, plate.GetProperty(name).ValueKind));
        Assert.All(lists.Append("net").Append("areas"), name => Assert.False(plain.TryGetProperty(name, out _)));
        Assert.Equal(4, plate.GetProperty("innerCuts")[0].GetArrayLength());
    }

    private static JsonElement Read(Development development) => JsonDocument.Parse(ReportJson.Write(development)).RootElement;
}
