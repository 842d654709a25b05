using System.Collections.Immutable;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.Preview;

/// <summary>Writes a picture of the formed sheet beside its flat pattern, both at one scale. For looking at, not for measuring.</summary>
public static class PreviewSvg
{
    private const double Width = 960, Half = Width / 2, Side = 34, Top = 64, Bottom = 34, MaxHeight = 430;

    /// <summary>The file.</summary>
    /// <returns>UTF-8, lines ended by a line feed.</returns>
    public static byte[] Write(PanelDevelopment panel, Job job)
    {
        Camera camera = Camera.For(panel.Mesh);
        ImmutableArray<FormedPicture.Shape> formed = FormedPicture.Of(panel, camera);
        Box formedBox = Box.Around(formed.SelectMany(s => s.Points)), flatBox = Box.Around(panel.Cut);
        double room = Half - 2 * Side;
        double scale = new[]
        {
            room / formedBox.Width, room / flatBox.Width, MaxHeight / formedBox.Height, MaxHeight / flatBox.Height,
        }.Min();
        double tallest = scale * Math.Max(formedBox.Height, flatBox.Height), height = Math.Ceiling(Top + 2 * Side + tallest + Bottom);
        double middle = Top + Side + tallest / 2;
        var canvas = new PreviewCanvas(Width, height, $"{panel.Spec.Name} – {job.Name}");
        WriteHeadings(canvas, panel, job);
        DrawFormed(canvas, formed, new PictureFrame(formedBox.Centre, new Vec2(Half / 2, middle), scale));
        LabelFormed(canvas, panel, camera, new PictureFrame(formedBox.Centre, new Vec2(Half / 2, middle), scale));
        DrawFlat(canvas, panel, new PictureFrame(flatBox.Centre, new Vec2(Half + Half / 2, middle), scale));
        return canvas.ToBytes();
    }

    private static void WriteHeadings(PreviewCanvas canvas, PanelDevelopment panel, Job job)
    {
        Box blank = Box.Around(panel.Cut);
        canvas.Text(new Vec2(Side, 30), panel.Spec.Name, 17, Palette.Ink, "start", bold: true);
        canvas.Text(new Vec2(Width - Side, 30), job.Name, 13, Palette.Faint, "end");
        canvas.Text(new Vec2(Half / 2, Top), $"Formed: {ReportJson.Words(panel.Verdict)}", 13, Palette.Ink, "middle");
        string size = $"{ShopLength.Print(blank.Width, job.Units)} × {ShopLength.Print(blank.Height, job.Units)}";
        canvas.Text(new Vec2(Half + Half / 2, Top), $"Flat, outside face up: {size}", 13, Palette.Ink, "middle");
    }

    private static void DrawFormed(PreviewCanvas canvas, ImmutableArray<FormedPicture.Shape> shapes, PictureFrame frame)
    {
        canvas.Begin("formed");
        foreach (FormedPicture.Shape shape in shapes)
        {
            ImmutableArray<Vec2> points = [.. shape.Points.Select(frame.Place)];
            if (shape.LineWidth > 0) canvas.Line(points, shape.Colour, shape.LineWidth);
            else canvas.Facet(points, shape.Colour);
        }
        canvas.End();
    }

    // The words stand off the sheet, on the side away from its middle.
    private static void LabelFormed(PreviewCanvas canvas, PanelDevelopment panel, Camera camera, PictureFrame frame)
    {
        if (panel.Elements.IsEmpty) return;
        ElementLine middle = panel.Elements[panel.Elements.Length / 2];
        Vec2 front = frame.Place(camera.Project(middle.FormedFront)), rear = frame.Place(camera.Project(middle.FormedRear));
        Vec2 away = (front - rear).Unit;
        (string near, string far) = EndNames(panel);
        canvas.Text(front + 16 * away + new Vec2(0, 4), near, 13, Palette.Ink, Facing(away));
        canvas.Text(rear - 16 * away + new Vec2(0, 4), far, 13, Palette.Ink, Facing(-away));
    }

    // The lines of a bent plate run from its left side to its right.
    private static (string First, string Last) EndNames(PanelDevelopment panel) => panel.Spec.Kind == "bent" ? ("left", "right") : ("front", "rear");

    private static string Facing(Vec2 direction) => direction.X switch { > 0.4 => "start", < -0.4 => "end", _ => "middle" };

    private static void DrawFlat(PreviewCanvas canvas, PanelDevelopment panel, PictureFrame frame)
    {
        canvas.Begin("flat");
        canvas.Outline([.. panel.Cut.Select(frame.Place)], Palette.Blank, Palette.Cut, 1.6);
        for (int i = 1; i + 1 < panel.Elements.Length; i++)
        {
            ElementLine line = panel.Elements[i];
            if (line.Number > 0) canvas.Line([.. line.Path.Select(frame.Place)], Palette.Element, 0.8, "7 2 1.5 2");
        }
        DrawFittings(canvas, panel, frame);
        canvas.End();
        if (panel.Elements.IsEmpty) return;
        NumberLines(canvas, panel, frame);
        ElementLine middle = panel.Elements[panel.Elements.Length / 2];
        (string first, string last) = EndNames(panel);
        Vec2 top = frame.Place(middle.Front), bottom = frame.Place(middle.Rear);
        canvas.Text(Clear(0.1, 0.2, 0.05, 0.3) + new Vec2(0, 4), first, 13, Palette.Ink, "middle");
        canvas.Text(Clear(0.9, 0.8, 0.95, 0.7) + new Vec2(0, 4), last, 13, Palette.Ink, "middle");

        // The first of some places on the middle line that lies clear of holes; the first of all if none does.
        Vec2 Clear(params double[] shares)
        {
            const double room = 18;
            Vec2[] places = [.. shares.Select(share => Vec2.Lerp(top, bottom, share))];
            Box[] holes = [.. panel.Openings.Select(o => Box.Around(o.Cut.Select(frame.Place)).Grow(room))];
            int clear = Array.FindIndex(places, p => !holes.Any(h => h.Contains(p)));
            return places[Math.Max(0, clear)];
        }
    }

    // Holes, bends and match marks.
    private static void DrawFittings(PreviewCanvas canvas, PanelDevelopment panel, PictureFrame frame)
    {
        const double tick = 6;
        foreach (ImmutableArray<Vec2> loop in panel.Openings.Select(o => o.Cut).Concat(panel.InnerCuts))
            canvas.Outline([.. loop.Select(frame.Place)], Palette.Paper, Palette.Cut, 1.2);
        foreach (BendLine bend in panel.Bends.Where(b => b.Centre.Length > 1)) canvas.Line([.. bend.Centre.Select(frame.Place)], Palette.Ink, 1, "5 2.5");
        foreach (MatchMark mark in panel.Marks)
        {
            // From the cut line, over what is left on there, to a little inside.
            canvas.Line([frame.Place(mark.Flat - panel.AllowanceAt(mark) * mark.Inward), frame.Place(mark.Flat) + tick * new Vec2(mark.Inward.X, -mark.Inward.Y)], Palette.Ink, 1);
        }
    }

    // Numbers stand off the front edge; where they would run into each other some are left out.
    private static void NumberLines(PreviewCanvas canvas, PanelDevelopment panel, PictureFrame frame)
    {
        const double spacing = 14, offset = 10;
        Vec2 last = new(double.NegativeInfinity, 0);
        for (int i = 0; i < panel.Elements.Length; i++)
        {
            ElementLine line = panel.Elements[i];
            if (line.Number == 0) continue;
            Vec2 before = panel.Elements[Math.Max(0, i - 1)].Front, after = panel.Elements[Math.Min(panel.Elements.Length - 1, i + 1)].Front;
            // Square to the front edge; off the end of a line that runs across; at the tip of a fan, where that is one point, along the line.
            Vec2 away = (after - before).Left.Unit;
            if (away == Vec2.Zero || panel.Spec.Kind == "bent") away = (line.Front - line.Rear).Unit;
            Vec2 place = frame.Place(line.Front) + offset * new Vec2(away.X, -away.Y);
            if ((place - last).Length < spacing) continue;
            canvas.Text(place + new Vec2(0, 3), $"{line.Number}", 9, Palette.Faint, "middle");
            last = place;
        }
    }
}
