using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>The lettered places of the tape checks on a pattern: a short tick from the finished edge into the metal, and a small letter.</summary>
internal static class TapeDrawing
{
    // Length of a tick on a piece of ordinary size, on the smallest, and as a share of the size between, mm.
    private const double LongestTick = 4, ShortestTick = 1, TickShare = 0.03;

    private const int Directions = 16;

    // How far from its tick a letter may stand, in cap heights.
    private static readonly ImmutableArray<double> Reaches = [1, 1.5, 2, 3, 4];

    /// <summary>The ticks.</summary>
    public static IEnumerable<Stroke> Ticks(PanelDevelopment panel, CutOutline outline)
    {
        var net = new CutOutline(panel.Net);
        return Marks(panel).SelectMany(mark => outline.Inside([mark.Flat, Head(panel, net, mark)]).Select(part => new Stroke(Role.Mark, part)));
    }

    /// <summary>Choices for each letter, beyond its tick and beside it.</summary>
    public static IEnumerable<IEnumerable<Lettering>> Letters(PanelDevelopment panel, double height)
    {
        var net = new CutOutline(panel.Net);
        foreach (TapeMark mark in Marks(panel))
        {
            Vec2 head = Head(panel, net, mark), inward = (head - mark.Flat).Unit, along = inward.Left;
            IEnumerable<Vec2> places = Reaches.SelectMany(r => new[] { r * inward, r * along, -r * along, r * (inward + along), r * (inward - along) }).Select(off => head + height * off);
            yield return places.Select(at => new Lettering(Role.Mark, mark.Letter, at - new Vec2(0, 0.5 * height), height, 0, Anchor.Middle));
        }
    }

    private static ImmutableArray<TapeMark> Marks(PanelDevelopment panel) => panel.Plan?.Marks ?? [];

    // The way that leads deepest into the finished piece.
    private static Vec2 Head(PanelDevelopment panel, CutOutline net, TapeMark mark)
    {
        Box box = Box.Around(panel.Cut);
        double tick = Math.Clamp(TickShare * Math.Min(box.Width, box.Height), ShortestTick, LongestTick);
        return Enumerable.Range(0, Directions).Select(k => mark.Flat + tick * Vec2.FromAngle(Math.Tau * k / Directions)).MaxBy(p => Math.Round(net.Depth(p), 6));
    }
}
