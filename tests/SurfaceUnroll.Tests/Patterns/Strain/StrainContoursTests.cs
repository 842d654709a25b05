using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.Strain;

namespace SurfaceUnroll.Tests.Patterns.Strain;

public class StrainContoursTests
{
    [Theory]
    [InlineData(0.02, 0, 0.005)]
    [InlineData(0.021, 0.034, 0.01)]
    [InlineData(0.11, 0.3, 0.05)]
    [InlineData(0.0009, 0.0031, 0.001)]
    [InlineData(0.0004, 0.0003, 0.001)]
    [InlineData(1.5, 0.1, 0.2)]
    public void Step_is_round_and_suits_the_range(double stretch, double shrink, double step) =>
        Assert.Equal(step, StrainLevels.Step(stretch, shrink));

    [Fact]
    public void Levels_are_round_and_leave_zero_out()
    {
        SheetMesh mesh = StrainSamples.Grid(100, 100, 4, 4);
        Assert.Equal([-0.004, -0.002, 0.002, 0.004, 0.006], StrainLevels.Of(StrainSamples.Signed(mesh, p => 0.001 + 0.0001 * p.X)).AsEnumerable());
    }

    [Fact]
    public void Dome_has_closed_lines_of_stretch_round_the_middle_and_dashed_ones_of_shrink_outside_them()
    {
        (SheetMesh mesh, StrainMap map) = StrainSamples.Dome();
        ImmutableArray<StrainContour> contours = StrainContours.Of(mesh, map);
        Assert.InRange(contours.Length, 4, 8);
        Assert.All(contours, c => Assert.True(c.Closed));
        Assert.True(contours.Where(c => c.Level > 0).SelectMany(c => c.Points).Max(p => p.Length) <
            contours.Where(c => c.Level < -0.01).SelectMany(c => c.Points).Min(p => p.Length));
        Assert.Equal(contours.Select(c => c.Level < 0), StrainContours.ContourStrokes(contours).Select(s => s.Dashed));
    }

    [Fact]
    public void Labels_stand_on_their_lines_and_read_upright()
    {
        (SheetMesh mesh, StrainMap map) = StrainSamples.Dome();
        ImmutableArray<StrainContour> contours = StrainContours.Of(mesh, map);
        ImmutableArray<Vec2> cut = [.. Enumerable.Range(0, 90).Select(i => 203 * Vec2.FromAngle(i * Math.PI / 45))];
        var room = new LetteringRoom(new CutOutline(cut));
        foreach (IEnumerable<Lettering> choices in StrainContours.LabelChoices(contours, 2.5)) room.TakeFirst(choices);
        Assert.Equal(contours.Length, room.Taken.Length);
        Assert.All(room.Taken, text =>
        {
            Assert.Equal(Role.Contour, text.Role);
            Assert.True(Math.Cos(text.Angle) > -1e-9);
            Vec2 middle = text.At + 0.5 * text.Height * Vec2.FromAngle(text.Angle).Left;
            StrainContour own = contours.First(c => c.Label == text.Text);
            Assert.True(own.Points.Min(p => (p - middle).Length) < 12);
            Assert.Equal(own.Points.Average(p => p.Length), middle.Length, 1.0);
        });
    }
}
