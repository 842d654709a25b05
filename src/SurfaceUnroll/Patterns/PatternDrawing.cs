using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns;

/// <summary>The drawing of one blank: cut lines, bends, numbered element lines, centreline, marks and words. Nothing is drawn twice.</summary>
/// <remarks>
/// <see cref="PatternLines"/>, <see cref="BendDrawing"/>, <see cref="JointDrawing"/> and <see cref="OpeningDrawing"/> say what there is to draw,
/// <see cref="PatternWords"/> where words may stand; here it is settled what comes first.
/// </remarks>
public static class PatternDrawing
{
    // Cap heights (mm) on a piece of ordinary size; on a small one they shrink with it, down to the smallest that prints legibly.
    private const double LabelHeight = 2.5, TitleHeight = 4;

    // White between words where many stand close together, in cap heights.
    private const double WhiteBetween = 0.3;

    // Where the number of an element line may stand, from its end, in cap heights.
    private static readonly ImmutableArray<double> OneInset = [2], ManyInsets = [2, 5, 9];

    /// <summary>Draws a panel's blank in the frame of its flat coordinates.</summary>
    /// <param name="panel">The developed panel.</param>
    /// <param name="job">For names, material and units.</param>
    /// <param name="joints">All joints of the job: each edge says what it meets.</param>
    public static Drawing Of(PanelDevelopment panel, Job job, ImmutableArray<JointFit> joints)
    {
        Box bounds = Box.Around(panel.Cut);
        double size = Math.Min(bounds.Width, bounds.Height);
        double label = Math.Clamp(0.02 * size, PatternWords.SmallestHeight, LabelHeight);
        double title = Math.Clamp(0.02 * size, PatternWords.SmallestHeight, TitleHeight);
        CutOutline outline = CutOutline.Of(panel);
        ElementLine[] drawn = [.. Inner(panel)];
        bool crowded = IsCrowded(panel);
        ImmutableArray<StrainContour> contours = panel.DrawnMap is { } map ? StrainContours.Of(panel.Mesh, map) : [];
        Stroke[] bends = [.. BendDrawing.Strokes(panel, outline)], ticks = [.. JointDrawing.Ticks(panel, outline), .. TapeDrawing.Ticks(panel, outline), .. ErrorDrawing.Ticks(panel, outline)], net = [.. JointDrawing.NetEdges(panel)];
        Stroke[] lines = [.. PatternLines.Lengthwise(panel, drawn, outline, ticks)];

        // The words of most weight choose their places first. None of them may hide a bend, a tick or a finished edge.
        var room = new LetteringRoom(outline) { Gap = crowded ? WhiteBetween * label : 0 };
        foreach (Stroke stroke in bends.Concat(ticks).Concat(net)) room.Reserve(stroke.Closed ? [.. stroke.Points, stroke.Points[0]] : stroke.Points, label);
        Vec2[] more = crowded ? [.. DrawingPlaces.AllOver(panel)] : [];
        Stroke[] arrow = PatternLines.ForwardArrow([DrawingPlaces.OnCentre(panel, 0.45), .. more], label, outline, p => crowded && room.Covers(Dot(p, label)));
        if (crowded) foreach (Stroke stroke in arrow) room.Reserve(stroke.Points, label);
        _ = PatternWords.Titles(panel, job, title, more).Any(room.TakeAll);
        WriteLabels(panel, job, joints, drawn, outline, label, room);
        foreach (SlitOpening slit in panel.Slits) room.TakeFirst(PatternWords.SlitWords(slit, label, job.Units));
        foreach (IEnumerable<Lettering> choices in StrainContours.LabelChoices(contours, label)) room.TakeFirst(choices);

        ImmutableArray<Stroke> strokes =
        [
            .. PatternLines.Cuts(panel),
            .. PatternLines.BesideWords([.. lines, .. StrainContours.ContourStrokes(contours)], room.Taken),
            .. panel.Slits.Where(slit => slit.Width < 0).SelectMany(PatternLines.OverlapMarks),
            .. net,
            .. bends,
            .. ticks,
            .. panel.Openings.SelectMany(OpeningDrawing.Cross),
            .. arrow,
        ];
        return new Drawing($"{panel.Spec.Name} – {job.Name}", strokes, room.Taken);
    }

    private static void WriteLabels(
        PanelDevelopment panel, Job job, ImmutableArray<JointFit> joints, ElementLine[] drawn, CutOutline outline, double height, LetteringRoom room)
    {
        LengthUnit units = job.Units;
        (ImmutableArray<MatchMark> ends, ImmutableArray<MatchMark> others) = JointDrawing.InOrder(panel);
        foreach (MatchMark mark in ends) room.TakeFirst(JointDrawing.Labels(panel, outline, mark, height));
        foreach (IEnumerable<Lettering> choices in TapeDrawing.Letters(panel, height)) room.TakeFirst(choices);
        foreach (BendLine bend in panel.Bends) room.TakeFirst(BendDrawing.Words(bend, height, units));
        foreach (IEnumerable<Lettering> choices in ErrorDrawing.Words(panel, height, units)) room.TakeFirst(choices);
        OpeningDrawing.Write(panel, job, joints, height, room);
        bool across = panel.Spec.Kind == "bent";
        foreach (bool front in new[] { true, false })
            foreach (IEnumerable<Lettering> choices in PatternWords.LineLabels(drawn, front, across, IsCrowded(panel) ? ManyInsets : OneInset, height, units)) room.TakeFirst(choices);
        var net = new CutOutline(panel.Net);
        foreach (BlankEdge edge in panel.Edges)
            foreach (ImmutableArray<string> texts in EdgeWords.Choices(edge.Name, panel, joints, units)) room.TakeFirst(PatternWords.EdgeNames(panel, edge, texts, net, height));
        foreach (MatchMark mark in others) room.TakeFirst(JointDrawing.Labels(panel, outline, mark, height));
    }

    // A piece on which the middle may be taken, or may not be there.
    private static bool IsCrowded(PanelDevelopment panel) => panel.Spec.Kind is "flat" or "bent"
        || !(panel.Bends.IsEmpty && panel.Openings.IsEmpty && panel.InnerCuts.IsEmpty && panel.Marks.IsEmpty && panel.Allowances.IsEmpty);

    private static TextOutline Dot(Vec2 p, double size)
    {
        double half = 0.5 * size;
        return new TextOutline([p - new Vec2(half, half), p + new Vec2(half, -half), p + new Vec2(half, half), p + new Vec2(-half, half)]);
    }

    /// <summary>Material and thickness. Thin sheet goes by decimals of an inch: 1/64 is too coarse for it.</summary>
    internal static string SheetText(Job job)
    {
        double thickness = job.Sheet.Thickness;
        if (thickness <= 0) return job.Sheet.Material;
        string text = job.Units == LengthUnit.Inch
            ? (thickness / ShopLength.MillimetresPerInch).ToString("0.0##", CultureInfo.InvariantCulture) + " in"
            : ShopLength.Print(thickness, job.Units, 2);
        return $"{job.Sheet.Material} {text}";
    }

    /// <summary>Numbered element lines that run along no edge and no bend of the piece: those are drawn already. The first and the last line of a whole loft lie
    /// on its sides, those of a rolled area of a plate do not.</summary>
    internal static IEnumerable<ElementLine> Inner(PanelDevelopment panel) => panel.Elements.Where(e => e.Number > 0
        && !panel.Edges.Any(edge => PatternLines.RunsAlong(e, edge.Flat, PatternLines.SameLine))
        && !panel.Bends.SelectMany(b => b.Tangents.Append(b.Centre)).Any(bend => PatternLines.RunsAlong(e, bend, BendDrawing.Blot)));

    /// <summary>A radius of an element line in words.</summary>
    internal static string RadiusText(double radius, LengthUnit units) => radius switch
    {
        double.PositiveInfinity => "flat",
        0 => "point",
        > RollSchedule.FlatRadius => "flat",
        _ => "R " + ShopLength.PrintNumber(radius, units, 0),
    };
}
