using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>One sheet of paper that shows where a piece must be stretched and shrunk, and says what to do.</summary>
public static class StrainPage
{
    // Cap heights, mm.
    private const double Title = 5, Head = 3, Body = 2.2;

    // White between the edge of the printable area and the words, between columns, and between parts of a column, mm.
    private const double Inset = 2, Gutter = 7, Break = 2.5;

    // The least width and height that legend and table have room in, mm, and how much larger the page is laid out where it is less.
    private const double LeastRoom = 100, Larger = 1.5;

    // The part of the page that the map may not give up for words.
    private const double LeastPicture = 0.4;

    /// <summary>Draws the page, whichever way round the map comes out larger unless the job says how.</summary>
    /// <param name="name">Name of the panel.</param>
    /// <param name="mesh">Formed and flat places.</param>
    /// <param name="map">Strain at its vertices.</param>
    /// <param name="edges">Edges of the blank; may be empty.</param>
    /// <param name="elements">Element lines; may be empty.</param>
    /// <param name="cut">Closed cut line, mm.</param>
    /// <param name="job">For names, material, units and paper.</param>
    public static Page Of(
        string name, SheetMesh mesh, StrainMap map, ImmutableArray<BlankEdge> edges, ImmutableArray<ElementLine> elements, ImmutableArray<Vec2> cut, Job job)
    {
        // On small paper the page of larger paper, made smaller.
        PrintSheet own = PrintSheet.ForWords(job.Paper, false);
        if (Math.Min(own.Area.Width, own.Area.Height) < LeastRoom)
        {
            Page larger = Of(name, mesh, map, edges, elements, cut, job with { Paper = job.Paper.Enlarged(Larger) });
            return new PageScale(Larger, 0, 0, Larger).Undone(larger, larger.Width / Larger, larger.Height / Larger);
        }
        ImmutableArray<StrainSpot> spots = StrainSpots.Of(mesh, map, edges, elements, job.Units);
        ImmutableArray<string> sentences = FormingWords.Of(mesh, map, spots, job.Units);
        Layout portrait = Arrange(job, false, spots, sentences), landscape = Arrange(job, true, spots, sentences);
        bool level = job.Paper.Orientation switch
        {
            PaperOrientation.Portrait => false,
            PaperOrientation.Landscape => true,
            _ => StrainPicture.ScaleIn(landscape.Picture, mesh, cut) > StrainPicture.ScaleIn(portrait.Picture, mesh, cut),
        };
        Layout layout = level ? landscape : portrait;
        var heading = new TextColumn(layout.Area.Width);
        string scale = StrainPicture.ScaleText(StrainPicture.ScaleIn(layout.Picture, mesh, cut));
        heading.Add($"{name}: stretch and shrink", Title);
        heading.Add($"{job.Name}   {PatternDrawing.SheetText(job)}   OUTSIDE FACE UP", Head);
        heading.Add($"Scale {scale}, to look at and not to measure. Strain from the blank to the finished part, at the middle of the sheet.", Body);
        return Page.Of(
            layout.Width, layout.Height,
            [
                .. StrainPicture.Draw(layout.Picture, mesh, map, edges, cut, spots),
                .. StrainLegend.Draw(layout.Legend, map, StrainPicture.LongestTick(layout.Picture, mesh, map, cut)),
                .. heading.At(new Vec2(layout.Area.Min.X, layout.Area.Max.Y)),
                .. layout.Words,
            ]);
    }

    private sealed record Layout(double Width, double Height, Box Area, Box Picture, Box Legend, ImmutableArray<PagePart> Words);

    private static Layout Arrange(Job job, bool level, ImmutableArray<StrainSpot> spots, ImmutableArray<string> sentences)
    {
        var sheet = PrintSheet.ForWords(job.Paper, level);
        Box area = sheet.Area.Grow(-Inset);
        double top = area.Max.Y - HeadingHeight;
        Box map;
        ImmutableArray<PagePart> words = [];
        // Words at full size, or as much smaller as many of them or wide margins make them.
        foreach (double part in new[] { 1, 0.9, 0.8, 0.7, 0.6, 0.5 })
        {
            (words, double used) = level ? Beside(area, top, part, spots, sentences) : Below(area, part, spots, sentences);
            if (used <= (level ? top - area.Min.Y : (1 - LeastPicture) * (top - area.Min.Y))) break;
        }
        if (level) map = new Box(area.Min, new Vec2(area.Max.X - BesideWidth(area) - Gutter, top));
        else map = new Box(new Vec2(area.Min.X, words.OfType<PageText>().Max(t => t.At.Y + t.Height) + 2 * Break), new Vec2(area.Max.X, top));
        var legend = new Box(map.Min, new Vec2(map.Max.X, map.Min.Y + StrainLegend.Height));
        return new Layout(sheet.Width, sheet.Height, area, new Box(new Vec2(map.Min.X, legend.Max.Y + Break), map.Max), legend, words);
    }

    private static double HeadingHeight => 2.1 * (Title + Head + Body) + Break;

    private static double BesideWidth(Box area) => 0.4 * area.Width;

    // On a level page the words stand to the right of the map.
    private static (ImmutableArray<PagePart> Words, double Used) Beside(
        Box area, double top, double part, ImmutableArray<StrainSpot> spots, ImmutableArray<string> sentences)
    {
        double width = BesideWidth(area), left = area.Max.X - width;
        var table = new StrainTable(spots, width, part * Body, part * Head);
        TextColumn work = Work(new TextColumn(width), part, sentences), care = Care(new TextColumn(width), part);
        double below = top - table.Height - Break, foot = below - work.Height - Break;
        return ([.. table.At(new Vec2(left, top)), .. work.At(new Vec2(left, below)), .. care.At(new Vec2(left, foot))], top - foot + care.Height);
    }

    // On an upright page they take the foot: the table over the whole width, under it the work and the cautions side by side.
    private static (ImmutableArray<PagePart> Words, double Used) Below(
        Box area, double part, ImmutableArray<StrainSpot> spots, ImmutableArray<string> sentences)
    {
        double half = 0.5 * (area.Width - Gutter);
        var table = new StrainTable(spots, area.Width, part * Body, part * Head);
        TextColumn work = Work(new TextColumn(half), part, sentences), care = Care(new TextColumn(half), part);
        double words = Math.Max(work.Height, care.Height), foot = area.Min.Y + words, used = words + Break + table.Height;
        return (
            [
                .. table.At(new Vec2(area.Min.X, area.Min.Y + used)),
                .. work.At(new Vec2(area.Min.X, foot)),
                .. care.At(new Vec2(area.Min.X + half + Gutter, foot)),
            ],
            used);
    }

    private static TextColumn Work(TextColumn column, double part, ImmutableArray<string> sentences)
    {
        column.Add("What to do", part * Head);
        for (int i = 0; i < sentences.Length; i++)
            column.Add(sentences[i], part * Body, sentences.Length > 1 ? ((char)('a' + i)).ToString(CultureInfo.InvariantCulture) : "", indent: part * 4);
        return column;
    }

    private static TextColumn Care(TextColumn column, double part)
    {
        column.Add("Take care", part * Head);
        foreach (string caution in FormingWords.Cautions) column.Add(caution, part * Body, "–", indent: part * 4);
        return column;
    }
}
