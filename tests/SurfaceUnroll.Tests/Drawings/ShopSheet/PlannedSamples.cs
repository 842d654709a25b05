using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;

namespace SurfaceUnroll.Tests.Drawings.ShopSheet;

/// <summary>Developments with plans made by hand: numbers that nothing else on a page has by chance, for tests of what shows them.</summary>
internal static class PlannedSamples
{
    private const double Springback = 0.94;

    private static readonly Lazy<Development> WholeCover = new(() => Of("trike-full-cover"));

    /// <summary>The whole trike cover, developed once for all tests.</summary>
    public static Development Cover => WholeCover.Value;

    /// <summary>A job of the fixtures with a plan for each piece, tacks for each joint of two edges, and stock.</summary>
    public static Development Of(string name)
    {
        string folder = Path.Combine(Repository.Root, "fixtures", "jobs");
        return With(Developer.Develop(JobFile.ReadIn(File.ReadAllText(Path.Combine(folder, name + ".json")), folder).Job!));
    }

    /// <summary>The same development with plans.</summary>
    public static Development With(Development development) => development with
    {
        Panels = [.. development.Panels.Select(p => p with { Plan = PlanOf(p) })],
        Tacks = [.. development.Joints.Where(j => j.Mates.Length > 1).Select(Tacks)],
        Nest = new NestLayout([.. Enumerable.Repeat(new NestedSheet(new StockSheet(2500, 1250, null, false), [], 0.43, 1800), 2)], []),
    };

    /// <summary>A plan whose roll schedule has so many lines more than the pattern.</summary>
    public static FormingPlan PlanOf(PanelDevelopment panel, int more = 0)
    {
        ElementLine[] lines = [.. panel.Elements.Where(e => e.Number > 0)];
        RollLine[] rolled =
        [
            .. lines.Select((e, i) => new RollLine(
                e.Number, e.Length, i == 0 ? 0 : e.FrontLength - lines[i - 1].FrontLength, i == 0 ? 0 : e.RearLength - lines[i - 1].RearLength,
                e.BendRadiusFront, e.BendRadiusRear, Springback * e.BendRadiusFront, Springback * e.BendRadiusRear, e.BendsOutward, i == 7 ? [RollLimit.TooTightForRoll] : [])),
        ];
        ImmutableArray<RollLine> all = [.. rolled, .. Enumerable.Range(1, more).Select(i => rolled[9] with { Number = rolled.Length + i, StepFront = 30.3 + i })];
        ImmutableArray<TapeMark> marks = Marks(panel);
        Box box = Box.Around(panel.Cut);
        return new FormingPlan(
            lines.Length == 0 ? null : new RollSchedule(all, 0.03, "elastic bending, E 210 GPa, yield 240 MPa"),
            [.. panel.Bends.Select(b => new BendStep(b.Number, b.Angle, b.Angle * 1.03, 1.5, b.InsideRadius < 1.5, false, "table: mild steel"))],
            panel.Map is null ? [] : [new StretchStep(1, marks[0].Flat, marks[0].Formed, 0.031, "at the rim")],
            new GrainAdvice(new Vec2(0, 1), 1.5, true), marks,
            [.. marks.Zip(marks.Skip(1), (a, b) => new TapeCheck(a.Letter, b.Letter, (b.Flat - a.Flat).Length, (b.Formed - a.Formed).Length, TapeRun.Taut))],
            new BlankNeed(box.Width, box.Height, panel.FlatArea, panel.FlatArea * 1.2 * 7.85e-6, false));
    }

    // Four places along the rim of the sheet.
    private static ImmutableArray<TapeMark> Marks(PanelDevelopment panel)
    {
        int[] rim = [.. panel.Mesh.Chains.Where(c => c.Vertices.Length > 1).SelectMany(c => c.Vertices).DefaultIfEmpty(0).Distinct()];
        // A sheet put on by hand names no chains.
        if (rim.Length < 4) rim = [.. Enumerable.Range(0, panel.Mesh.Formed.Length)];
        return [.. Enumerable.Range(0, 4).Select(i => rim[i * rim.Length / 4]).Select((v, i) => new TapeMark(((char)('a' + i)).ToString(), panel.Mesh.Flat[v], panel.Mesh.Formed[v]))];
    }

    /// <summary>Nine tacks, set by halving, and the lengths between them.</summary>
    public static TackPlan Tacks(JointFit joint)
    {
        int[] places = [0, 8, 4, 2, 6, 1, 3, 5, 7], rounds = [0, 0, 0, 1, 1, 2, 2, 2, 2], welds = [0, 4, 2, 6, 1, 5, 3, 7];
        double step = joint.Mates[0].Length / 8;
        return new TackPlan(
            joint.Label, 120, [.. places.Select((place, i) => new Tack(i + 1, place, place * step, Vec3.Zero, rounds[i]))],
            [.. welds.Select((w, i) => new Stitch(i + 1, (w + 1) * step, w * step))]);
    }
}
