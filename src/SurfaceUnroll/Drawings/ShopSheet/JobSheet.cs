using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The page of a whole job for the wall: how the pieces meet, the order of work and of tacks, what is taken from stock.</summary>
public static class JobSheet
{
    private const double Rim = 6;

    // Heights that the picture may have, mm: the most that takes the fewest pages.
    private static readonly ImmutableArray<double> Heights = [112, 100, 88, 78, 68, 58];

    /// <summary>The pages.</summary>
    /// <param name="development">The job.</param>
    /// <param name="view">All formed pieces together.</param>
    public static ImmutableArray<Page> Of(Development development, FormedView view)
    {
        (SheetFlow Flow, double Height)? best = null;
        // How the page breaks goes by the height of the picture alone: it is drawn once that is settled.
        foreach (double height in Heights)
            if (Draw(development, _ => new SheetRow(height, [])) is var flow && (best is null || flow.IsShorterThan(best.Value.Flow))) best = (flow, height);
        return Draw(development, width => Together(development, view, width, best!.Value.Height)).Pages;
    }

    private static SheetFlow Draw(Development development, Func<double, SheetRow> picture)
    {
        Job job = development.Job;
        var flow = new SheetFlow(job.Paper, (goesOn, width) => SheetRow.Heading(goesOn ? "Assembly, continued" : "Assembly", $"{job.Name}   {PatternDrawing.SheetText(job)}", width));
        flow.Add(picture(flow.Width));
        if (JobTables.Joints(development, flow.Width) is { } joints) flow.Add(joints);
        flow.Add(JobTables.Pieces(development, flow.Width));
        flow.AddInColumns([JobTables.Order(development, flow.Half), JobTables.Care(development, flow.Half)]);
        if (!development.Tacks.IsEmpty) flow.Add(JobTables.TackRules(flow.Width));
        foreach (TackPlan tacks in development.Tacks)
            flow.Add(TackStrip.Of(tacks, development.Joints.FirstOrDefault(j => j.Label == tacks.Joint), job.Units, flow.Width));
        return flow;
    }

    // All pieces where they belong, with their names and the letters of the joints.
    private static SheetRow Together(Development development, FormedView view, double width, double height)
    {
        const double caption = 6;
        var room = new Box(new Vec2(0, -height), new Vec2(width, -caption));
        double scale = Math.Min((room.Width - 2 * Rim) / Math.Max(1, view.Bounds.Width), (room.Height - 2 * Rim) / Math.Max(1, view.Bounds.Height));
        Vec2 Place(Vec2 p) => room.Centre + scale * (p - view.Bounds.Centre);
        var labels = new SheetLabels(room);
        List<PageFill> dots = [];
        foreach (JointFit joint in development.Joints.Where(j => j.Mates.Length > 1))
        {
            MatchMark[] marks = [.. development.Panels.SelectMany(p => p.Marks).Where(m => m.Joint == joint.Label).OrderBy(m => m.Number)];
            if (marks.Length == 0) continue;
            // Where it is seen, as near to its middle as may be.
            MatchMark mark = marks.Where(m => !view.Hides(m.Formed)).DefaultIfEmpty(marks[marks.Length / 2]).MinBy(m => Math.Abs(m.Number - marks[marks.Length / 2].Number))!;
            Vec2 at = Place(view.Project(mark.Formed));
            dots.Add(SheetLabels.Dot(at, 0.8));
            labels.Reserve(at, 0.8);
            labels.Beside(joint.Label, at, at - room.Centre, SheetSizes.Letter, 1.8);
        }
        foreach (PanelDevelopment panel in development.Panels) labels.Beside(panel.Spec.Name, Middle(panel), Vec2.Zero, SheetSizes.Body, 0.5);
        return new SheetRow(
            height,
            [
                .. FormedArt.Paint(view, Place), .. dots, .. labels.Texts,
                new PageText($"Seen from the {view.From}; the letters are those of the joints", new Vec2(0, -0.6 * caption), SheetSizes.Small),
            ]);

        // The seen place of the piece that is nearest to the middle of what is seen of it.
        Vec2 Middle(PanelDevelopment panel)
        {
            Vec3[] sample = [.. panel.Mesh.Formed.Where((_, i) => i % Math.Max(1, panel.Mesh.Formed.Length / 200) == 0)];
            Vec3[] seen = [.. sample.Where(p => !view.Hides(p))];
            Vec2[] places = [.. (seen.Length > 0 ? seen : sample).Select(p => Place(view.Project(p)))];
            Vec2 centre = 1.0 / places.Length * places.Aggregate(Vec2.Zero, (sum, p) => sum + p);
            return places.MinBy(p => (p - centre).Length);
        }
    }
}
