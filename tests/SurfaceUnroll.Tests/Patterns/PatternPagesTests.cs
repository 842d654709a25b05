using System.Collections.Immutable;
using System.Globalization;
using FsCheck.Xunit;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Tests.Drawings;

namespace SurfaceUnroll.Tests.Patterns;

public class PatternPagesTests
{
    [Theory]
    [InlineData(PaperOrientation.Portrait, 0)]
    [InlineData(PaperOrientation.Landscape, 0)]
    [InlineData(PaperOrientation.Portrait, 0.2)] // Askew, so that a sheet shifted either way breaks the line.
    [InlineData(PaperOrientation.Landscape, 0.2)]
    public void Taped_sheets_show_the_cut_line_whole_and_true(PaperOrientation orientation, double angle)
    {
        Development half = Samples.Turned(Samples.HalfCylinder(), angle);
        PaperSheet[] sheets = [.. Pages(half, PaperSpec.Default with { Orientation = orientation }).Skip(1).Select(PaperSheet.Of)];
        Assert.True(sheets.Length > 3);
        Vec2[] corners = TapedSheets.Lay(sheets, 1e-6);
        List<(Vec2 From, Vec2 To)> taped = TapedSheets.Segments(sheets, corners, PaperSheet.WideLine);

        // The drawing is laid over the taped sheets by the lower left corner of both.
        ImmutableArray<Vec2> cut = half.Panels[0].Cut;
        Vec2 shift = Box.Around(taped.SelectMany(s => new[] { s.From, s.To })).Min - Box.Around(cut).Min;
        (Vec2, Vec2)[] drawn = [.. cut.Select((p, i) => (p + shift, cut[(i + 1) % cut.Length] + shift))];
        Assert.InRange(TapedSheets.FarthestFrom(drawn, taped), 0, 1e-6);
        Assert.InRange(TapedSheets.FarthestFrom(taped, drawn), 0, 1e-6);
    }

    [Fact]
    public void Tape_shows_between_the_far_marks_what_the_first_page_says()
    {
        ImmutableArray<Page> pages = Pages(Samples.HalfCylinder(), PaperSpec.Default);
        PaperSheet[] sheets = [.. pages.Skip(1).Select(PaperSheet.Of)];
        Vec2[] corners = TapedSheets.Lay(sheets, 1e-6);
        Vec2 Ring(string letter)
        {
            // The middle of the ring of 36 points beside the letter.
            (PaperSheet sheet, int i) = sheets.Select((s, i) => (s, i)).First(x => x.s.Words.Any(w => w.Text == letter));
            PaperWord word = sheet.Words.First(w => w.Text == letter);
            PaperLine ring = sheet.Lines.Single(l => l.Points.Count == 37 && (l.Points[0] - word.At).Length < 5);
            return corners[i] + (1.0 / 36) * ring.Points.Take(36).Aggregate(Vec2.Zero, (a, b) => a + b);
        }
        string told = Assert.Single(pages[0].Texts, t => t.Text.StartsWith("Tape from P to Q: ", StringComparison.Ordinal)).Text;
        double mm = double.Parse(told["Tape from P to Q: ".Length..^" mm".Length], CultureInfo.InvariantCulture);
        // Told to a tenth of a millimetre.
        Assert.InRange((Ring("Q") - Ring("P")).Length - mm, -0.0501, 0.0501);
    }

    [Theory]
    [InlineData(150, 100)]
    [InlineData(150, 180)] // A tenth down an element line of this length stands its label.
    [InlineData(150, 400)]
    public void Far_marks_stand_clear_of_words_and_of_the_cut_line(double radius, double length)
    {
        ImmutableArray<Page> pages = Pages(Samples.HalfCylinder(radius, length), PaperSpec.Default);
        Assert.True(pages.Length > 2);
        PageLine[] rings = [.. pages.Skip(1).SelectMany(p => p.Lines).Where(l => l.Points.Length == 36)];
        Assert.True(rings.Length >= 2, "There are no far marks.");
        foreach (Page page in pages.Skip(1))
        {
            foreach (Box ring in page.Lines.Where(l => l.Points.Length == 36).Select(l => Box.Around(l.Points)))
            {
                Assert.All(page.Texts.Where(t => t.Halo), t => Assert.False(Meet(ring, TextOutline.Of(t).Bounds.Grow(0.2 * t.Height)), $"“{t.Text}” hides a far mark"));
                Assert.All(page.Lines.Where(l => l.Pen == Pen.Wide), l => Assert.Empty(Clip.Line(l.Points, l.Closed, ring)));
            }
        }
    }

    [Fact]
    public void Piece_on_one_sheet_needs_no_far_marks()
    {
        ImmutableArray<Page> pages = Pages(Samples.HalfCylinder(40, 60), PaperSpec.Default);
        Assert.Equal(2, pages.Length);
        Assert.DoesNotContain(pages[1].Texts, t => t.Text is "P" or "Q");
        Assert.Contains(pages[0].Texts, t => t.Text.Contains("check the bars", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_tile_says_which_it_is_and_what_of()
    {
        ImmutableArray<Page> pages = Pages(Samples.HalfCylinder(), PaperSpec.Default);
        string[] labels = ["1.1", "1.2", "1.3", "2.1", "2.2", "2.3"];
        Assert.Equal(labels.Length + 1, pages.Length);
        for (int i = 1; i < pages.Length; i++)
        {
            string[] texts = [.. pages[i].Texts.Select(t => t.Text)];
            Assert.Single(texts, labels[i - 1]);
            Assert.Single(texts, $"Page {i + 1} of {pages.Length}   OUTSIDE FACE UP");
            Assert.Single(texts, "Cover – Half cylinder");
            // The words of the piece itself may say the sheet too.
            Assert.Contains("mild steel 0.9 mm", texts);
            Assert.Equal(2, texts.Count(t => t == "100 mm"));
            Assert.Equal(2, texts.Count(t => t == "4 in"));
            Assert.Single(pages[i].Fills);
        }
        Assert.All(labels, label => Assert.Single(pages[0].Texts, t => t.Text == label));
    }

    [Fact]
    public void White_behind_words_never_hides_the_cut_line()
    {
        foreach (Page page in new[] { (4.0, 20.0), (40, 60), (150, 400) }.SelectMany(s => Pages(Samples.HalfCylinder(s.Item1, s.Item2), PaperSpec.Default).Skip(1)))
        {
            (Vec2 A, Vec2 B)[] cut = [.. page.Lines.Where(l => l.Pen == Pen.Wide).SelectMany(l => l.Points.Skip(1).Select((p, i) => (l.Points[i], p)))];
            // The white is a fifth of the letters' height wider than they are, and the line 0.35 mm on either side of its middle.
            foreach (PageText text in page.Texts.Where(t => t.Halo))
            {
                Box white = TextOutline.Of(text).Bounds.Grow(0.2 * text.Height + 0.35);
                Assert.All(cut, s => Assert.Empty(Clip.Line([s.A, s.B], false, white)));
            }
        }
    }

    [Fact]
    public void Cost_is_linear_in_tiles()
    {
        // Lines per printed tile of a piece of some 80 tiles against one of some 900.
        ImmutableArray<Page> small = Pages(Samples.HalfCylinder(500, 2000), PaperSpec.Default), large = Pages(Samples.HalfCylinder(3180, 10_000), PaperSpec.Default);
        Assert.InRange(large.Length, 10 * small.Length / 2, 20 * small.Length);
        Assert.True(LinesPerTile(large) <= 1.2 * LinesPerTile(small), $"{LinesPerTile(small)} lines on a tile have become {LinesPerTile(large)}.");
    }

    private static double LinesPerTile(ImmutableArray<Page> pages) => pages.Skip(1).Average(p => p.Lines.Length);

    [Property(MaxTest = 60)]
    public void Any_piece_on_any_paper_is_covered_and_stays_in_the_printable_area(byte size, byte slender, byte paper, byte margin, byte overlap)
    {
        // 10 mm to 10 m long, from a tenth as wide to as wide; margins and overlaps as far as a job may ask for them.
        double length = 10 * Math.Pow(1000, size / 255.0), radius = length * (0.1 + 0.9 * slender / 255) / Math.PI;
        PaperSize[] papers = [.. PaperSize.Named.Where(s => s.Width >= CheckBars.RoomForShort), PaperSize.Roll(420), PaperSize.Roll(914), PaperSize.Own(137, 911)];
        PaperSize sheet = papers[paper / 3 % papers.Length];
        double edge = margin / 255.0 * (sheet.Width - CheckBars.RoomForShort) / 2, over = overlap / 256.0 * (sheet.IsRoll ? CheckBars.RoomForShort : sheet.Width - 2 * edge) / 3;
        var spec = new PaperSpec(sheet, edge, over, (PaperOrientation)(paper % 3)) { Turn = overlap % 2 == 0 ? null : 0 };
        Assert.Null(PaperRoom.Fault(spec, mm => $"{mm}"));
        // So many sheets of the smallest paper would be no test but a wait.
        length = Math.Min(length, 30 * sheet.Width);
        radius = Math.Min(radius, 10 * sheet.Width);
        Development half = Samples.HalfCylinder(radius, length);
        Drawing drawing = PatternDrawing.Of(half.Panels[0], half.Job, []);
        TilePlan plan = TileLayout.Plan(drawing, spec);
        Covers(plan, plan.Drawing);
        ImmutableArray<Page> pages = Pages(half, spec);
        int printed = plan.Printed.Count();
        // Where the first page has no room for words they have pages of their own at the end.
        Assert.True(pages.Length > printed);
        Assert.All(pages, page => StaysIn(page, edge));
        pages = pages[..(printed + 1)];
        TapesUp(plan, pages, over);
        Box window = TileLayout.WindowOnPaper(plan);
        Assert.All(pages.Skip(1), page => KeepsMarksOffTheWindow(page, window));
    }

    // Laid together by their letters alone the sheets show the cut line whole.
    private static void TapesUp(TilePlan plan, ImmutableArray<Page> pages, double overlap)
    {
        PaperSheet[] sheets = [.. pages.Skip(1).Select(PaperSheet.Of)];
        // A narrower overlap cuts the arms of its crosses, by which the test finds them.
        if (overlap < 7 || sheets.Length > 60) return;
        List<(Vec2 From, Vec2 To)> taped = TapedSheets.Segments(sheets, TapedSheets.Lay(sheets, 1e-6), PaperSheet.WideLine);
        ImmutableArray<Vec2> cut = plan.Drawing.Strokes.First(s => s.Role == Role.Cut).Points;
        Vec2 shift = Box.Around(taped.SelectMany(s => new[] { s.From, s.To })).Min - Box.Around(cut).Min;
        // A place on every segment is enough: what is missing of a straight one would be missed at a sheet's edge.
        (Vec2, Vec2)[] drawn = [.. cut.Select(p => (p + shift, p + shift))];
        Assert.InRange(TapedSheets.FarthestFrom(drawn, taped), 0, 0.02);
        double length = cut.Select((p, i) => (cut[(i + 1) % cut.Length] - p).Length).Sum(), shown = taped.Sum(s => (s.To - s.From).Length);
        Assert.True(shown >= length - 1e-6 * length, $"Of {length} mm of cut line {shown} are shown.");
    }

    // The parts of each stroke in all windows, overlaps counted once, are as long as the stroke.
    private static void Covers(TilePlan plan, Drawing drawing)
    {
        Box[] windows = [.. plan.Printed.Select(t => t.Window)];
        foreach (Stroke stroke in drawing.Strokes)
        {
            for (int i = stroke.Closed ? 0 : 1; i < stroke.Points.Length; i++)
            {
                Vec2 a = stroke.Points[(i + stroke.Points.Length - 1) % stroke.Points.Length], b = stroke.Points[i];
                for (double t = 0; t <= 1; t += 0.0625) Assert.Contains(windows, w => Holds(w, Vec2.Lerp(a, b, t)));
            }
        }
    }

    private static void StaysIn(Page page, double margin)
    {
        Box area = new Box(Vec2.Zero, new Vec2(page.Width, page.Height)).Grow(-margin);
        IEnumerable<Vec2> places =
        [
            .. page.Lines.SelectMany(l => l.Points), .. page.Fills.SelectMany(f => f.Points), .. page.Texts.SelectMany(t => TextOutline.Of(t).Corners),
        ];
        // Lines on the very border may have been moved by rounding.
        area = area.Grow(1e-6);
        Assert.All(page.Texts, t => Assert.True(TextOutline.Of(t).Corners.All(area.Contains), $"“{t.Text}” at {t.At}, {t.Height} mm high, in {area.Min} to {area.Max}"));
        Assert.All(places, p => Assert.True(area.Contains(p), $"{p} in {area.Min} to {area.Max}"));
    }

    private static void KeepsMarksOffTheWindow(Page page, Box window)
    {
        PageText[] outside = [.. page.Texts.Where(t => !Holds(window, t.At))];
        TextOutline[] boxes = [.. outside.Select(TextOutline.Of)];
        // Label, piece, sheet, page number and the labels of four bars.
        Assert.True(boxes.Length >= 8);
        for (int i = 0; i < boxes.Length; i++)
        {
            Assert.True(boxes[i].Bounds.Max.Y <= window.Min.Y || boxes[i].Bounds.Max.X <= window.Min.X, $"“{outside[i].Text}” stands on the pattern");
            for (int j = 0; j < i; j++) Assert.False(boxes[i].Overlaps(boxes[j]), $"“{outside[i].Text}” runs into “{outside[j].Text}”");
        }
    }

    private static bool Meet(Box a, Box b) => a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y;

    private static bool Holds(Box box, Vec2 p) => p.X >= box.Min.X - 1e-9 && p.X <= box.Max.X + 1e-9 && p.Y >= box.Min.Y - 1e-9 && p.Y <= box.Max.Y + 1e-9;

    private static ImmutableArray<Page> Pages(Development development, PaperSpec paper) =>
        PatternPages.Of(development.Panels[0], development.Job with { Paper = paper });
}
