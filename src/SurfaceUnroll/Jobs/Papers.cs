using System.Collections.Immutable;
using System.Globalization;

namespace SurfaceUnroll.Jobs;

/// <summary>Paper for the tiled pattern.</summary>
/// <param name="Size">Sheet size, or a roll.</param>
/// <param name="Margins">Unprinted edges, mm.</param>
/// <param name="Overlap">How far neighbouring tiles overlap, mm.</param>
/// <param name="Orientation">Portrait, landscape, or whichever takes fewer sheets.</param>
public sealed record PaperSpec(PaperSize Size, PaperMargins Margins, double Overlap, PaperOrientation Orientation)
{
    /// <summary>A4, 10 mm margins and overlap, the way round that takes fewest sheets.</summary>
    public static PaperSpec Default { get; } = new(PaperSize.A4, 10, 10, PaperOrientation.Fewest);

    /// <summary>How far the pattern is turned on the paper, radians counter-clockwise; null: as takes the fewest sheets.</summary>
    public double? Turn { get; init; } = 0;

    /// <summary>All pieces are printed in one run too, side by side on the same sheets.</summary>
    public bool Together { get; init; }

    /// <summary>Paper so many times as large, with margins as much wider.</summary>
    public PaperSpec Enlarged(double times) => this with
    {
        Size = Size with { Width = times * Size.Width, Height = times * Size.Height },
        Margins = new PaperMargins(times * Margins.Top, times * Margins.Right, times * Margins.Bottom, times * Margins.Left),
    };

    /// <summary>The printer, where its scale was measured; null: it prints true.</summary>
    public PrinterScale? Printer { get; init; }
}

/// <summary>Unprinted edges of a sheet that stands upright, mm.</summary>
/// <param name="Top">At the top.</param>
/// <param name="Right">On the right.</param>
/// <param name="Bottom">At the foot.</param>
/// <param name="Left">On the left.</param>
public readonly record struct PaperMargins(double Top, double Right, double Bottom, double Left)
{
    /// <summary>The same on every side.</summary>
    public static implicit operator PaperMargins(double mm) => new(mm, mm, mm, mm);

    /// <summary>Of the sheet lying on its long side. Printers differ in which way they turn it, so that opposite edges get the wider one of both.</summary>
    public PaperMargins OnItsSide() => new(Math.Max(Left, Right), Math.Max(Top, Bottom), Math.Max(Left, Right), Math.Max(Top, Bottom));

    /// <summary>Each edge wider by so much, mm.</summary>
    public PaperMargins Wider(double across, double along) => new(Top + along, Right + across, Bottom + along, Left + across);
}

/// <summary>A sheet of paper, portrait, or a roll.</summary>
/// <param name="Name">As printed in labels.</param>
/// <param name="Width">Short side, or width of the roll, mm.</param>
/// <param name="Height">Long side, mm; +∞ for a roll, which is cut to the length of the print.</param>
public sealed record PaperSize(string Name, double Width, double Height)
{
    private const double Inch = 25.4;

    /// <summary>210 × 297 mm (ISO 216).</summary>
    public static PaperSize A4 { get; } = new("A4", 210, 297);

    /// <summary>8.5 × 11 in (ANSI/ASME Y14.1 size A).</summary>
    public static PaperSize Letter { get; } = new("Letter", 8.5 * Inch, 11 * Inch);

    /// <summary>All sizes that have names: the A and B series of ISO 216, and sizes A to E of ANSI/ASME Y14.1 with the names of the smaller two.</summary>
    public static ImmutableArray<PaperSize> Named { get; } =
    [
        .. Series("A", 841, 1189), .. Series("B", 1000, 1414),
        Letter, new("Legal", 8.5 * Inch, 14 * Inch), new("Tabloid", 11 * Inch, 17 * Inch),
        new("ANSI A", 8.5 * Inch, 11 * Inch), new("ANSI B", 11 * Inch, 17 * Inch), new("ANSI C", 17 * Inch, 22 * Inch), new("ANSI D", 22 * Inch, 34 * Inch), new("ANSI E", 34 * Inch, 44 * Inch),
    ];

    /// <summary>Paper from a roll.</summary>
    /// <param name="width">mm.</param>
    public static PaperSize Roll(double width) => new(string.Create(CultureInfo.InvariantCulture, $"roll {width:0.#} mm wide"), width, double.PositiveInfinity);

    /// <summary>A sheet of one's own, its sides in either order.</summary>
    public static PaperSize Own(double a, double b) => new(string.Create(CultureInfo.InvariantCulture, $"{Math.Min(a, b):0.#} × {Math.Max(a, b):0.#} mm"), Math.Min(a, b), Math.Max(a, b));

    /// <summary>It comes from a roll.</summary>
    public bool IsRoll => double.IsPositiveInfinity(Height);

    // ISO 216: each size is half of the one before, rounded down to the millimetre.
    private static IEnumerable<PaperSize> Series(string letter, double width, double height)
    {
        for (int n = 0; n <= 10; n++)
        {
            yield return new PaperSize(string.Create(CultureInfo.InvariantCulture, $"{letter}{n}"), width, height);
            (width, height) = (Math.Floor(0.5 * height), width);
        }
    }
}

/// <summary>Which way round the paper is used.</summary>
public enum PaperOrientation
{
    /// <summary>Whichever takes fewer sheets; portrait if equal.</summary>
    Fewest,

    /// <summary>Long side upright.</summary>
    Portrait,

    /// <summary>Long side level.</summary>
    Landscape,
}

/// <summary>How a printer falls short of true scale, as measured on a test page that stands upright: a place (x, y) of the page comes out at (Across·x + Along·sin(Skew)·y, Along·cos(Skew)·y).</summary>
/// <param name="Name">Of the printer.</param>
/// <param name="Across">What comes out of one millimetre across the page, mm.</param>
/// <param name="Along">The same along it.</param>
/// <param name="Skew">How far what should stand upright leans to the right, radians.</param>
public sealed record PrinterScale(string Name, double Across, double Along, double Skew);
