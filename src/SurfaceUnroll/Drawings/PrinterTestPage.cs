using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>A page that shows how true a printer prints: two long bars at right angles, and two diagonals.</summary>
/// <param name="Width">Length of the level bar, mm.</param>
/// <param name="Height">Length of the upright bar, mm.</param>
public readonly record struct PrinterTestPage(double Width, double Height)
{
    // The bars end in whole centimetres; on each stands a tick at a length that any rule reaches, mm.
    private const double Step = 10;

    /// <summary>Length of the short measure on either bar, mm.</summary>
    public const double ShortBar = 100;

    // Room for the ticks and words around the bars, and for the instructions above them, mm.
    private const double Rim = 8, Words = 62, TextHeight = 2.3, HeadHeight = 4.5;

    /// <summary>The longest bars that a sheet has room for, standing upright. On paper too small for the short measure they are shorter than that.</summary>
    public static PrinterTestPage On(PaperSpec paper)
    {
        Box area = PrintSheet.ForWords(paper, false).Area;
        double Whole(double mm) => Step * Math.Floor(mm / Step);
        return new PrinterTestPage(Whole(area.Width - 2 * Rim), Whole(area.Height - 2 * Rim - (area.Height > 200 ? 0 : Words)));
    }

    /// <summary>Length of the diagonals, mm.</summary>
    public double Diagonal => new Vec2(Width, Height).Length;

    /// <summary>The page.</summary>
    /// <param name="paper">The same as for <see cref="On"/>.</param>
    public Page Draw(PaperSpec paper)
    {
        var sheet = PrintSheet.ForWords(paper, false);
        Vec2 foot = sheet.Area.Min + new Vec2(Rim, Rim), across = new(Width, 0), along = new(0, Height);
        PageText[] instructions = [.. Instructions(sheet, foot)];
        Box words = Box.Around(instructions.SelectMany(t => TextOutline.Of(t).Corners)).Grow(3);
        return Page.Of(
            sheet.Width, sheet.Height,
            [
                .. CheckBars.Bar(foot, across, Label("across", Width)), .. CheckBars.Bar(foot, along, Label("along", Height)),
                .. Tick(foot, across, Width), .. Tick(foot, along, Height),
                .. Corner(foot + across), .. Corner(foot + along), .. Corner(foot + across + along), .. Corner(foot),
                .. Outside(words, foot, foot + across + along), .. Outside(words, foot + along, foot + across),
                .. Name("up", foot + 0.8 * (across + along), Math.Atan2(Height, Width)), .. Name("down", foot + 0.8 * along + 0.2 * across, -Math.Atan2(Height, Width)),
                .. instructions,
            ]);
    }

    private static string Label(string name, double mm) => string.Create(CultureInfo.InvariantCulture, $"{name}: {mm:0} mm from end to end{(mm > ShortBar ? $", {ShortBar:0} mm to the tick" : "")}");

    private static IEnumerable<PagePart> Tick(Vec2 from, Vec2 span, double length)
    {
        if (length <= ShortBar) yield break;
        Vec2 at = from + ShortBar * span.Unit, half = 2.5 * span.Unit.Left;
        yield return new PageLine(Pen.Narrow, [at - half, at + half]);
    }

    private static IEnumerable<PagePart> Corner(Vec2 at) =>
        [new PageLine(Pen.Fine, [at - new Vec2(4, 0), at + new Vec2(4, 0)]), new PageLine(Pen.Fine, [at - new Vec2(0, 4), at + new Vec2(0, 4)])];

    private IEnumerable<PagePart> Name(string name, Vec2 at, double angle)
    {
        yield return new PageText(string.Create(CultureInfo.InvariantCulture, $"{name}: {Diagonal:0.0} mm"), at + new Vec2(0, 1).Rotate(angle), TextHeight, angle, Anchor.Middle, Halo: true);
    }

    // A diagonal does not run through the words.
    private static IEnumerable<PagePart> Outside(Box words, Vec2 a, Vec2 b)
    {
        if (Clip.Line([a, b], false, words) is not [var inside])
        {
            yield return new PageLine(Pen.Fine, [a, b]);
            yield break;
        }
        if ((inside[0] - a).Length > 0) yield return new PageLine(Pen.Fine, [a, inside[0]]);
        if ((b - inside[^1]).Length > 0) yield return new PageLine(Pen.Fine, [inside[^1], b]);
    }

    private IEnumerable<PageText> Instructions(PrintSheet sheet, Vec2 foot)
    {
        double left = foot.X + 10, width = Math.Max(40, Width - 20);
        var column = new TextColumn(width);
        column.Add("Printer test", HeadHeight);
        column.Skip(1);
        ImmutableArray<string> steps =
        [
            $"Print this page at 100 % (“actual size”) on {Size(sheet)}, standing upright.",
            "Measure both bars from tick to tick with a steel rule: from end to end if your rule is long enough, else to the tick at 100 mm. Read to a quarter of a millimetre.",
            "If you can, measure both diagonals too, from corner to corner: they show whether the printer prints square.",
            "Tell the program: surfaceunroll page-test --measured ACROSS ALONG [UP DOWN] --name \"shop printer\"",
            "From then on: surfaceunroll develop JOB.json --printer \"shop printer\"",
        ];
        for (int i = 0; i < steps.Length; i++) column.Add(steps[i], TextHeight, (i + 1).ToString(CultureInfo.InvariantCulture), indent: 5);
        double top = sheet.Area.Height > 200 ? foot.Y + 0.5 * Height + 0.5 * column.Height + 40 : sheet.Area.Max.Y - 1;
        return column.At(new Vec2(left, Math.Min(top, sheet.Area.Max.Y - 1)));

        static string Size(PrintSheet s) => string.Create(CultureInfo.InvariantCulture, $"paper of {s.Width:0.#} × {s.Height:0.#} mm");
    }
}
