using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>Places of an edge between two taps.</summary>
/// <param name="Picks">In order, pixels; to a fraction of one.</param>
/// <param name="Strength">Mean answer, of 65,535.</param>
/// <param name="Ground">What the ground beside it shows of itself.</param>
internal sealed record FollowedEdge(ImmutableArray<Vec2> Picks, double Strength, double Ground)
{
    // Of 65,535: a step of a hundredth of white is not to be told from shading. And what the ground answers everywhere is no edge.
    private const double Faintest = 650, OverGround = 4;

    /// <summary>There is nothing to be seen there.</summary>
    public bool IsFaint => Strength < Faintest || Strength < OverGround * Ground || Picks.Length < 5;
}

/// <summary>Follows edges and drawn lines through a photo.</summary>
internal static class EdgeFollower
{
    /// <summary>Standard deviations of the Gaussians for lines, pixels: the one that answers most suits the line's width.</summary>
    private static readonly double[] LineScales = [1.2, 2, 3.2, 5, 8];

    private const double EdgeScale = 1.5;

    // Picks are apart by this many pixels, so that they have few pixels in common; and there are no more of them than this between two taps.
    private const double Apart = 3;

    private const int MostPicks = 400;

    /// <summary>Follows from tap to tap.</summary>
    /// <param name="photo">Photo.</param>
    /// <param name="kind">Edge or line.</param>
    /// <param name="taps">Two or more, pixels.</param>
    /// <param name="bulge">How far it may leave the straight line between two taps, as a share of their distance.</param>
    /// <param name="slack">Pixels that a tap may be beside it.</param>
    /// <returns>For each pair of neighbouring taps.</returns>
    public static ImmutableArray<FollowedEdge> Follow(GreyPhoto photo, EdgeKind kind, ImmutableArray<Vec2> taps, double bulge, double slack)
    {
        EdgeProfile profile = kind == EdgeKind.Edge ? new EdgeProfile(photo, kind, EdgeScale) : Suited(photo, taps, bulge, slack);
        EdgeBand[] bands = [.. Enumerable.Range(0, taps.Length - 1).Select(i => Band(photo, kind, profile, taps[i], taps[i + 1], bulge, slack))];
        double[] signs = kind == EdgeKind.Line ? [1] : [1, -1];
        var ways = signs.Select(sign => bands.Select(b => b.Best(sign, slack, slack)).ToArray()).ToArray();
        // The ground is mostly on one side all along; where the other way round it is twice as clear, it is so.
        int common = ways.Length == 2 && ways[1].Sum(w => w.Strength) > ways[0].Sum(w => w.Strength) ? 1 : 0;
        return [.. bands.Select((band, i) =>
        {
            int own = ways.Length == 2 && ways[1 - common][i].Strength > 2 * ways[common][i].Strength ? 1 - common : common;
            (ImmutableArray<Vec2> way, double strength) = ways[own][i];
            return new FollowedEdge(Picks(profile, way, band.Step, signs[own], strength), strength, band.Ground);
        })];
    }

    // In a coarse band a finer profile would miss the edge between two cells.
    private static EdgeBand Band(GreyPhoto photo, EdgeKind kind, EdgeProfile profile, Vec2 from, Vec2 to, double bulge, double slack)
    {
        double length = (to - from).Length, step = length / 260;
        EdgeProfile coarse = kind == EdgeKind.Edge && step > profile.Scale ? new EdgeProfile(photo, kind, step) : profile;
        return new EdgeBand(coarse, from, to, Math.Max(1.5 * slack, bulge * length));
    }

    private static EdgeProfile Suited(GreyPhoto photo, ImmutableArray<Vec2> taps, double bulge, double slack)
    {
        (EdgeProfile? best, double most) = (null, double.NegativeInfinity);
        foreach (double scale in LineScales)
        {
            var profile = new EdgeProfile(photo, EdgeKind.Line, scale);
            double answer = Band(photo, EdgeKind.Line, profile, taps[0], taps[1], bulge, slack).Best(1, slack, slack).Strength;
            if (answer > most) (best, most) = (profile, answer);
        }
        return best!;
    }

    // Twice: the first picks tell the direction of the edge, square to which the second are taken.
    private static ImmutableArray<Vec2> Picks(EdgeProfile profile, ImmutableArray<Vec2> way, double step, double sign, double strength)
    {
        ImmutableArray<Vec2> even = Even(way, Math.Max(Apart, Length(way) / MostPicks));
        int span = (int)Math.Ceiling(2 * step) + 2;
        ImmutableArray<Vec2> first = Pick(profile, even, span, 3, sign, strength);
        return first.Length < 3 ? first : Pick(profile, first, 2, 4, sign, strength);
    }

    private static ImmutableArray<Vec2> Pick(EdgeProfile profile, ImmutableArray<Vec2> places, int within, int reach, double sign, double strength)
    {
        var picks = ImmutableArray.CreateBuilder<Vec2>();
        for (int i = 0; i < places.Length; i++)
        {
            Vec2 along = (places[Math.Min(places.Length - 1, i + reach)] - places[Math.Max(0, i - reach)]).Unit;
            // A pick much fainter than the rest is something else, seen where the edge is covered.
            if (profile.Top(places[i], along.Left, within, sign) is var (offset, answer) && answer > 0.25 * strength) picks.Add(places[i] + offset * along.Left);
        }
        return picks.ToImmutable();
    }

    private static double Length(ImmutableArray<Vec2> way) => way.Zip(way.Skip(1), (a, b) => (b - a).Length).Sum();

    // Places at even distances along a way that was made smooth first: its cells make steps.
    private static ImmutableArray<Vec2> Even(ImmutableArray<Vec2> way, double apart)
    {
        const int reach = 2;
        int n = way.Length;
        ImmutableArray<Vec2> smooth = [.. Enumerable.Range(0, n).Select(i =>
        {
            int own = Math.Min(reach, Math.Min(i, n - 1 - i));
            Vec2 sum = default;
            for (int k = -own; k <= own; k++) sum += way[i + k];
            return (1.0 / (2 * own + 1)) * sum;
        })];
        double length = Length(smooth);
        int count = Math.Max(1, (int)Math.Round(length / apart));
        var even = ImmutableArray.CreateBuilder<Vec2>(count + 1);
        (int at, double done) = (0, 0);
        for (int k = 0; k <= count; k++)
        {
            double s = k * length / count;
            while (at < n - 2 && done + (smooth[at + 1] - smooth[at]).Length < s) done += (smooth[at + 1] - smooth[at++]).Length;
            double part = (smooth[at + 1] - smooth[at]).Length;
            even.Add(Vec2.Lerp(smooth[at], smooth[at + 1], part > 0 ? Math.Clamp((s - done) / part, 0, 1) : 0));
        }
        return even.MoveToImmutable();
    }
}
