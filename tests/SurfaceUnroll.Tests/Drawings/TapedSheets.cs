using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Drawings;

/// <summary>Sheets laid together letter on letter, as the fabricator does, with no knowledge of how they were cut apart.</summary>
internal static class TapedSheets
{
    /// <summary>The corner of each sheet when the first lies at the origin.</summary>
    /// <param name="sheets">Tiles of one piece.</param>
    /// <param name="tolerance">How far two marks of one letter may miss each other, mm.</param>
    public static Vec2[] Lay(IReadOnlyList<PaperSheet> sheets, double tolerance)
    {
        IReadOnlyDictionary<string, Vec2>[] marks = [.. sheets.Select(s => s.Marks())];
        var corners = new Vec2?[sheets.Count];
        corners[0] = Vec2.Zero;
        var queue = new Queue<int>([0]);
        while (queue.TryDequeue(out int at))
        {
            for (int other = 0; other < sheets.Count; other++)
            {
                string[] shared = [.. marks[at].Keys.Where(marks[other].ContainsKey)];
                // By one mark alone they could be turned against each other: small sheets that meet in a corner share one, and are laid by their neighbours.
                if (other == at || shared.Length < 2) continue;
                foreach (string letter in shared)
                {
                    Vec2 corner = corners[at]!.Value + marks[at][letter] - marks[other][letter];
                    if (corners[other] is null) queue.Enqueue(other);
                    corners[other] ??= corner;
                    Assert.True((corners[other]!.Value - corner).Length < tolerance, $"Mark {letter} does not meet.");
                }
            }
        }
        Assert.All(corners, c => Assert.True(c.HasValue, "A sheet cannot be taped to any other."));
        return [.. corners.Select(c => c!.Value)];
    }

    /// <summary>Lines of one thickness on all sheets, laid together.</summary>
    public static List<(Vec2 From, Vec2 To)> Segments(IReadOnlyList<PaperSheet> sheets, Vec2[] corners, double thickness) =>
    [
        .. sheets.SelectMany((sheet, i) => sheet.Lines
            .Where(l => Math.Abs(l.Thickness - thickness) < 0.01)
            .SelectMany(l => l.Points.Skip(1).Select((p, k) => (l.Points[k] + corners[i], p + corners[i])))),
    ];

    /// <summary>The largest distance from places along a line, closer together than half a millimetre, to the nearest of some segments.</summary>
    public static double FarthestFrom(IEnumerable<(Vec2 From, Vec2 To)> line, IReadOnlyCollection<(Vec2 From, Vec2 To)> segments)
    {
        double farthest = 0;
        foreach ((Vec2 from, Vec2 to) in line)
        {
            int steps = 1 + (int)Math.Ceiling((to - from).Length / 0.5);
            for (int k = 0; k <= steps; k++)
            {
                Vec2 p = Vec2.Lerp(from, to, (double)k / steps);
                farthest = Math.Max(farthest, segments.Min(s => Distance(p, s.From, s.To)));
            }
        }
        return farthest;
    }

    private static double Distance(Vec2 p, Vec2 a, Vec2 b)
    {
        Vec2 along = b - a;
        double t = along.Length > 0 ? Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1) : 0;
        return (p - (a + t * along)).Length;
    }
}
