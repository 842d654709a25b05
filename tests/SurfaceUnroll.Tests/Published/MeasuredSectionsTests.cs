using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Files.JobFiles;
using static SurfaceUnroll.Tests.Published.PublishedShapes;

namespace SurfaceUnroll.Tests.Published;

/// <summary>Real measured sections, read from the job files in fixtures/published.</summary>
public class MeasuredSectionsTests
{
    private const double Foot = 304.8;

    private static (Job Job, PanelDevelopment Panel) Run(string name)
    {
        JobReading reading = JobFile.Read(Fixtures.Text($"published/{name}.json"));
        Assert.Empty(reading.Faults);
        Development result = Developer.Develop(reading.Job!);
        Assert.False(result.Failed, string.Join("; ", result.Notices.Select(n => n.Message)));
        return (reading.Job!, Assert.Single(result.Panels));
    }

    [Theory]
    // USAF Stability and Control DATCOM, sample inputs, example 3 (US government work): half-width and girth in feet.
    [InlineData("front", 0.208, 1.305)]
    [InlineData("rear", 0.138, 0.866)]
    public void Girth_of_the_tail_cone_is_the_published_one_to_the_rounding_of_its_half_width(string edge, double halfWidth, double girth)
    {
        double flat = Run("datcom-tail-cone").Panel.Edge(edge).FlatLength / Foot;
        Near(2 * Math.PI * halfWidth, flat, 1e-9);
        // Both figures are rounded to .001: half of that on a half-width is 2π times as much on the girth, and half of it on the girth itself.
        Assert.Equal(girth, flat, 0.0005 * (2 * Math.PI + 1));
    }

    [Fact]
    public void Tail_cone_lies_flat_as_the_ring_sector_of_its_two_girths()
    {
        PanelDevelopment cone = Run("datcom-tail-cone").Panel;
        double length = (4.57 - 3.43) * Foot, taper = (0.208 - 0.138) * Foot, slant = Math.Sqrt(length * length + taper * taper);
        Assert.Equal(Verdict.BendsOnly, cone.Verdict);
        Assert.All(cone.Elements, e => Assert.Equal(slant, e.Length, 1e-6));
        Near(Math.PI * (0.208 + 0.138) * Foot * slant, cone.FlatArea, 1e-7);
    }

    [Theory]
    [InlineData("front", 0)]
    [InlineData("rear", 1)]
    public void Girth_of_the_Series_60_strip_is_that_of_its_offsets(string edge, int curve)
    {
        (Job job, PanelDevelopment strip) = Run("series60-strip");
        Vec2[] offsets = [.. ((PointsSpec)job.Curves[curve].Spec).Points.Select(p => p.Place)];
        double polygon = offsets.Zip(offsets.Skip(1), (a, b) => (b - a).Length).Sum();
        // The source (Todd, DTMB Report 1712, 1963) gives offsets and no girths. A smooth section is no shorter than the polygon through its offsets; and
        // an arc over a chord that turns by θ is longer by θ²/24: with the turns of this polygon that comes to less than 1 %.
        Assert.Equal(8, offsets.Length);
        Assert.InRange(strip.Edge(edge).FlatLength, polygon, 1.01 * polygon);
        Assert.InRange(TurnAllowance(offsets), 0, 0.01);
        // Both frames are held, and kept within 0.01 %.
        Near(strip.Edge(edge).FormedLength, strip.Edge(edge).FlatLength, 1e-4);
    }

    // Mean of θ²/24 over the spans by length; θ of a span: the larger of the polygon's turns at its two ends.
    private static double TurnAllowance(Vec2[] offsets)
    {
        double Turn(int i)
        {
            if (i <= 0 || i >= offsets.Length - 1) return 0;
            Vec2 before = offsets[i] - offsets[i - 1], after = offsets[i + 1] - offsets[i];
            return Math.Abs(Math.Atan2(before.Cross(after), before.Dot(after)));
        }
        double sum = 0, length = 0;
        for (int i = 0; i + 1 < offsets.Length; i++)
        {
            double chord = (offsets[i + 1] - offsets[i]).Length, turn = Math.Max(Turn(i), Turn(i + 1));
            (sum, length) = (sum + chord * turn * turn / 24, length + chord);
        }
        return sum / length;
    }
}
