using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>The map itself: colours, lines, ticks, worst places and names on the blank, fitted to a box.</summary>
internal static class StrainPicture
{
    /// <summary>Length of the arrows at the ends of a tick, mm.</summary>
    public const double TickMark = 0.9;

    // Round the blank, for the names of its edges, mm.
    private const double Rim = 6;

    // Cap heights, mm.
    private const double NameHeight = 2.2, LevelHeight = 1.9, NumberHeight = 3;

    // A tick shorter than this is a dot, mm; half the size of the cross at a worst place, mm.
    private const double ShortestTick = 1, Cross = 1.6;

    // Where a number may stand round its cross: farther and farther off, first in the corners; where a name may stand off and along its edge, mm and part.
    private static readonly ImmutableArray<double> Rings = [1, 1.6, 2.4], Depths = [2.2, 3, 4, 5], Shares = [0.5, 0.4, 0.6, 0.3, 0.7];
    private static readonly ImmutableArray<int> Turns = [1, 3, 7, 5, 2, 6, 0, 4];

    /// <summary>Millimetres on the page to one of the blank, rounded so that it can be said.</summary>
    public static double ScaleIn(Box room, SheetMesh mesh, ImmutableArray<Vec2> cut)
    {
        Box all = Around(mesh, cut);
        double fit = Math.Min((room.Width - 2 * Rim) / all.Width, (room.Height - 2 * Rim) / all.Height);
        if (fit >= 1) return Math.Floor(10 * fit) / 10;
        double part = 1 / fit, unit = Math.Pow(10, Math.Floor(Math.Log10(part)) - 1);
        return 1 / (Math.Ceiling(part / unit) * unit);
    }

    /// <summary>A scale in words: <c>1 : 3.7</c>.</summary>
    public static string ScaleText(double scale) =>
        scale >= 1 ? string.Create(CultureInfo.InvariantCulture, $"{scale:0.##} : 1") : string.Create(CultureInfo.InvariantCulture, $"1 : {1 / scale:0.##}");

    /// <summary>Length on the page of a tick of the worst strain, mm; 0 if there are none.</summary>
    public static double LongestTick(Box room, SheetMesh mesh, StrainMap map, ImmutableArray<Vec2> cut)
    {
        (double stretch, double shrink) = StrainLevels.Largest(map);
        StrainTick? any = StrainTicks.Of(mesh, map, cut).Cast<StrainTick?>().FirstOrDefault();
        return any is { } tick ? ScaleIn(room, mesh, cut) * (tick.To - tick.From).Length * Math.Max(stretch, shrink) / tick.Size : 0;
    }

    /// <summary>Draws the map.</summary>
    public static IEnumerable<PagePart> Draw(
        Box room, SheetMesh mesh, StrainMap map, ImmutableArray<BlankEdge> edges, ImmutableArray<Vec2> cut, ImmutableArray<StrainSpot> spots)
    {
        Box all = Around(mesh, cut);
        double scale = ScaleIn(room, mesh, cut);
        Vec2 Place(Vec2 p) => room.Centre + scale * (p - all.Centre);
        ImmutableArray<Vec2> outline = [.. cut.Select(Place)];
        ImmutableArray<StrainContour> contours = [.. StrainContours.Of(mesh, map).Select(c => c with { Points = [.. c.Points.Select(Place)] })];

        // The words of most weight choose their places first.
        var words = new LetteringRoom(new CutOutline(outline));
        foreach (StrainSpot spot in spots) words.Reserve(Square(Place(spot.Flat), Cross + 0.4));
        foreach (StrainSpot spot in spots) Number(words, spot, Place(spot.Flat), room);
        foreach (BlankEdge edge in edges) Name(words, edge, [.. edge.Flat.Select(Place)], new CutOutline(outline), room);
        foreach (IEnumerable<Lettering> choices in StrainContours.LabelChoices(contours, LevelHeight))
        {
            // The next label keeps off this one by the white round both.
            if (words.TakeFirst(choices)) words.Reserve(Wider(TextOutline.Of(words.Taken[^1])));
        }
        return
        [
            .. StrainBands.Of(mesh, map, Place),
            .. contours.Select(c => new PageLine(c.Level < 0 ? Pen.FineDashed : Pen.Fine, c.Points, c.Closed)),
            .. StrainTicks.Of(mesh, map, cut).Select(t => t with { From = Place(t.From), To = Place(t.To) })
                .Where(t => (t.To - t.From).Length >= ShortestTick && !words.Covers(Strip(t)))
                .SelectMany(t => StrainTicks.Lines(t, TickMark)).Select(line => new PageLine(Pen.Fine, line)),
            new PageLine(Pen.Wide, outline, Closed: true),
            .. spots.SelectMany(s => Crossed(Place(s.Flat))),
            .. words.Taken.Select(t => new PageText(t.Text, t.At, t.Height, t.Angle, t.Anchor, Halo: true)),
        ];
    }

    private static Box Around(SheetMesh mesh, ImmutableArray<Vec2> cut) => Box.Around(cut.Concat(mesh.Flat));

    private static TextOutline Square(Vec2 at, double half) =>
        new([at + new Vec2(-half, -half), at + new Vec2(half, -half), at + new Vec2(half, half), at + new Vec2(-half, half)]);

    private static TextOutline Wider(TextOutline text)
    {
        Vec2 right = LevelHeight * (text.Corners[1] - text.Corners[0]).Unit, up = 0.8 * right.Left;
        return new TextOutline([text.Corners[0] - right - up, text.Corners[1] + right - up, text.Corners[2] + right + up, text.Corners[3] - right + up]);
    }

    private static TextOutline Strip(StrainTick tick)
    {
        Vec2 side = 0.6 * TickMark * (tick.To - tick.From).Unit.Left;
        return new TextOutline([tick.From - side, tick.To - side, tick.To + side, tick.From + side]);
    }

    private static IEnumerable<PageLine> Crossed(Vec2 at) =>
        new[] { new Vec2(Cross, 0), new Vec2(0, Cross) }.Select(arm => new PageLine(Pen.Narrow, [at - arm, at + arm]));

    // Beside its cross, inside the cut line if there is room, else outside.
    private static void Number(LetteringRoom words, StrainSpot spot, Vec2 at, Box room)
    {
        string number = spot.Number.ToString(CultureInfo.InvariantCulture);
        double half = 0.5 * PageTextWidth.Of(number, NumberHeight);
        Lettering[] choices =
        [
            .. from ring in Rings
               from turn in Turns
               let away = Vec2.FromAngle(turn * Math.PI / 4)
               let off = ring * new Vec2((Cross + 1.4 + half) * away.X, (Cross + 1.4 + 0.5 * NumberHeight) * away.Y)
               select new Lettering(Role.Note, number, at + off - new Vec2(0, 0.5 * NumberHeight), NumberHeight, Anchor: Anchor.Middle),
        ];
        if (!words.TakeFirst(choices)) words.TakeOutside(choices, room);
    }

    // Outside the cut line along the middle of the edge, or near it, or else inside.
    private static void Name(LetteringRoom words, BlankEdge edge, ImmutableArray<Vec2> line, CutOutline outline, Box room)
    {
        if (line.Length < 2 || edge.FlatLength <= 0) return;
        var run = new Polyline(line, false);
        IEnumerable<Lettering> Choices(int side) =>
            from depth in Depths
            from share in Shares
            let at = run.At(share * run.Length)
            let along = (run.At(share * run.Length + 1) - run.At(share * run.Length - 1)).Unit
            let inward = outline.Depth(at + 2 * along.Left) > outline.Depth(at - 2 * along.Left) ? along.Left : -along.Left
            let right = along.X < -1e-9 || (along.X <= 1e-9 && along.Y < 0) ? -along : along
            select new Lettering(
                Role.Note, edge.Name.ToUpperInvariant(), at + side * depth * inward - 0.5 * NameHeight * right.Left, NameHeight,
                Math.Atan2(right.Y, right.X), Anchor.Middle);
        if (!words.TakeOutside(Choices(-1), room)) words.TakeFirst(Choices(1));
    }
}
