using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns;

/// <summary>The pages of a pattern: the assembly plan, the tiles at true scale, then stretch and shrink, bends and joints where there is more to say of them.</summary>
public static class PatternPages
{
    // A far mark and its ring stay this clear of the cut line and of words, mm.
    private const double TapeMarkRoom = 5;

    // How far down an element line a far mark may stand.
    private static readonly ImmutableArray<double> TapeMarkShares = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

    /// <summary>All pages of one panel.</summary>
    public static ImmutableArray<Page> Of(PanelDevelopment panel, Job job) => Of(panel, job, PatternDrawing.Of(panel, job, []), StrainSheet(panel, job), []);

    /// <summary>All pages of one panel whose drawing and strain page are at hand.</summary>
    /// <param name="panel">The developed panel.</param>
    /// <param name="job">For names, material, units and paper.</param>
    /// <param name="drawing">What <see cref="PatternDrawing.Of"/> gives for both.</param>
    /// <param name="strain">What <see cref="StrainSheet"/> gives for both.</param>
    /// <param name="joints">All joints of the job.</param>
    public static ImmutableArray<Page> Of(PanelDevelopment panel, Job job, Drawing drawing, Page? strain, ImmutableArray<JointFit> joints)
    {
        TilePlan plan = TileLayout.Plan(drawing, job.Paper);
        var words = new TileWords(panel.Spec.Name, job.Name, PatternDrawing.SheetText(job));
        ImmutableArray<OverlapMark> marks = TapeMarks(panel, drawing, plan);
        Tile[] printed = [.. plan.Printed];
        string tape = TapeText(marks, plan, job.Units);
        ImmutableArray<JointFit> own = JointWords.Of(panel, joints);
        ImmutableArray<(string, string)> facts = Facts(panel, job, plan), fitting = DrawingFacts.Of(panel, own, job);
        ImmutableArray<string> cautions = ShopCautions.Of(panel, own), others = ShopCautions.Beside(panel, own);
        // On the first page, or where that has no room on pages of their own.
        bool apart = fitting.Length + others.Length > 0 && !AssemblyPage.Holds(plan, tape, [.. facts, .. fitting], cautions, words);
        ImmutableArray<(string, string)> first = apart ? [.. facts, DrawingFacts.Summary(panel, own)] : [.. facts, .. fitting];
        return
        [
            AssemblyPage.Draw(drawing, plan, marks, tape, first, apart ? ShopCautions.Always : cautions, words),
            .. printed.Select((tile, i) => TilePage.Draw(drawing, plan, tile, (i + 2, printed.Length + 1), marks, words)),
            .. strain is null ? [] : new[] { strain },
            .. apart ? FittingPages.Draw(plan, fitting, others, words) : [],
        ];
    }

    /// <summary>The page that shows where the metal is stretched and shrunk; null if the sheet only bends.</summary>
    public static Page? StrainSheet(PanelDevelopment panel, Job job) => panel.DrawnMap is { } map
        ? StrainPage.Of(panel.Spec.Name, panel.Mesh, map, panel.Edges, panel.Elements, panel.Cut, job)
        : null;

    private static string TapeText(ImmutableArray<OverlapMark> marks, TilePlan plan, LengthUnit units)
    {
        if (marks.Length == 2) return $"Tape from P to Q: {ShopLength.Print((marks[1].At - marks[0].At).Length, units)}";
        return plan.Printed.Count() == 1 ? "The piece fits one sheet: check the bars." : "Check the edge lengths with a tape.";
    }

    // The two places farthest apart among some on the element lines, each whole on some tile, clear of the drawing's words, and clear of the cut line
    // where the piece is wide enough for that. A piece on one sheet needs none.
    private static ImmutableArray<OverlapMark> TapeMarks(PanelDevelopment panel, Drawing drawing, TilePlan plan)
    {
        if (plan.Printed.Count() < 2) return [];
        CutOutline outline = CutOutline.Of(panel);
        Box[] words = [.. drawing.Letterings.Select(text => TextOutline.Of(text).Bounds.Grow(TapeMarkRoom))];
        ImmutableArray<Vec2>[] lines = [.. drawing.Strokes.Where(s => s.Role is Role.Bend or Role.Net || (s.Role == Role.Mark && !panel.Marks.IsEmpty)).Select(s => s.Points)];
        (Vec2 At, double Depth)[] places =
        [
            .. TapePlaces(panel).Where(p => !lines.Any(line => DrawingPlaces.Distance(p, line) < TapeMarkRoom)).Where(p => plan.Printed.Any(t => t.Window.Grow(-6).Surrounds(p)) && !words.Any(w => w.Surrounds(p)))
                .Select(p => (p, outline.Depth(p))),
        ];
        ImmutableArray<OverlapMark> clear = Farthest([.. places.Where(p => p.Depth > TapeMarkRoom).Select(p => p.At)]);
        return clear.IsEmpty ? Farthest([.. places.Select(p => p.At)]) : clear;
    }

    // On element lines; all over a flat plate, which has none.
    private static IEnumerable<Vec2> TapePlaces(PanelDevelopment panel)
    {
        if (panel.Spec.Kind == "flat") return DrawingPlaces.AllOver(panel);
        return panel.Elements.Where(e => e.Number > 0 && e.Length > 0).SelectMany(e => TapeMarkShares.Select(share => Vec2.Lerp(e.Front, e.Rear, share)));
    }

    private static ImmutableArray<OverlapMark> Farthest(Vec2[] places)
    {
        (Vec2 P, Vec2 Q) far = (default, default);
        foreach (Vec2 p in places)
        {
            foreach (Vec2 q in places)
            {
                // The margin keeps the choice from turning on rounding between mirrored pairs.
                if ((q - p).Length > (far.Q - far.P).Length + 1e-6) far = (p, q);
            }
        }
        return far.P == far.Q ? [] : [new OverlapMark(far.P, "P"), new OverlapMark(far.Q, "Q")];
    }

    private static ImmutableArray<(string Name, string Value)> Facts(PanelDevelopment panel, Job job, TilePlan plan)
    {
        Box box = Box.Around(panel.Cut);
        string Size(double mm) => ShopLength.Print(mm, job.Units);
        ElementLine[] bent = [.. panel.Elements.Where(e => e.Number > 0 && double.IsFinite(e.BendRadiusFront) && Math.Max(e.BendRadiusFront, e.BendRadiusRear) > 0)];
        int printed = plan.Printed.Count(), empty = plan.Tiles.Length - printed;
        return
        [
            ("Verdict", VerdictText(panel)),
            .. panel.Spec.Loft.Length != 2 ? [] : new[]
            {
                ("Twist along lines", $"{Degrees(panel.Twist.Max)} at most, {Degrees(panel.Twist.Mean)} on average"),
                ("Evenly spaced", $"{Degrees(panel.EvenTwist.Max)} at most, {Degrees(panel.EvenTwist.Mean)} on average"),
            },
            ("Blank", $"{Size(box.Width)} × {Size(box.Height)}"),
            ("Net area", AreaWords.Of(panel.FlatArea, job.Units)),
            .. panel.Edges.Zip(EdgeWords.Names(panel), (e, name) => ($"Edge {name}", e.FlatLength > 0 ? Size(e.FlatLength) : "none: the curves meet")),
            .. panel.Elements.IsEmpty ? [] : new[] { (panel.Spec.Kind == "bent" ? "Tightest roll" : "Tightest bend", bent.Length == 0 ? "flat" : Size(bent.Min(e => Math.Max(e.BendRadiusFront, e.BendRadiusRear))) + " radius") },
            ("Paper", $"{plan.Paper.Size.Name}, {(plan.IsLandscape ? "landscape" : "portrait")}"),
            ("Sheets", empty == 0 ? Number(printed) : $"{Number(printed)} ({Number(empty)} left out: nothing on them)"),
        ];
    }

    private static string VerdictText(PanelDevelopment panel) => panel.Verdict switch
    {
        Verdict.BendsOnly => "bends only",
        Verdict.NeedsStretching => StrainText(panel.JudgedStrain),
        _ => $"past the limit: {StrainText(panel.JudgedStrain)}",
    };

    private static string StrainText(StrainSummary strain) => $"stretch {Percent(strain.MaxStretch)}, shrink {Percent(strain.MaxShrink)}";

    private static string Degrees(double radians) => (radians * 180 / Math.PI).ToString("0.00", CultureInfo.InvariantCulture) + "°";

    private static string Percent(double fraction) => (100 * fraction).ToString("0.0", CultureInfo.InvariantCulture) + " %";

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
}
