using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Files.Pdf;

/// <summary>Pages with one of everything.</summary>
internal static class PdfSample
{
    public const double A4Width = 210, A4Height = 297, LetterWidth = 215.9, LetterHeight = 279.4;

    public static Page Empty { get; } = new(A4Width, A4Height, [], [], []);

    public static ImmutableArray<Page> Pages { get; } =
    [
        Empty with
        {
            Fills = [new PageFill([new(20, 20), new(40, 20), new(40, 25)], 0.5)],
            Lines =
            [
                new PageLine(Pen.Narrow, [new(10, 12), new(110, 12)]),
                new PageLine(Pen.Narrow, [new(10, 12), new(10, 112)]),
                new PageLine(Pen.Chain, [new(10, 30), new(110, 30)]),
                new PageLine(Pen.LongChain, [new(10, 40), new(110, 40)]),
                new PageLine(Pen.Wide, Oval(new Vec2(105, 180), 80, 60), Closed: true),
            ],
            Texts =
            [
                new PageText("outside face up", new(105, 180), 4, 0, Anchor.Middle),
                new PageText("100 mm", new(60, 14), 3, 0, Anchor.Middle, Halo: true),
                new PageText("R 6 7/8 in · 45° ≥ Ø −½ ±", new(20, 270), 3),
            ],
        },
        new Page(LetterWidth, LetterHeight, [], [new PageLine(Pen.Fine, [new(1, 2), new(3, 4), new(5, 2)], Closed: true)],
            [new PageText("page 2", new(100, 100), 5, Math.PI / 2, Anchor.Right)]),
    ];

    private static ImmutableArray<Vec2> Oval(Vec2 centre, double a, double b) =>
        [.. Enumerable.Range(0, 2000).Select(i => i * Math.Tau / 2000).Select(t => new Vec2(centre.X + a * Math.Cos(t), centre.Y + b * Math.Sin(t)))];
}
