using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Proof;

/// <summary>Lays printed tiles together by the letters of their overlap marks, as the fabricator does, and takes off the cut line.</summary>
internal static class TapedCut
{
    private const double Same = 0.01;

    // Longest arm of a cross; where its letter stands from its middle, and how far a wide letter may be moved at the frame, mm.
    private const double Arms = 7.05, LetterOff = 1, LetterUp = 0.3, LetterLeft = 3.5;

    /// <summary>The cut line, in the frame of the first tile, and what is wrong with the sheets; null if nothing.</summary>
    /// <param name="pages">All pages of a pattern.</param>
    public static (LineSet Cut, string? Problem) Of(ImmutableArray<PrintedSheet> pages)
    {
        PrintedSheet[] tiles = [.. pages.Where(p => p.IsTile)];
        if (tiles.Length == 0) return (new LineSet([]), "no sheet has a cut line on it");
        Dictionary<string, Vec2>[] marks = [.. tiles.Select(MarksOf)];
        var corners = new Vec2?[tiles.Length];
        corners[0] = Vec2.Zero;
        double worst = 0;
        var queue = new Queue<int>([0]);
        while (queue.TryDequeue(out int at))
            for (int other = 0; other < tiles.Length; other++)
            {
                string[] shared = [.. marks[at].Keys.Where(marks[other].ContainsKey)];
                // By one mark alone they could be turned against each other.
                if (other == at || shared.Length < 2) continue;
                foreach (string letter in shared)
                {
                    Vec2 corner = corners[at]!.Value + marks[at][letter] - marks[other][letter];
                    if (corners[other] is null) queue.Enqueue(other);
                    corners[other] ??= corner;
                    worst = Math.Max(worst, (corners[other]!.Value - corner).Length);
                }
            }
        LineSet cut = new([.. tiles.SelectMany((tile, i) => tile.Cuts.Select(path => ImmutableArray.CreateRange(path.Select(p => p + (corners[i] ?? Vec2.Zero)))))]);
        return corners.Any(c => c is null) ? (cut, "a sheet cannot be taped to the others by its marks")
            : worst > Prover.Limit ? (cut, System.FormattableString.Invariant($"marks of one letter miss each other by {worst:0.000} mm"))
            : (cut, null);
    }

    private static Dictionary<string, Vec2> MarksOf(PrintedSheet tile)
    {
        (Vec2 A, Vec2 B)[] arms = [.. tile.LinesOf(PrintedSheet.Narrow).Where(path => path.Length == 2).Select(path => (path[0], path[1])).Where(l => (l.Item2 - l.Item1).Length <= Arms)];
        (Vec2 A, Vec2 B)[] level = [.. arms.Where(l => Math.Abs(l.A.Y - l.B.Y) < Same)], upright = [.. arms.Where(l => Math.Abs(l.A.X - l.B.X) < Same)];
        var marks = new Dictionary<string, Vec2>();
        foreach ((Vec2 a, Vec2 b) in level)
            foreach ((Vec2 c, Vec2 d) in upright)
            {
                Vec2 middle = new(0.5 * (c.X + d.X), 0.5 * (a.Y + b.Y));
                if (!Within(middle.X, a.X, b.X) || !Within(middle.Y, c.Y, d.Y)) continue;
                (string text, _) = tile.Words.Where(w => w.Text.All(char.IsAsciiLetterLower) && Math.Abs(w.At.Y - middle.Y - LetterOff) < LetterUp && w.At.X - middle.X - LetterOff < LetterUp && w.At.X - middle.X > -LetterLeft)
                    .OrderBy(w => Math.Abs(w.At.X - middle.X - LetterOff)).FirstOrDefault();
                if (text is not null) marks.TryAdd(text, middle);
            }
        return marks;
    }

    private static bool Within(double x, double a, double b) => x >= Math.Min(a, b) - Same && x <= Math.Max(a, b) + Same;
}
