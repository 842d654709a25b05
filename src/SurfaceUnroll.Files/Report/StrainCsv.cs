using System.Globalization;
using System.Text;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Report;

/// <summary>Writes the strain at every vertex of a sheet as a table for a spreadsheet, mm and percent whatever the units of the job.</summary>
public static class StrainCsv
{
    private const string Header =
        "vertex,x_mm,y_mm,z_mm,u_mm,v_mm,stretch_percent,shrink_percent,major_percent,minor_percent,major_angle_deg,thickness_percent\n";

    private const int AngleDecimals = 4, PercentDecimals = 6;

    /// <summary>The file: a header, then one row a vertex in the order of the OBJ.</summary>
    /// <param name="mesh">Formed and flat places.</param>
    /// <param name="map">Strain at its vertices.</param>
    /// <returns>ASCII, decimal points, lines ended by a line feed.</returns>
    public static byte[] Write(SheetMesh mesh, StrainMap map)
    {
        var text = new StringBuilder(Header, 120 * map.Vertices.Length + 256);
        for (int i = 0; i < map.Vertices.Length; i++)
        {
            (Vec3 formed, Vec2 flat, VertexStrain strain) = (mesh.Formed[i], mesh.Flat[i], map.Vertices[i]);
            text.Append(CultureInfo.InvariantCulture, $"{i + 1}");
            foreach (double mm in (ReadOnlySpan<double>)[formed.X, formed.Y, formed.Z, flat.X, flat.Y]) text.Append(',').Append(PlainNumber.Mm(mm));
            foreach (double share in (ReadOnlySpan<double>)[strain.Stretch, strain.Shrink, strain.Major, strain.Minor]) text.Append(',').Append(Percent(share));
            text.Append(',').Append(Angle(strain.MajorDirection)).Append(',').Append(Percent(strain.Thickness)).Append('\n');
        }
        return Encoding.ASCII.GetBytes(text.ToString());
    }

    private static string Percent(double share) =>
        PlainNumber.Rounded(100 * share, PercentDecimals).ToString("0.######", CultureInfo.InvariantCulture);

    // From right, counter-clockwise, 0 ≤ angle < 180 also after rounding: a direction and its opposite are the same.
    private static string Angle(Vec2 direction)
    {
        double angle = PlainNumber.Rounded(Math.Atan2(direction.Y, direction.X) * 180 / Math.PI, AngleDecimals);
        if (angle < 0) angle = PlainNumber.Rounded(angle + 180, AngleDecimals);
        return (angle >= 180 ? 0 : angle).ToString("0.####", CultureInfo.InvariantCulture);
    }
}
