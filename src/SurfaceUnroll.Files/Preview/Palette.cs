using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Preview;

/// <summary>Colours of the picture: cool metal outside, warm inside, ink for lines, rust for the cut.</summary>
internal static class Palette
{
    public const string Paper = "#fbf9f4", Ink = "#22313b", Faint = "#6d7a80", Element = "#3d7f86", Cut = "#b4482c", Blank = "#dfe6e6";

    private static readonly Vec3 OutsideDark = new(74, 98, 112), OutsideLight = new(222, 232, 234);
    private static readonly Vec3 InsideDark = new(104, 82, 66), InsideLight = new(214, 190, 162);

    /// <summary>Colour of a facet.</summary>
    /// <param name="outward">Unit normal on the outside.</param>
    /// <param name="camera">Its eye decides which face is seen; the light stands over its left shoulder.</param>
    public static string Facet(Vec3 outward, Camera camera)
    {
        Vec3 light = (0.35 * camera.ToEye + 0.75 * camera.Up - 0.55 * camera.Right).Unit;
        bool outside = outward.Dot(camera.ToEye) >= 0;
        Vec3 seen = outside ? outward : -outward;
        // Half-Lambert: keeps faces turned from the light readable.
        double shade = Math.Pow(0.5 + 0.5 * seen.Dot(light), 1.3);
        Vec3 colour = outside ? Vec3.Lerp(OutsideDark, OutsideLight, shade) : Vec3.Lerp(InsideDark, InsideLight, shade);
        return string.Create(CultureInfo.InvariantCulture, $"#{(int)colour.X:x2}{(int)colour.Y:x2}{(int)colour.Z:x2}");
    }
}
