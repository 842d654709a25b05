using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns.MovedEdges;

/// <summary>The page that shows an edge as measured against the edge as moved, the moves drawn larger than they are, and lists them at numbered places.</summary>
internal static class EdgeMovePage
{
    // Cap heights, and white between parts, mm.
    private const double Title = 5, Head = 3, Body = 2.2, Inset = 2, Break = 4, Gutter = 7;

    // The largest move is drawn about so long, mm.
    private const double Drawn = 10;

    private static readonly ImmutableArray<double> Scales = [1, 2, 5, 10, 20, 50, 100, 200, 500];

    /// <summary>Draws the page.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="fit">How its curve was moved.</param>
    /// <param name="job">For names, units and paper.</param>
    public static Page Of(PanelDevelopment panel, FreedomFit fit, Job job)
    {
        var sheet = PrintSheet.ForWords(job.Paper, level: false);
        Box area = sheet.Area.Grow(-Inset);
        var places = new EdgePlaces(fit);
        var heading = new TextColumn(area.Width);
        heading.Add($"{panel.Spec.Name}: {fit.Spec.Curve}, measured and moved", Title);
        heading.Add(job.Name, Head);
        foreach ((string name, string value) in FreedomWords.Rows(fit, panel.Verdict, panel.JudgedStrain, job.Units)) heading.AddNamed(name.Trim(), value, Body, 34);
        TextColumn[] table = [.. Table(places, job.Units, 0.5 * (area.Width - Gutter))];
        double top = area.Max.Y - heading.Height - Break, foot = area.Min.Y + table.Max(c => c.Height) + Break;
        return Page.Of(sheet.Width, sheet.Height,
        [
            .. heading.At(new Vec2(area.Min.X, area.Max.Y)),
            .. Picture(places, fit, new Box(new Vec2(area.Min.X, foot), new Vec2(area.Max.X, top))),
            .. table.SelectMany((column, i) => column.At(new Vec2(area.Min.X + i * (0.5 * area.Width + 0.5 * Gutter), foot - Break))),
        ]);
    }

    private static IEnumerable<TextColumn> Table(EdgePlaces places, LengthUnit units, double width)
    {
        int half = (places.Numbered.Length + 1) / 2;
        foreach (EdgePlace[] rows in places.Numbered.Chunk(Math.Max(half, 1)))
        {
            var column = new TextColumn(width);
            column.Add("Place: along the edge from its left end, move (+ outward)", Body);
            foreach (EdgePlace place in rows) column.Add($"{ShopLength.Print(place.Length, units)}:  {place.Words(units)}", Body, place.Number.ToString(CultureInfo.InvariantCulture), 8);
            yield return column;
        }
    }

    private static IEnumerable<PagePart> Picture(EdgePlaces places, FreedomFit fit, Box room)
    {
        var words = new TextColumn(room.Width);
        (Vec2 Was, Vec2 Is, double Move)[] all = [.. places.All];
        var box = Box.Around(all.Select(p => p.Was));
        // Room for the largest move and its number round the edge.
        Box inner = room.Grow(-1.8 * Drawn);
        double scale = Math.Min(inner.Width / Math.Max(box.Width, 1e-9), inner.Height / Math.Max(box.Height, 1e-9));
        double largest = Math.Abs(fit.Largest.Move) * scale;
        double times = Scales.Last(s => s == 1 || s * largest <= 1.2 * Drawn);
        Vec2 OnPage(Vec2 p) => inner.Centre + scale * (p - box.Centre);
        Vec2 Enlarged(Vec2 was, Vec2 now) => OnPage(was) + times * scale * (now - was);
        yield return new PageLine(Pen.Chain, [.. all.Select(p => OnPage(p.Was))]);
        yield return new PageLine(Pen.Wide, [.. all.Select(p => Enlarged(p.Was, p.Is))]);
        foreach (EdgePlace place in places.Numbered)
        {
            Vec2 from = OnPage(place.Was), to = Enlarged(place.Was, place.Is), way = (to - from).Unit;
            yield return new PageLine(Pen.Fine, [from, to]);
            yield return new PageText(place.Number.ToString(CultureInfo.InvariantCulture), to + 3.2 * way - new Vec2(0, 0.5 * Body), Body, 0, Anchor.Middle, Halo: true);
        }
        words.Add($"Chain line: as measured. Thick line: as moved, its moves drawn {times.ToString("0", CultureInfo.InvariantCulture)} times as large as the picture.", Body);
        foreach (PageText text in words.At(new Vec2(room.Min.X, room.Min.Y + words.Height))) yield return text;
    }
}
