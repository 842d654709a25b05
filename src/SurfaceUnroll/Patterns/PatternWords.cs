using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns;

/// <summary>The words of a blank and the places they may take: titles, numbers of element lines, names of edges, widths of relief cuts.</summary>
internal static class PatternWords
{
    /// <summary>Smallest cap height that prints legibly, mm.</summary>
    public const double SmallestHeight = 1.2;

    // How deep the words of an edge may stand, in cap heights, and how far along it.
    private static readonly ImmutableArray<double> EdgeDepths = [2.5, 5, 8, 12, 16], EdgeShares = [0.56, 0.44, 0.66, 0.34];

    // How far down the centreline the title may stand.
    private static readonly ImmutableArray<double> TitleShares = [0.45, 0.3, 0.65];

    /// <summary>Number and bend radius beside each line near one of its ends, written along the line; the number alone where there is no room for both.
    /// Where lines crowd together some go without.</summary>
    /// <param name="lines">The lines that are drawn.</param>
    /// <param name="front">At their front ends; else at their rear ends.</param>
    /// <param name="across">The lines run from left to right.</param>
    /// <param name="insets">Distances from the end, in cap heights, the best first.</param>
    /// <param name="height">Cap height, mm.</param>
    /// <param name="units">Units of the job.</param>
    public static IEnumerable<IEnumerable<Lettering>> LineLabels(ElementLine[] lines, bool front, bool across, ImmutableArray<double> insets, double height, LengthUnit units)
    {
        Vec2? last = null;
        foreach (ElementLine line in lines)
        {
            Vec2 along = (line.Rear - line.Front).Unit;
            string number = line.Number.ToString(CultureInfo.InvariantCulture);
            string[] texts = [$"{number}  {PatternDrawing.RadiusText(front ? line.BendRadiusFront : line.BendRadiusRear, units)}", number];
            Vec2 At(double inset) => front ? line.Front + inset * height * along : line.Rear - inset * height * along;
            Vec2 at = At(insets[0]);
            if (last is { } before && Math.Abs((at - before).Cross(along)) < 1.6 * height) continue;
            last = at;
            // Read from the right-hand side of the page: the text runs up the line and stands on its left. Along lines that run across it reads from below.
            bool turned = across ? along.X < 0 : along.Y <= 0;
            Vec2 up = turned ? -along : along;
            Anchor anchor = front == turned ? Anchor.Right : Anchor.Left;
            yield return texts.SelectMany(text => insets.Select(inset => new Lettering(Role.Element, text, At(inset) + 0.4 * height * up.Left, height, Math.Atan2(up.Y, up.X), anchor)));
        }
    }

    /// <summary>The words of an edge inside the piece, off the middle of the edge so that it stands clear of the centreline, and deeper in where labels are
    /// in its way.</summary>
    /// <param name="panel">The piece.</param>
    /// <param name="edge">One of its edges.</param>
    /// <param name="texts">What may stand there, the best first.</param>
    /// <param name="net">Its finished outline.</param>
    /// <param name="height">Cap height, mm.</param>
    public static IEnumerable<Lettering> EdgeNames(PanelDevelopment panel, BlankEdge edge, ImmutableArray<string> texts, CutOutline net, double height)
    {
        if (edge.Flat.Length < 2 || edge.FlatLength <= 0) yield break;
        foreach (string text in texts)
        {
            double share = 0.5 * PageTextWidth.Of(text, height) / edge.FlatLength;
            foreach (double depth in EdgeDepths)
            {
                foreach (double fraction in EdgeShares)
                {
                    // Words that run past the end of their edge could be taken for another's; only the name alone may.
                    if (text != texts[^1] && (fraction < share || fraction > 1 - share)) continue;
                    (Vec2 at, Vec2 along) = DrawingPlaces.On(edge.Flat, fraction);
                    Vec2 inward = Inward(panel, edge, net, at, along);
                    double angle = DrawingPlaces.Upright(Math.Atan2(along.Y, along.X));
                    // The middle of the letters, not their baseline, stands at the depth.
                    Vec2 baseline = at + depth * height * inward - 0.5 * height * Vec2.FromAngle(angle).Left;
                    yield return new Lettering(Role.Note, text, baseline, height, angle, Anchor.Middle);
                }
            }
        }
    }

    /// <summary>The words in the middle, from the whole of them at full size down to the name alone at the smallest; where even that has no room, the margins
    /// of the paper say it all.</summary>
    /// <param name="panel">The developed panel.</param>
    /// <param name="job">For names, material and units.</param>
    /// <param name="height">Cap height, mm.</param>
    /// <param name="more">Places to try where those on the centreline are taken.</param>
    public static IEnumerable<IReadOnlyCollection<Lettering>> Titles(PanelDevelopment panel, Job job, double height, IReadOnlyCollection<Vec2> more)
    {
        string[] whole = [panel.Spec.Name, job.Name, PatternDrawing.SheetText(job), "OUTSIDE FACE UP"];
        Vec2[] centre = [.. TitleShares.Select(fraction => DrawingPlaces.OnCentre(panel, fraction))];
        foreach (string[] lines in new[] { whole, [whole[0], whole[3]], [whole[0]] })
        {
            for (double h = height; h >= 0.999 * SmallestHeight; h = h > SmallestHeight ? Math.Max(SmallestHeight, 0.75 * h) : 0)
            {
                double half = 0.5 * lines.Max(line => PageTextWidth.Of(line, h));
                foreach (Vec2 start in centre.Select(p => p + new Vec2(h, 0)).Concat(more.Select(p => p - new Vec2(half, 0))))
                {
                    Vec2 top = start + new Vec2(0, 0.85 * lines.Length * h);
                    yield return [.. lines.Select((line, i) => new Lettering(Role.Note, line, top - new Vec2(0, 1.7 * (i + 1) * h), h))];
                }
            }
        }
    }

    /// <summary>Width of a relief cut beside its tip.</summary>
    public static IEnumerable<Lettering> SlitWords(SlitOpening slit, double height, LengthUnit units)
    {
        string text = (slit.Width >= 0 ? "opens " : "overlaps ") + ShopLength.Print(Math.Abs(slit.Width), units, 1);
        foreach (double side in new[] { 1.5, -2.5, 4, -5 })
            foreach (Anchor anchor in new[] { Anchor.Left, Anchor.Right, Anchor.Middle })
                yield return new Lettering(Role.Note, text, slit.Tip + new Vec2(anchor == Anchor.Left ? height : anchor == Anchor.Right ? -height : 0, side * height), height, 0, anchor);
    }

    // Of a piece that has sides front runs left to right and rear too; left and right run front to rear. Other edges run either way: a step aside tells.
    private static Vec2 Inward(PanelDevelopment panel, BlankEdge edge, CutOutline net, Vec2 at, Vec2 along)
    {
        const double aside = 0.5;
        return (DrawingPlaces.HasSides(panel) ? edge.Name : "") switch
        {
            "front" or "right" => -along.Left,
            "rear" or "left" => along.Left,
            _ => net.Depth(at + aside * along.Left) >= net.Depth(at - aside * along.Left) ? along.Left : -along.Left,
        };
    }
}
