using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.Preview;

/// <summary>Writes a picture of all sheets of the stock with the pieces nested on them, at one scale. For looking at, not for measuring.</summary>
public static class NestSvg
{
    private const double Width = 960, Side = 34, Top = 56, Heading = 30, Between = 26, Row = 18, Tallest = 620;

    // Sizes of words, how wide a letter is on the average, as a share of that, and the height of both lines with an arrow.
    private const double NameSize = 12, SizeSize = 10, LetterWidth = 0.58, LabelHeight = 44;

    /// <summary>The file.</summary>
    /// <returns>UTF-8, lines ended by a line feed.</returns>
    public static byte[] Write(Development development, NestLayout nest)
    {
        double room = Width - 2 * Side;
        double scale = Math.Min(room / nest.Sheets.Max(s => s.Stock.Length), Tallest / nest.Sheets.Max(s => s.Stock.Width));
        Label[] labels = [.. nest.Sheets.SelectMany((s, i) => s.Placements.Select(p => Label.Of(development, p, i, scale)))];
        string[] list = [.. labels.Where(l => !l.Fits).Select(l => $"{l.Number}: {l.Name}, {l.Size}"), .. nest.TooLarge.Select(i => $"Too large for the stock: {development.Panels[i].Spec.Name}")];
        double sheets = nest.Sheets.Sum(s => Heading + scale * s.Stock.Width + Between);
        var canvas = new PreviewCanvas(Width, Math.Ceiling(Top + sheets + Row * list.Length + (list.Length > 0 ? Row : 0)), $"Nesting – {development.Job.Name}");
        canvas.Text(new Vec2(Side, 30), NestWords.Summary(nest, development.Job.Units), 17, Palette.Ink, "start", bold: true);
        canvas.Text(new Vec2(Side, 50), $"{development.Job.Name}; outside face up", 13, Palette.Faint, "start");
        double top = Top;
        for (int i = 0; i < nest.Sheets.Length; i++)
        {
            NestedSheet sheet = nest.Sheets[i];
            canvas.Text(new Vec2(Side, top + 22), string.Create(CultureInfo.InvariantCulture, $"Sheet {i + 1}: {NestWords.Size(sheet.Stock, development.Job.Units)}, {NestWords.Use(sheet.Use)}"), 13, Palette.Ink, "start");
            top += Heading;
            DrawSheet(canvas, development, sheet, [.. labels.Where(l => l.Sheet == i)], new PictureFrame(Vec2.Zero, new Vec2(Side, top + scale * sheet.Stock.Width), scale));
            top += scale * sheet.Stock.Width + Between;
        }
        for (int i = 0; i < list.Length; i++) canvas.Text(new Vec2(Side, top + Row * (i + 0.5)), list[i], 13, Palette.Ink, "start");
        return canvas.ToBytes();
    }

    private static void DrawSheet(PreviewCanvas canvas, Development development, NestedSheet sheet, Label[] labels, PictureFrame frame)
    {
        (double length, double width) = (sheet.Stock.Length, sheet.Stock.Width);
        canvas.Begin("sheet");
        canvas.Outline([.. new[] { Vec2.Zero, new Vec2(length, 0), new Vec2(length, width), new Vec2(0, width) }.Select(frame.Place)], "#ffffff", Palette.Ink, 1);
        foreach (NestPlacement placement in sheet.Placements)
        {
            PanelDevelopment panel = development.Panels[placement.Panel];
            canvas.Outline([.. panel.Cut.Select(placement.Place).Select(frame.Place)], Palette.Blank, Palette.Cut, 1.4);
            foreach (ImmutableArray<Vec2> hole in Holes(panel)) canvas.Outline([.. hole.Select(placement.Place).Select(frame.Place)], "#ffffff", Palette.Cut, 1);
            if (panel.Plan is { Grain: { Matters: true } grain }) DrawGrain(canvas, panel, placement, grain, labels.First(l => l.Placement == placement), frame);
        }
        canvas.End();
        DrawGrainOfSheet(canvas, sheet, frame);
        foreach (Label label in labels)
        {
            Vec2 at = frame.Place(label.Place.Centre);
            canvas.Text(at + new Vec2(0, label.Fits ? -2 : 4), label.Fits ? label.Name : label.Number, label.Fits ? NameSize : SizeSize, Palette.Ink, "middle");
            if (label.Fits) canvas.Text(at + new Vec2(0, SizeSize + 1), label.Size, SizeSize, Palette.Ink, "middle");
        }
    }

    // The grain of the sheet beside its heading, at the right end.
    private static void DrawGrainOfSheet(PreviewCanvas canvas, NestedSheet sheet, PictureFrame frame)
    {
        const double half = 22, up = 11;
        Vec2 corner = frame.Place(new Vec2(sheet.Stock.Length, sheet.Stock.Width)), middle = corner + new Vec2(-half, -up - 2);
        Vec2 along = sheet.Stock.GrainAcross ? new Vec2(0, up) : new Vec2(half, 0);
        canvas.Begin("grain");
        Arrow(canvas, middle - along, middle + along);
        canvas.End();
        canvas.Text(middle + new Vec2(-half - 6, 4), "grain", 11, Palette.Ink, "end");
    }

    // On a piece below its words.
    private static void DrawGrain(PreviewCanvas canvas, PanelDevelopment panel, NestPlacement placement, GrainAdvice grain, Label label, PictureFrame frame)
    {
        Vec2 along = (label.Fits ? 18 : 8) / frame.Scale * grain.Along.Rotate(placement.Turn), middle = label.Place.Centre;
        // Beside the words: below them where the arrow lies, to their right where it stands.
        middle += Math.Abs(along.X) > Math.Abs(along.Y) ? new Vec2(0, -(label.Fits ? 19 : 9) / frame.Scale) : new Vec2((label.Fits ? 0.5 * label.Wide + 6 : 9) / frame.Scale, 0);
        Arrow(canvas, frame.Place(middle - along), frame.Place(middle + along));
    }

    // The grain has no sense: a head at both ends.
    private static void Arrow(PreviewCanvas canvas, Vec2 from, Vec2 to)
    {
        const double head = 5;
        Vec2 way = head * (to - from).Unit;
        canvas.Line([from, to], Palette.Ink, 1);
        foreach ((Vec2 tip, Vec2 back) in new[] { (to, -way), (from, way) }) canvas.Line([tip + back.Rotate(0.45), tip, tip + back.Rotate(-0.45)], Palette.Ink, 1);
    }

    private static IEnumerable<ImmutableArray<Vec2>> Holes(PanelDevelopment panel) => panel.Openings.Select(o => o.Cut).Concat(panel.InnerCuts);

    /// <summary>Words of a piece. Where they have no room its number stands there, and the words in a list.</summary>
    private sealed record Label(NestPlacement Placement, int Sheet, LabelPlace Place, string Name, string Size, string Number, double Wide)
    {
        public bool Fits => Place.Fits;

        public static Label Of(Development development, NestPlacement placement, int sheet, double scale)
        {
            PanelDevelopment panel = development.Panels[placement.Panel];
            LengthUnit units = development.Job.Units;
            Box blank = Box.Around(panel.Cut);
            string size = $"{ShopLength.PrintNumber(blank.Width, units)} × {ShopLength.Print(blank.Height, units)}";
            double wide = LetterWidth * Math.Max(NameSize * panel.Spec.Name.Length, SizeSize * size.Length);
            LabelPlace place = LabelPlace.Of([.. panel.Cut.Select(placement.Place)], Holes(panel).Select(h => (ImmutableArray<Vec2>)[.. h.Select(placement.Place)]), wide / scale, LabelHeight / scale);
            return new Label(placement, sheet, place, panel.Spec.Name, size, (placement.Panel + 1).ToString(CultureInfo.InvariantCulture), wide);
        }
    }
}
