using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace SurfaceUnroll.Files.Proof;

/// <summary>What stands on one page of a PDF, read by a library that had no part in writing it, mm from the lower left corner.</summary>
/// <param name="Lines">Stroked lines with their width.</param>
/// <param name="Words">Runs of letters with the left end of their baseline.</param>
internal sealed record PrintedSheet(ImmutableArray<(double Width, ImmutableArray<Vec2> Path)> Lines, ImmutableArray<(string Text, Vec2 At)> Words)
{
    /// <summary>Width of the cut line and of marks, mm.</summary>
    public const double Wide = 0.7, Narrow = 0.35;

    private const double Point = 25.4 / 72;

    // Letters nearer than this are of one word, mm.
    private const double Apart = 0.1;

    /// <summary>Its cut lines.</summary>
    public IEnumerable<ImmutableArray<Vec2>> Cuts => LinesOf(Wide);

    /// <summary>A tile at true scale, which has a cut line and its number: other pages have pictures.</summary>
    public bool IsTile => Words.Any(w => w.Text == "Page") && Cuts.Any();

    /// <summary>Lines of a width.</summary>
    public IEnumerable<ImmutableArray<Vec2>> LinesOf(double width) => Lines.Where(l => Math.Abs(l.Width - width) < 0.01).Select(l => l.Path);

    /// <summary>All pages.</summary>
    /// <param name="file">The PDF.</param>
    /// <param name="place">From a place on a page to where it comes out, mm.</param>
    /// <exception cref="FormatException">This is no PDF of ours.</exception>
    public static ImmutableArray<PrintedSheet> Read(byte[] file, Func<Vec2, Vec2> place)
    {
        try
        {
            using PdfDocument document = PdfDocument.Open(file);
            return [.. document.GetPages().Select(page => Of(page, p => place(Point * new Vec2(p.X, p.Y))))];
        }
        // The library has many ways to say that a file is broken.
        catch (Exception e) when (e is not (FormatException or OutOfMemoryException))
        {
            throw new FormatException("cannot be read", e);
        }
    }

    private static PrintedSheet Of(Page page, Func<PdfPoint, Vec2> place) => new(
        // A width comes in the units in which it was set, which are millimetres.
        [.. page.Paths.Where(p => p.IsStroked).SelectMany(p => p.Select(part => (p.LineWidth, Path(part, place))))], [.. WordsOf(page.Letters, place)]);

    private static ImmutableArray<Vec2> Path(PdfSubpath part, Func<PdfPoint, Vec2> place)
    {
        var path = ImmutableArray.CreateBuilder<Vec2>();
        foreach (PdfSubpath.IPathCommand command in part.Commands)
        {
            if (command is PdfSubpath.Move move) path.Add(place(move.Location));
            else if (command is PdfSubpath.Line line) path.Add(place(line.To));
            else if (command is PdfSubpath.Close) path.Add(path[0]);
            else throw new FormatException("has a curve where lines are drawn");
        }
        return path.ToImmutable();
    }

    private static IEnumerable<(string Text, Vec2 At)> WordsOf(IReadOnlyList<Letter> letters, Func<PdfPoint, Vec2> place)
    {
        (string text, Vec2 at, Vec2 end) = ("", default, default);
        foreach (Letter letter in letters)
        {
            Vec2 from = place(letter.StartBaseLine);
            if (text.Length > 0 && ((from - end).Length > Apart || string.IsNullOrWhiteSpace(letter.Value)))
            {
                yield return (text, at);
                text = "";
            }
            if (!string.IsNullOrWhiteSpace(letter.Value))
            {
                if (text.Length == 0) at = from;
                text += letter.Value;
            }
            end = place(letter.EndBaseLine);
        }
        if (text.Length > 0) yield return (text, at);
    }
}
