using System.Globalization;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>What a printed test page says of its printer.</summary>
/// <param name="Scale">How it prints; null with a fault.</param>
/// <param name="Problem">What is wrong with the measures, or what is to be known of them; empty if nothing.</param>
/// <param name="Mend">How to mend it.</param>
public sealed record PrinterTest(PrinterScale? Scale, string Problem, string Mend)
{
    // More than this is no printer but a wrong setting; less than half a per cent is none that a dialog makes. As fractions.
    private const double MostOff = 0.05, Unnoticed = 0.005, Alike = 0.003;

    // A rule is read to so much, mm: two diagonals and two sides that belong to one parallelogram differ by no more.
    private const double Reading = 1.5;

    // Printers pull paper askew by less.
    private const double MostSkew = Math.PI / 180;

    // What is made of a length by the well-known mistakes, as fractions.
    private static readonly (double Ratio, string Cause)[] Signatures =
    [
        (279.4 / 297, "an A4 page fitted onto Letter paper"),
        (215.9 / 210, "a page fitted from A4 to the width of Letter paper"),
        (210.0 / 297, "a page made smaller to half its size, such as A4 onto A5, or two pages a sheet"),
        (297.0 / 210, "a page made larger to twice its size, such as A4 onto A3"),
        (72.0 / 96, "a page of 72 dots an inch printed as if it had 96"),
        (96.0 / 72, "a page of 96 dots an inch printed as if it had 72"),
        (72.0 / 300, "a page of 72 dots an inch printed as if it had 300"),
        (300.0 / 72, "a page of 300 dots an inch printed as if it had 72"),
        (1 / 25.4, "inches typed as millimetres"),
        (0.1, "centimetres typed as millimetres"),
        (0.94, "“fit to page”, which leaves the printer’s own margin free"),
    ];

    /// <summary>Judges the measures of a page.</summary>
    /// <param name="name">Of the printer.</param>
    /// <param name="page">The page that was printed.</param>
    /// <param name="across">Measured length of the level bar, whole or to its tick, mm.</param>
    /// <param name="along">The same of the upright bar.</param>
    /// <param name="diagonals">Measured length of the diagonals, up and down, mm; null if they were not measured.</param>
    public static PrinterTest Of(string name, PrinterTestPage page, double across, double along, (double Up, double Down)? diagonals)
    {
        (double x, double y) = (Ratio(across, page.Width), Ratio(along, page.Height));
        foreach ((string bar, double ratio, double measured) in new[] { ("across", x, across), ("along", y, along) })
        {
            if (Math.Abs(ratio - 1) <= MostOff) continue;
            string cause = Cause(ratio) is { } known ? $" That looks like {known}." : "";
            return new PrinterTest(
                null, string.Create(CultureInfo.InvariantCulture, $"The bar {bar} measures {measured:0.##} mm, {100 * Math.Abs(ratio - 1):0.#} % {(ratio < 1 ? "less" : "more")} than it should: no printer is so far off.{cause}"),
                "Print the page again at 100 % (“actual size”, no “fit to page”) and on the paper it was made for, measure in millimetres, and type all measures in the order that the page gives.");
        }
        double skew = 0;
        if (diagonals is { } d)
        {
            (double a, double b) = (x * page.Width, y * page.Height);
            double sides = Math.Sqrt(2 * (a * a + b * b)), measured = Math.Sqrt(d.Up * d.Up + d.Down * d.Down);
            double sine = (d.Up * d.Up - d.Down * d.Down) / (4 * a * b);
            if (Math.Abs(measured - sides) > Reading * Math.Sqrt(2) || Math.Abs(sine) > Math.Sin(MostSkew))
                return new PrinterTest(null, string.Create(CultureInfo.InvariantCulture, $"Bars and diagonals do not belong to one page: after the bars the diagonals are about {Math.Sqrt(0.5) * sides:0.0} mm, and {d.Up:0.##} and {d.Down:0.##} mm were measured."), "Measure the diagonals again from corner to corner, “up” from the lower left, and type them in this order.");
            skew = Math.Asin(sine);
        }
        var scale = new PrinterScale(name, x, y, skew);
        return Math.Abs(x - y) <= Alike && Math.Abs(x - 1) > Unnoticed
            ? new PrinterTest(scale, "Both bars are off by the same part, which printers hardly are by themselves: it may be a page that was fitted to its paper.", "Look at the print dialog once more. If it prints at 100 %, all is well.")
            : new PrinterTest(scale, "", "");
    }

    // Against the whole bar or its short measure: whichever is nearer to true, or else to a mistake that is known.
    private static double Ratio(double measured, double whole)
    {
        double[] ratios = whole > PrinterTestPage.ShortBar ? [measured / PrinterTestPage.ShortBar, measured / whole] : [measured / whole];
        double nearest = ratios.MinBy(r => Math.Abs(Math.Log(r)));
        return Math.Abs(nearest - 1) <= MostOff ? nearest : ratios.Where(r => Cause(r) is not null).DefaultIfEmpty(nearest).First();
    }

    private static string? Cause(double ratio)
    {
        (double nearest, string cause) = Signatures.MinBy(s => Math.Abs(Math.Log(ratio / s.Ratio)));
        return Math.Abs(ratio / nearest - 1) < 0.015 ? cause : null;
    }
}
