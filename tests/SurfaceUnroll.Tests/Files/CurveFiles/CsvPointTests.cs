using System.Text;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Tests.Curves;
using SurfaceUnroll.Uncertainty;
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
    [InlineData("sep=;\n-50;0\n0,5;50\n50;0\n")]
    [InlineData("sep=|\r\n-50|0\r\n0,5|50\r\n50|0\r\n")]
    [InlineData("-50 mm,0\n0.5,5 cm\n50 mm,0 in\n")]
    [InlineData("\"-50\",\"0\"\n\"0,5\",\"50\"\n\"50\",\"0\"\n")]
    [InlineData("no;across;up\n1;-50;0\n2;0,5;50\n3;50;0\n", ", \"columns\": [\"Across\", \"up\"]")]
    [InlineData("no;across;up;remark\n1;-50;0;\n2;0,5;50;\n3;50;0;\n")]
    [InlineData("1;-50;0\n2;0,5;50\n3;50;0\n", ", \"columns\": [2, 3]")]
    [InlineData("50,0\n0.5,50\n-50,0\n", ", \"reverse\": true")]
    public void Tables_of_many_makes_give_the_same_points(string text, string more = "")
    {
        SpaceCurve table = FileJob.Read("a.csv", text, more).Curve, typed = Curve(Points(Fit.Smooth, false, (-50, 0), (0.5, 50), (50, 0)));
        Assert.Equal(typed.Length, table.Length, 1e-12);
        Near(typed.Start.Point, table.Start.Point, 1e-12);
        Near(typed.AtLength(30).Point, table.AtLength(30).Point, 1e-9);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Text_of_two_bytes_a_letter_is_read_by_its_mark(bool bigEndian)
    {
        var encoding = new UnicodeEncoding(bigEndian, byteOrderMark: true);
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes("across;up\r\n-50;0\r\n0,5;50\r\n50;0\r\n")];
        Assert.Equal(Curve(Points(Fit.Smooth, false, (-50, 0), (0.5, 50), (50, 0))).Length, FileJob.Read("a.csv", bytes).Curve.Length, 1e-12);
    }

    // 6 7/8 in = 174.625 mm.
    [Theory]
    [InlineData("0,0\n6 7/8 in,0\n", "mm")]
    [InlineData("0,0\n6 7/8\",0\n", "mm")]
    [InlineData("0,0\n\"6 7/8\"\"\",0\n", "in")]
    [InlineData("0,0\n174.625 mm,0\n", "in")]
    public void Lengths_in_cells_may_have_units_of_their_own(string text, string units) => Assert.Equal(174.625, FileJob.Read("a.csv", text, units: units).Curve.Length, 1e-9);

    [Theory]
    [InlineData("-120,0,45,5\n-116,5,87,5\n0,0,120,0\n")]
    [InlineData("-120,45,5\n-116,5,87,5\n0,120\n")]
    public void Decimal_commas_among_commas_are_told_as_such(string text)
    {
        Fault fault = FileJob.Fault("a.csv", text);
        Assert.Equal("csv-columns", fault.Code);
        Assert.Contains("Decimals seem to be written with commas", fault.Message, StringComparison.Ordinal);
        Assert.Contains("semicolons between the columns, or with points for decimals", fault.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_that_was_traced_is_a_line_and_no_row_of_readings()
    {
        var curve = new TracedCurve([.. new[] { (-60, 0), (-40, 30), (0, 45), (40, 30), (60, 0) }.Select(p => new ProfilePoint(new Vec2(p.Item1, p.Item2), false))], 0.4, default!, default!, []);
        const string error = ", \"error\": 0.4";
        byte[] traced = TracedCsv.Write(curve, "the edge of a cover on cover.jpg", 1);
        string[] line = [.. Readings(traced)], typed = [.. Readings(Encoding.UTF8.GetBytes("across,up\n-60,0\n-40,30\n0,45\n40,30\n60,0\n"))];
        Assert.NotEmpty(line);
        Assert.DoesNotContain(line, r => r.Contains("points[", StringComparison.Ordinal));
        Assert.Equal(10, typed.Count(r => r.Contains("points[", StringComparison.Ordinal)));

        static IEnumerable<string> Readings(byte[] table) => JobReadings.Of(JobReadings.Drawn(FileJob.Job("a.csv", table, error, "mm").Job!)).Select(r => r.Where);
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
