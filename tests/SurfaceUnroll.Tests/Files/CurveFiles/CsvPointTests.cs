using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Curves;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Files.CurveFiles;

public class CsvPointTests
{
    [Theory]
    [InlineData("-50,0\n0.5,50\n50,0\n")]
    [InlineData("\uFEFFacross,up\r\n-50,0\r\n0.5,50\r\n50,0\r\n")]
    [InlineData("across;up\n-50;0\n0,5;50\n50;0\n")]
    [InlineData("# a comment\n\n\"across\"\t\"up\"\n\"-50\"\t\"0\"\n0,5\t50\n50\t0")]
    [InlineData("-50 0\n  0.5   50\n50 0")]
    [InlineData("−50,0 0,0\n0,5 50,0\n50,0 0,0")]
    [InlineData("no;across;up\n1;-50;0\n2;0,5;50\n3;50;0\n", ", \"columns\": [\"Across\", \"up\"]")]
    [InlineData("1;-50;0\n2;0,5;50\n3;50;0\n", ", \"columns\": [2, 3]")]
    [InlineData("50,0\n0.5,50\n-50,0\n", ", \"reverse\": true")]
    public void Tables_of_many_makes_give_the_same_points(string text, string more = "")
    {
        SpaceCurve table = FileJob.Read("a.csv", text, more).Curve, typed = Curve(Points(Fit.Smooth, false, (-50, 0), (0.5, 50), (50, 0)));
        Assert.Equal(typed.Length, table.Length, 1e-12);
        Near(typed.Start.Point, table.Start.Point, 1e-12);
        Near(typed.AtLength(30).Point, table.AtLength(30).Point, 1e-9);
    }

    [Fact]
    public void Third_column_may_mark_corners_or_make_points_in_space()
    {
        SpaceCurve broken = FileJob.Read("a.csv", "0;0;\n10;20;corner\n30;20;\n50;0;").Curve;
        SpaceCurve typed = Curve(Points(Fit.Smooth, false, (0, 0), (10, 20), (30, 20), (50, 0)).WithCorners(1));
        Assert.Equal(typed.Length, broken.Length, 1e-12);
        Near(new Vec3(1, 2, 3), FileJob.Read("a.csv", "x,y,z\n1,2,3\n4,5,6").Curve.Start.Point, 0);
    }

    [Fact]
    public void Numbers_are_in_the_units_of_the_job_unless_the_file_has_its_own()
    {
        Assert.Equal(254, FileJob.Read("a.csv", "0,0\n10,0", units: "in").Curve.Length, 1e-9);
        Assert.Equal(100, FileJob.Read("a.csv", "0,0\n10,0", ", \"fileUnits\": \"cm\"", "in").Curve.Length, 1e-9);
    }

    [Fact]
    public void Mirrored_table_begins_on_the_centreline() =>
        Assert.Equal(2 * Math.Sqrt(50 * 50 + 60 * 60), FileJob.Read("a.csv", "0,60\n50,0", ", \"mirror\": true, \"fit\": \"straight\"").Curve.Length, 1e-9);
}
