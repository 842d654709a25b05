using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Jobs;

/// <summary>Warnings of holes and bends of pieces that can be made.</summary>
public class PlateNoticeTests
{
    private static double Rad(double degrees) => degrees * Math.PI / 180;

    private static OpeningSpec Hole(string name, double across, double up, double diameter, OpeningPattern? pattern = null) =>
        new(name, new RoundShape(diameter), new Vec2(across, up), 0, pattern, null, null);

    private static PanelSpec Channel(params SideStep[] steps) => Bent("p", new BentSpec([], new SideRun([.. steps], 0, Vec2.Zero), null, Placement.None) { Width = 100 });

    private static Notice[] Warnings(Job job, string code) => [.. Run(job).Notices.Where(n => n.Code == code && n.Severity == Severity.Warning)];

    /// <summary>A flat disc of 100 mm radius with holes, and lips of 6 mm round those named.</summary>
    private static Job Disc(string[] lips, params OpeningSpec[] holes) => Job(Steel, [("rim", Circle(100))], Flat2("p", "rim") with { Openings = [.. holes] })
        .Joined([.. lips.Select(edge => new JointSpec(null, [new EdgeName("p", edge)], JointKind.Lip, 6, 0, new LipSpec(null, null, null, LipRelief.None, null), null, null))]);

    [Theory]
    [InlineData(1, 2.9, true)] // 3 mm at the least
    [InlineData(1, 3.1, false)]
    [InlineData(2, 3.9, true)] // two thicknesses
    [InlineData(2, 4.1, false)]
    public void Two_bends_with_little_flat_between_them_are_warned_of(double thickness, double flat, bool warned)
    {
        Job job = Job(new SheetStock("mild steel", thickness), [], Channel(new SideLine(40), new SideBend(Rad(90), 2), new SideLine(flat), new SideBend(Rad(-90), 2), new SideLine(40)));
        Notice[] found = Warnings(job, "bends-near");
        Assert.Equal(warned ? 1 : 0, found.Length);
        if (warned) Assert.Contains($"only {flat:0.0} mm of flat", found[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mild steel", 3, 1.4, true)]
    [InlineData("mild steel", 3, 1.5, false)]
    [InlineData("mild steel", 1, 0.4, true)]
    [InlineData("stainless steel 304", 4, 3.9, true)]
    [InlineData("stainless steel 304", 4, 4, false)]
    [InlineData("copper", 4, 2, false)] // soft
    [InlineData("6061-T6", 2, 4.9, true)]
    public void A_bend_sharper_than_the_material_bears_may_crack(string material, double thickness, double radius, bool warned)
    {
        Job job = Job(new SheetStock(material, thickness), [], Channel(new SideLine(40), new SideBend(Rad(90), radius), new SideLine(40), new SideBend(Rad(90), radius), new SideLine(40)));
        Notice[] found = Warnings(job, "bend-may-crack");
        Assert.Equal(warned ? 1 : 0, found.Length);
        if (warned) Assert.StartsWith("Bends 1, 2", found[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20, false)]
    [InlineData(21, true)]
    public void A_sharp_bend_of_more_than_twenty_thicknesses_is_rolled(double radius, bool warned) =>
        Assert.Equal(warned ? 1 : 0, Warnings(Job(Steel, [], Channel(new SideLine(40), new SideBend(Rad(90), radius), new SideLine(40))), "bend-is-rolled").Length);

    // R 1, t 1, 90°: the deduction is 4 − (π/2)(1 + K).
    [Theory]
    [InlineData(0.49, false)]
    [InlineData(0.55, true)]
    public void A_measured_bend_past_the_middle_of_the_sheet_is_warned_of_once(double k, bool warned)
    {
        SheetStock stock = Steel with { Bending = new BendSetup(BendRule.KFactor, null, new OwnBend(1, Rad(90), 4 - 0.5 * Math.PI * (1 + k))) };
        PanelSpec channel = Channel(new SideLine(40), new SideBend(Rad(90), 1), new SideLine(40));
        Notice[] found = Warnings(Job(stock, [], channel, channel with { Name = "q" }), "own-bend-k");
        Assert.Equal(warned ? [("sheet.ownBend", true)] : [], found.Select(n => (n.Where, n.Message.Contains("K 0.55", StringComparison.Ordinal))));
    }

    [Fact]
    public void Holes_near_to_each_other_are_told_once_a_pair()
    {
        Notice[] found = Warnings(Disc([], Hole("a", 0, 0, 10), Hole("b", 11.9, 0, 10), Hole("c", 0, 12.1, 10)), "holes-near");
        Notice one = Assert.Single(found);
        Assert.Contains("“a” and “b” of “p” leave 1.9 mm", one.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_many_alike_the_worst_five_are_told_and_the_rest_counted()
    {
        // Six rows of six have 2·6·5 neighbours side by side; corner to corner they are 2.14 mm apart. One pair more is nearer.
        Notice[] found = Warnings(Disc([], Hole("grid", 0, 0, 4, new GridPattern(6, 6, 5.5, 5.5)), Hole("x", 50, 0, 4), Hole("y", 55, 0, 4)), "holes-near");
        Assert.Equal(6, found.Length);
        Assert.Contains("“x” and “y” of “p” leave 1 mm", found[0].Message, StringComparison.Ordinal);
        Assert.Contains("“grid 1” and “grid 2” of “p” leave 1.5 mm", found[1].Message, StringComparison.Ordinal);
        Assert.Contains("56 more like it on “p”", found[5].Message, StringComparison.Ordinal);
        Assert.NotNull(found[5].Mend);
    }

    [Fact]
    public void Holes_near_the_cut_line_are_capped_too()
    {
        Notice[] found = Warnings(Disc([], Hole("ring", 0, 0, 3, new RingPattern(20, 195))), "hole-near-edge");
        Assert.Equal(6, found.Length);
        Assert.Contains("15 more", found[5].Message, StringComparison.Ordinal);
    }

    // The lip round a hole bends from 2 mm (the setback, R + t) inside the metal to 0.17 mm beyond its edge: of a hole of 30 mm radius between 32 and 29.83 mm from its centre.
    [Theory]
    [InlineData(33.9, true)]
    [InlineData(34.6, false)]
    public void A_hole_near_the_bend_of_a_lip_round_another_is_warned_of(double nearest, bool warned)
    {
        Notice[] found = Warnings(Disc(["big"], Hole("big", 0, 0, 60), Hole("small", nearest + 2, 0, 4)), "hole-near-bend");
        Assert.Equal(warned ? 1 : 0, found.Length);
        Assert.All(found, n => Assert.Contains("“small”", n.Message, StringComparison.Ordinal));
    }

    // The two bends reach 2 mm into the metal from either edge.
    [Theory]
    [InlineData(6.8, true)]
    [InlineData(7.2, false)]
    public void Lips_round_two_holes_with_little_flat_between_them_are_warned_of(double between, bool warned) =>
        Assert.Equal(warned ? 1 : 0, Warnings(Disc(["a", "b"], Hole("a", -20, 0, 40), Hole("b", 10 + between, 0, 20)), "bends-near").Length);

    [Fact]
    public void A_lip_round_a_hole_and_one_round_the_plate_are_warned_of_where_they_come_near() =>
        Assert.Single(Warnings(Disc(["a", "rim"], Hole("a", 73, 0, 40)), "bends-near"));

    // Outside width 6 less (R + t) leaves 4 mm of flat; of 4.5 mm 2.5.
    [Theory]
    [InlineData("a", 4.5, true)]
    [InlineData("rim", 4.5, true)]
    [InlineData("a", 6, false)]
    [InlineData("rim", 6, false)]
    public void A_closed_lip_too_narrow_to_hold_is_warned_of(string edge, double width, bool warned)
    {
        Job job = Disc([edge], Hole("a", 0, 0, 60));
        Assert.Equal(warned ? 1 : 0, Warnings(job with { Joints = [job.Joints[0] with { Width = width }] }, "edge-near-bend").Length);
    }
}
