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
    /// <summary>All pages of one panel.</summary>
    public static ImmutableArray<Page> Of(PanelDevelopment panel, Job job) => Of(panel, job, TileLayout.Plan(PatternDrawing.Of(panel, job, []), job.Paper), StrainSheet(panel, job), []);

    /// <summary>All pages of one panel whose drawing is laid over sheets and whose strain page is at hand.</summary>
    /// <param name="panel">The developed panel.</param>
    /// <param name="job">For names, material, units and paper.</param>
    /// <param name="plan">What <see cref="TileLayout.Plan"/> gives for its drawing and the job's paper.</param>
    /// <param name="strain">What <see cref="StrainSheet"/> gives for both.</param>
    /// <param name="joints">All joints of the job.</param>
    public static ImmutableArray<Page> Of(PanelDevelopment panel, Job job, TilePlan plan, Page? strain, ImmutableArray<JointFit> joints)
    {
        var words = new TileWords(panel.Spec.Name, job.Name, PatternDrawing.SheetText(job));
        ImmutableArray<OverlapMark> marks = FarMarks.Of(panel, plan);
        Tile[] printed = [.. plan.Printed];
        ImmutableArray<string> tape = TapeText(marks, plan, job.Units);
        ImmutableArray<JointFit> own = JointWords.Of(panel, joints);
        ImmutableArray<(string, string)> facts = Facts(panel, job, plan), fitting = DrawingFacts.Of(panel, own, job);
        ImmutableArray<string> cautions = ShopCautions.Of(panel, own), others = ShopCautions.Beside(panel, own);
        // On the first page, or where that has no room on pages of their own.
        bool apart = fitting.Length + others.Length > 0 && !AssemblyPage.Holds(plan, tape, [.. facts, .. fitting], cautions, words);
        ImmutableArray<(string, string)> first = apart ? [.. facts, DrawingFacts.Summary(panel, own)] : [.. facts, .. fitting];
        bool bare = AssemblyPage.IsBare(plan, tape, first, apart ? ShopCautions.Always : cautions, words);
        var sheet = PrintSheet.ForWords(job.Paper, plan.IsLandscape);
        return
        [
            AssemblyPage.Draw(plan, marks, tape, first, apart ? ShopCautions.Always : cautions, words),
            .. printed.Select((tile, i) => plan.Corrected(TilePage.Draw(plan, tile, (i + 2, printed.Length + 1), marks, words))),
            .. strain is null ? [] : new[] { strain },
            .. bare ? FittingPages.Draw(sheet, "in words", [.. facts, .. fitting], AssemblyPage.HowTo, cautions, words)
                : apart ? FittingPages.Draw(sheet, "bends and joints", fitting, [], others, words) : [],
        ];
    }

    /// <summary>The page that shows where the metal is stretched and shrunk; null if the sheet only bends.</summary>
    public static Page? StrainSheet(PanelDevelopment panel, Job job) => panel.DrawnMap is { } map
        ? StrainPage.Of(panel.Spec.Name, panel.Mesh, map, panel.Edges, panel.Elements, panel.Cut, job)
        : null;

    private static ImmutableArray<string> TapeText(ImmutableArray<OverlapMark> marks, TilePlan plan, LengthUnit units)
    {
        if (marks.IsEmpty) return [plan.Printed.Count() == 1 ? "The piece fits one sheet: check the bars." : "Check the edge lengths with a tape."];
        return [.. Enumerable.Range(0, marks.Length / 2).Select(i => (marks[2 * i], marks[2 * i + 1])).Select(pair => $"Tape from {pair.Item1.Letter} to {pair.Item2.Letter}: {ShopLength.Print((pair.Item2.At - pair.Item1.At).Length, units)}")];
    }

    private static ImmutableArray<(string Name, string Value)> Facts(PanelDevelopment panel, Job job, TilePlan plan)
    {
        Box box = Box.Around(panel.Cut);
        string Size(double mm) => ShopLength.Print(mm, job.Units);
        // Of the ends of the lines as they are rolled; at the tip of a cone there is no radius to roll to.
        double[] bent = [.. panel.Elements.Where(e => e.Number > 0).SelectMany(e => new[] { e.BendRadiusFront, e.BendRadiusRear }).Where(r => double.IsFinite(r) && r > 0)];
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
            .. panel.Elements.IsEmpty ? [] : new[] { (panel.Spec.Kind == "bent" ? "Tightest roll" : "Tightest bend", bent.Length == 0 ? "flat" : Size(bent.Min()) + " radius") },
            .. panel.Freedom is { } fit ? [($"Moved, {fit.Spec.Curve}", $"{FreedomWords.Largest(fit, job.Units)}; its mate is cut to its own template")] : Array.Empty<(string, string)>(),
            .. PaperWords.Of(plan),
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
