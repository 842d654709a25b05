using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>From the page that a printer is given to the paper that comes out: (x, y) → (A·x + B·y, C·x + D·y), mm.</summary>
internal readonly record struct PageScale(double A, double B, double C, double D)
{
    /// <summary>Of a page that a printer is given upright or level.</summary>
    /// <param name="printer">Measured on an upright page.</param>
    /// <param name="level">The page lies on its long side: the printer turns it by a quarter, either way, and the paper runs through as before.</param>
    public static PageScale Of(PrinterScale printer, bool level)
    {
        (double a, double b, double d) = (printer.Across, printer.Along * Math.Sin(printer.Skew), printer.Along * Math.Cos(printer.Skew));
        // R·M·R⁻¹ with R a quarter turn.
        return level ? new PageScale(d, 0, -b, a) : new PageScale(a, b, 0, d);
    }

    /// <summary>What comes out of a page: its sheet in true millimetres, its margins wider by what skew moves its edges.</summary>
    public PrintSheet True(double width, double height, PaperMargins margins) => new(
        A * width, D * height,
        new PaperMargins(D * margins.Top, A * margins.Right, D * margins.Bottom, A * margins.Left).Wider(Math.Abs(B) * height, Math.Abs(C) * width));

    /// <summary>The page that comes out as a sheet, mm.</summary>
    public (double Width, double Height) Given(PrintSheet sheet) => (sheet.Width / A, sheet.Height / D);

    /// <summary>The page that a printer must be given so that a page comes out as it is drawn.</summary>
    /// <param name="page">In true millimetres.</param>
    /// <param name="width">Of the page to be given, mm.</param>
    /// <param name="height">The same upward, mm.</param>
    public Page Undone(Page page, double width, double height)
    {
        (double a, double b, double c, double d) = (A, B, C, D);
        double det = a * d - b * c, size = 1 / Math.Sqrt(det);
        Vec2 Back(Vec2 p) => new((d * p.X - b * p.Y) / det, (a * p.Y - c * p.X) / det);
        return new Page(
            width, height,
            [.. page.Fills.Select(f => f with { Points = [.. f.Points.Select(Back)], More = [.. f.More.Select(loop => ImmutableArray.CreateRange(loop.Select(Back)))] })],
            [.. page.Lines.Select(l => l with { Points = [.. l.Points.Select(Back)] })],
            [.. page.Texts.Select(t => t with { At = Back(t.At), Height = size * t.Height })]);
    }
}
