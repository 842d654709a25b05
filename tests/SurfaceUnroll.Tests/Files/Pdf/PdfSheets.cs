using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Drawings;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics;

namespace SurfaceUnroll.Tests.Files.Pdf;

/// <summary>Reads the sheets of a PDF back with PdfPig, which had no part in writing it.</summary>
internal static class PdfSheets
{
    private const double MillimetresPerPoint = 25.4 / 72;

    public static PaperSheet[] Read(byte[] pdf)
    {
        using PdfDocument document = PdfDocument.Open(pdf);
        return [.. document.GetPages().Select(Read)];
    }

    private static PaperSheet Read(UglyToad.PdfPig.Content.Page page) => new(
        MillimetresPerPoint * page.Width, MillimetresPerPoint * page.Height,
        [.. page.Paths.Where(p => p.IsStroked).SelectMany(Lines)],
        [.. Words(page.Letters)]);

    // PdfPig turns places into points of the page, but gives a width in the units it was set in: the writer sets mm.
    private static IEnumerable<PaperLine> Lines(PdfPath path)
    {
        foreach (PdfSubpath part in path)
        {
            var points = new List<Vec2>();
            foreach (PdfSubpath.IPathCommand command in part.Commands)
            {
                switch (command)
                {
                    case PdfSubpath.Move move:
                        points.Add(Place(move.Location));
                        break;
                    case PdfSubpath.Line line:
                        points.Add(Place(line.To));
                        break;
                    case PdfSubpath.Close:
                        points.Add(points[0]);
                        break;
                    default:
                        Assert.Fail($"The writer draws nothing but straight lines, and here is {command}.");
                        break;
                }
            }
            yield return new PaperLine(path.LineWidth, points);
        }
    }

    // Runs of letters without a space between them; only their place is wanted, so how words are told apart need not be clever.
    private static IEnumerable<PaperWord> Words(IReadOnlyList<Letter> letters)
    {
        string text = "";
        Vec2 at = default;
        PdfPoint end = default;
        foreach (Letter letter in letters)
        {
            bool apart = text.Length > 0 && (Place(letter.StartBaseLine) - Place(end)).Length > 0.1;
            if (text.Length > 0 && (apart || string.IsNullOrWhiteSpace(letter.Value)))
            {
                yield return new PaperWord(text, at);
                text = "";
            }
            if (!string.IsNullOrWhiteSpace(letter.Value))
            {
                if (text.Length == 0) at = Place(letter.StartBaseLine);
                text += letter.Value;
            }
            end = letter.EndBaseLine;
        }
        if (text.Length > 0) yield return new PaperWord(text, at);
    }

    private static Vec2 Place(PdfPoint p) => MillimetresPerPoint * new Vec2(p.X, p.Y);
}
