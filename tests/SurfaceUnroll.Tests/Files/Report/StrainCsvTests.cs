using System.Globalization;
using System.Text;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.Report;

public class StrainCsvTests
{
    private static string[] Rows(params VertexStrain[] strains)
    {
        var mesh = new SheetMesh([.. strains.Select((_, i) => new Vec3(1.5 * i, -2, 1.0 / 3))], [.. strains.Select((_, i) => new Vec2(i, -0.25))], []);
        return Encoding.ASCII.GetString(StrainCsv.Write(mesh, new StrainMap([.. strains]))).Split('\n');
    }

    [Fact]
    public void Rows_hold_both_places_and_all_strains()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = "," } };
        try
        {
            string[] rows = Rows(
                new VertexStrain(0.02, -0.015, Vec2.FromAngle(Math.PI / 3), -0.0047),
                new VertexStrain(-0.01, -0.02, Vec2.FromAngle(-Math.PI / 4), 0.03));
            Assert.Equal(
                [
                    "vertex,x_mm,y_mm,z_mm,u_mm,v_mm,stretch_percent,shrink_percent,major_percent,minor_percent,major_angle_deg,thickness_percent",
                    "1,0,-2,0.333333333,0,-0.25,2,1.5,2,-1.5,60,-0.47",
                    "2,1.5,-2,0.333333333,1,-0.25,0,2,-1,-2,135,3",
                    "",
                ],
                rows);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(180, "0")]
    [InlineData(-1e-9, "0")]
    [InlineData(179.99999, "0")]
    [InlineData(-180, "0")]
    [InlineData(-90, "90")]
    [InlineData(179.5, "179.5")]
    public void Direction_is_from_0_to_less_than_180(double degrees, string written) =>
        Assert.Equal(written, Rows(new VertexStrain(0.1, 0, Vec2.FromAngle(degrees * Math.PI / 180), 0))[1].Split(',')[10]);
}
