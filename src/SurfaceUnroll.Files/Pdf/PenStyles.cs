using SurfaceUnroll.Drawings;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>How a pen draws.</summary>
/// <param name="Width">mm.</param>
/// <param name="Dashes">Lengths of dashes and gaps in turn, mm; empty for a continuous line.</param>
internal sealed record PenStyle(double Width, double[] Dashes);

/// <summary>Line widths and dashes of the pens.</summary>
/// <remarks>Proportions of ISO 128-2, in widths of the line: a dash 12, a long dash 24, a gap 3, a dot 0.5.</remarks>
internal static class PenStyles
{
    private const double WideWidth = 0.7;
    private const double NarrowWidth = 0.35;
    private const double FineWidth = 0.18;
    private const double Dash = 12 * NarrowWidth;
    private const double LongDash = 24 * NarrowWidth;
    private const double Gap = 3 * NarrowWidth;
    private const double Dot = 0.5 * NarrowWidth;

    private static readonly PenStyle Wide = new(WideWidth, []);
    private static readonly PenStyle Narrow = new(NarrowWidth, []);
    private static readonly PenStyle Fine = new(FineWidth, []);
    private static readonly PenStyle Chain = new(NarrowWidth, [Dash, Gap, Dot, Gap]);
    private static readonly PenStyle FineDashed = new(FineWidth, [12 * FineWidth, 3 * FineWidth]);
    private static readonly PenStyle NarrowDashed = new(NarrowWidth, [Dash, Gap]);
    private static readonly PenStyle DoubleChain = new(NarrowWidth, [LongDash, Gap, Dot, Gap, Dot, Gap]);
    private static readonly PenStyle LongChain = new(NarrowWidth, [LongDash, Gap, Dot, Gap]);

    /// <summary>Style of a pen.</summary>
    public static PenStyle Of(Pen pen) => pen switch
    {
        Pen.Wide => Wide,
        Pen.Narrow => Narrow,
        Pen.Fine => Fine,
        Pen.Chain => Chain,
        Pen.LongChain => LongChain,
        Pen.FineDashed => FineDashed,
        Pen.NarrowDashed => NarrowDashed,
        Pen.DoubleChain => DoubleChain,
        _ => throw new ArgumentOutOfRangeException(nameof(pen), pen, "There is no such pen."),
    };
}
