using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Forming;

public class RollPlannerTests
{
    private static readonly SheetStock Sheet = new("mild steel", 1.5);

    private static RunSpec Half(double radius, double aft) => new([new ArcStep(radius, Math.PI)], 0, null, new Placement(new Vec3(aft, 0, 0), 0, 0, 0));

    private static Job Loft(SheetStock sheet, CurveSpec front, CurveSpec rear) => Job(sheet, [("front", front), ("rear", rear)], new PanelSpec("cover", ["front", "rear"], ElementMatching.BendOnly)) with { Measured = MeasuredFace.Middle };

    [Theory]
    [InlineData(100, 100, 300)]
    [InlineData(150, 60, 300)]
    [InlineData(80, 200, 100)]
    public void Radii_of_a_cylinder_and_a_cone_are_the_closed_form_at_both_ends(double front, double rear, double length)
    {
        // Square to a line of a cone its radius is r / cos α, α the angle between line and axis; that of the inside lies half a thickness nearer.
        RollSchedule rolls = Run(Loft(Sheet, Half(front, 0), Half(rear, length))).Panels[0].Plan!.Rolls!;
        double cosine = length / Math.Sqrt(length * length + (front - rear) * (front - rear));
        Assert.True(rolls.Lines.Length >= 9);
        Assert.All(rolls.Lines, line =>
        {
            Assert.Equal(1, (line.RadiusFront + 0.75) / (front / cosine), 1e-3);
            Assert.Equal(1, (line.RadiusRear + 0.75) / (rear / cosine), 1e-3);
            Assert.True(line.BendsOutward);
            Assert.False(line.IsFlat);
        });
        // Fed evenly on a cylinder; on a cone by the ratio of the radii.
        Assert.All(rolls.Lines.Skip(1), line => Assert.Equal(rear / front, line.StepRear / line.StepFront, 1e-3));
        Assert.Equal(Math.PI * (rear - front), rolls.Lines.Sum(l => l.ConeOffset), 0.02);
        Assert.Equal(Math.PI * front, rolls.Lines.Sum(l => l.StepFront), 0.02);
    }

    [Fact]
    public void The_radius_to_roll_to_springs_open_to_the_finished_one_and_is_tighter()
    {
        RollSchedule rolls = Run(Loft(Sheet, Half(150, 0), Half(60, 300))).Panels[0].Plan!.Rolls!;
        Material steel = Sheet.Metal;
        foreach (RollLine line in rolls.Lines)
        {
            // Ri/Rf = 4x³ − 3x + 1, x = Ri·Y/(E·t) (reference page, bending).
            double x = line.RollFront * steel.Yield.Value / (steel.Modulus.Value * 1.5);
            Assert.Equal(4 * x * x * x - 3 * x + 1, line.RollFront / line.RadiusFront, 1e-9);
            Assert.True(line.RollFront < line.RadiusFront);
        }
    }

    [Fact]
    public void Flats_are_told_as_flat()
    {
        RunSpec Arch(double aft) => new([new LineStep(100), new ArcStep(60, Math.PI), new LineStep(100)], 0, null, new Placement(new Vec3(aft, 0, 0), 0, 0, 0));
        RollSchedule rolls = Run(Loft(Sheet, Arch(0), Arch(300))).Panels[0].Plan!.Rolls!;
        double at = 0;
        foreach (RollLine line in rolls.Lines)
        {
            at += line.StepFront;
            if (at is < 99 or > 100 + 60 * Math.PI + 1) Assert.True(line.IsFlat, $"line {line.Number} at {at}");
            else if (at is > 101 and < 99 + 60 * Math.PI) Assert.Equal(60 - 0.75, line.RadiusFront, 0.06);
        }
        Assert.Contains(rolls.Lines, l => l.IsFlat);
    }

    [Fact]
    public void A_flat_plate_has_no_roll_schedule() => Assert.Null(Run(Job(Steel, [("rim", Rectangle(100, 50))], Flat2("p", "rim"))).Panels[0].Plan!.Rolls);

    [Fact]
    public void What_the_shop_or_the_material_cannot_roll_is_warned_of()
    {
        Job job = Loft(new SheetStock("mild steel", 6), Half(150, 0), Half(5, 400)) with { Shop = new ShopSpec(300, 40, null, 3, null, null) };
        Development done = Run(job);
        RollLine line = done.Panels[0].Plan!.Rolls!.Lines[4];
        // Inside about 5/cos 20° − 3 = 2.3 mm, and half of 6 mm is the least for this steel.
        Assert.Equal(0.5, job.Sheet.Metal.MinimumRadius.Value);
        Assert.InRange(line.RadiusRear, 2, 2.6);
        Assert.Contains(RollLimit.TooTightForMaterial, line.Limits);
        Assert.Contains(RollLimit.TooLong, line.Limits);
        Assert.Contains(RollLimit.TooTightForRoll, line.Limits);
        Assert.Contains(done.Notices, n => n.Code == "roll-below-minimum");
        Assert.Contains(done.Notices, n => n.Code == "roll-too-narrow");
        Assert.Contains(done.Notices, n => n.Code == "roll-too-large");
        Assert.Contains(done.Notices, n => n.Code == "shear-too-weak");
        Assert.DoesNotContain(Run(Loft(Sheet, Half(150, 0), Half(100, 400))).Notices, n => n.Code.StartsWith("roll-", StringComparison.Ordinal));
    }
}
