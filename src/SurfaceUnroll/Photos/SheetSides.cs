using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>One side of a sheet as the photo shows it.</summary>
/// <param name="Picks">Pixels; what covers the side is left out.</param>
/// <param name="Scatter">By how much picks leave a smooth line, pixels, with a factor for neighbours that err together.</param>
internal sealed record SheetSide(ImmutableArray<Vec2> Picks, double Scatter);

/// <summary>Finds the four sides of a sheet between its tapped corners.</summary>
internal static class SheetSides
{
    // As a share of a side: a lens bows a straight line no more than this; and this much at its ends is left to the corners, where another side is near.
    private const double Bulge = 0.03, Ends = 0.03;

    // Picks left of those that a whole side has: of a side that shows less, something else may have been followed.
    private const double Shown = 0.4;

    // Pixels: nothing is picked better than this, whatever its scatter says.
    private const double Finest = 0.03;

    /// <summary>For bottom, right, top and left: the side, or null where it cannot be followed.</summary>
    public static ImmutableArray<SheetSide?> Of(GreyPhoto photo, ImmutableArray<Vec2> corners, double slack) =>
        [.. Enumerable.Range(0, 4).Select(i => Side(photo, corners[i], corners[(i + 1) % 4], slack))];

    private static SheetSide? Side(GreyPhoto photo, Vec2 from, Vec2 to, double slack)
    {
        FollowedEdge followed = EdgeFollower.Follow(photo, EdgeKind.Edge, [from, to], Bulge, slack)[0];
        if (followed.IsFaint) return null;
        Vec2 along = (to - from).Unit;
        double length = (to - from).Length, trim = Math.Max(Ends * length, 2 * slack);
        (double T, double Off, Vec2 Pick)[] row = [.. followed.Picks
            .Select(p => (T: along.Dot(p - from), Off: along.Cross(p - from), p))
            .Where(x => x.T >= trim && x.T <= length - trim).Select(x => (2 * x.T / length - 1, x.Off, x.p))];
        int whole = row.Length;
        double scatter = 0;
        // A bowed side is a parabola to well under what picks scatter; what leaves it is something that lies on the sheet.
        for (int round = 0; round < 12; round++)
        {
            if (row.Length < 8 || row.Length < Shown * whole || Parabola(row) is not { } c) return null;
            double[] miss = [.. row.Select(x => x.Off - (c[0] + x.T * (c[1] + x.T * (c[2] + x.T * c[3]))))];
            double[] sizes = [.. miss.Select(Math.Abs).Order()];
            // The middle one of normal errors is 0.6745 of their spread.
            double limit = Math.Max(4 * sizes[sizes.Length / 2] / 0.6745, 0.25);
            if (sizes[^1] <= limit)
            {
                scatter = Math.Max(Math.Sqrt(miss.Sum(m => m * m) / (row.Length - 4)), Finest) * Together(miss);
                break;
            }
            // Not all at once: far ones pull the line so that near ones look far.
            double far = Math.Max(limit, 0.5 * sizes[^1]);
            row = [.. row.Where((_, i) => Math.Abs(miss[i]) <= far)];
        }
        return scatter > 0 ? new SheetSide([.. row.Select(x => x.Pick)], scatter) : null;
    }

    private static double[]? Parabola((double T, double Off, Vec2 Pick)[] row)
    {
        var normal = new NormalEquations(4);
        foreach ((double t, double off, _) in row) normal.Add([1, t, t * t, t * t * t], off);
        return normal.Solve();
    }

    // Errors that hang together from pick to pick count for fewer picks: for a chain in which each keeps the share q of the one before, √((1 + q) / (1 − q)) (G. Box & G. Jenkins, Time Series Analysis).
    private static double Together(double[] miss)
    {
        double sum = miss.Sum(m => m * m), next = miss.Zip(miss.Skip(1), (a, b) => a * b).Sum();
        double q = sum > 0 ? Math.Clamp(next / sum, 0, 0.8) : 0;
        return Math.Sqrt((1 + q) / (1 - q));
    }
}
