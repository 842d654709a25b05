using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings.ShopSheet;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Preview;

/// <summary>The pictures of formed sheets in greys, for paper.</summary>
public static class FormedViews
{
    // Picture units of a screen to mm on paper.
    private const double PenScale = 0.25;

    // Facets are lifted towards white so that ink reads on the darkest of them.
    private const double Darkest = 0.45;

    /// <summary>One piece.</summary>
    public static FormedView Of(PanelDevelopment panel) => Of([panel], Camera.For(panel.Mesh));

    /// <summary>All pieces where they belong, seen from where most of them are seen best.</summary>
    public static FormedView Of(Development development)
    {
        double all = development.Panels.Sum(p => p.FormedArea), rear = development.Panels.Where(p => Camera.For(p.Mesh) == Camera.RearLeftAbove).Sum(p => p.FormedArea);
        return Of(development.Panels, rear > 0.5 * all ? Camera.RearLeftAbove : Camera.FrontLeftAbove);
    }

    private static FormedView Of(ImmutableArray<PanelDevelopment> panels, Camera camera) => new(
        [.. panels.SelectMany(p => FormedPicture.Of(p, camera)).OrderBy(s => s.Nearness).Select(Grey)],
        camera.Right, camera.Up, camera.ToEye, camera == Camera.RearLeftAbove ? "rear left above" : "front left above");

    // As a copier would make them; lines are black.
    private static FormedShape Grey(FormedPicture.Shape shape)
    {
        double grey = shape.LineWidth > 0 ? 0 : Darkest + (1 - Darkest) * Lightness(shape.Colour);
        return new FormedShape(shape.Points, grey, PenScale * shape.LineWidth, shape.Nearness);
    }

    // Luma of ITU-R BT.709 of a colour written as #rrggbb, 0 to 1.
    private static double Lightness(string colour)
    {
        double Part(int at) => int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return 0.2126 * Part(1) + 0.7152 * Part(3) + 0.0722 * Part(5);
    }
}
