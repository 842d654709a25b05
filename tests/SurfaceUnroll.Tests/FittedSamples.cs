using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests;

/// <summary>Developments with bends, openings, allowances and joints, put on by hand, for tests of what shows them.</summary>
internal static class FittedSamples
{
    private static readonly BendLength Length = new(0.44, 2.04, 1.8, 1.56, "table: mild steel, R/t 1");

    /// <summary>The half cylinder of 150 × 400 with a lamp opening of 90 mm and a row of six holes, a lip of 12 mm on its rear edge with a notch, and joint A along it.</summary>
    public static Development Cover(LengthUnit units = LengthUnit.Millimetre, double radius = 150, double length = 400)
    {
        Development sample = Samples.HalfCylinder(radius, length, units);
        PanelDevelopment panel = sample.Panels[0];
        double half = Math.PI * radius / 2, across = half / 1.5;
        const double lip = 11.2;
        ImmutableArray<Vec2> cut =
        [
            new(-half, -length), new(-half + 8, -length), new(-half + 8, -length - lip), new(-4, -length - lip), new(-2, -length - 3), new(2, -length - 3), new(4, -length - lip),
            new(half - 8, -length - lip), new(half - 8, -length), new(half, -length), .. panel.Edges[0].Flat.Reverse(),
        ];
        ImmutableArray<Vec2> Level(double y) => [new(-half + 8, y), new(half - 8, y)];
        return sample with
        {
            Panels =
            [
                panel with
                {
                    Cut = cut,
                    Net = panel.Cut,
                    Openings = [Round("lamp", new Vec2(-0.5 * across, -0.4 * length), 45, 48, radius), .. Enumerable.Range(1, 6).Select(i => Round($"row {i}", new Vec2((0.3 + 0.1 * i) * across, -0.7 * length), 2.75, 2.75, radius))],
                    Bends = [new BendLine(1, "rear", Math.PI / 2, 85 * Math.PI / 180, 95 * Math.PI / 180, 0.9, false, Length, Level(-length - 1), [Level(-length), Level(-length - 2)])],
                    Marks = [.. Enumerable.Range(0, 9).Select(i => Mark(i, half, length))],
                    Allowances = [new EdgeAllowance("rear", "A", JointKind.Lip, lip, CornerStyle.Square), new EdgeAllowance("lamp", "B", JointKind.Trim, -3, CornerStyle.Round)],
                    Notches = [new LipNotch("rear", half, 8, [new(-4, -length - lip), new(-2, -length - 3), new(2, -length - 3), new(4, -length - lip)])],
                    Areas = new AreaAccount(panel.FormedArea, 100, -20, 0, 4000, panel.FormedArea + 3980),
                },
            ],
            Joints = [Joint(half)],
        };
    }

    /// <summary>A flat plate under a half circle on a rectangle, with a lap of 15 mm round its arch and a square gap in it.</summary>
    public static Development Plate()
    {
        Development sample = Samples.HalfCylinder();
        const double radius = 150, foot = 100;
        Vec2[] arch = [.. Enumerable.Range(0, 61).Select(i => radius * Vec2.FromAngle(Math.PI * i / 60))], wide = [.. arch.Select(p => p + 15 * p.Unit)];
        ImmutableArray<Vec2> net = [new(-radius, -foot), new(radius, -foot), .. arch], gap = [new(-20, -60), new(-20, -20), new(20, -20), new(20, -60)];
        var spec = new PanelSpec("Front plate", [], ElementMatching.BendOnly) { Flat = new FlatSpec(["arch", "foot"], null) };
        Vec3 Stand(Vec2 p) => new(0, p.X, p.Y);
        ImmutableArray<(int, int, int)> faces = [.. Enumerable.Range(1, net.Length - 2).Select(i => (0, i, i + 1))];
        var panel = new PanelDevelopment(
            spec, Verdict.BendsOnly, default, default, default, 65_000, 65_000,
            [new BlankEdge("arch", Math.PI * radius, Math.PI * radius, [.. arch]), new BlankEdge("chord", 2 * radius + 2 * foot, 2 * radius + 2 * foot, [arch[^1], net[0], net[1], arch[0]])],
            [], [new(-radius, -foot), new(radius, -foot), .. wide], new SheetMesh([.. net.Select(Stand)], net, faces))
        {
            Net = net,
            InnerCuts = [gap],
            Allowances = [new EdgeAllowance("arch", "A", JointKind.Lap, 15, CornerStyle.Mitre)],
            Marks = [.. Enumerable.Range(0, 7).Select(i => Math.PI * (i + 0.5) / 7).Select((a, i) => new MatchMark("A", i + 1, "arch", radius * a, radius * Vec2.FromAngle(a), -1 * Vec2.FromAngle(a), Stand(radius * Vec2.FromAngle(a))))],
        };
        return sample with { Job = sample.Job with { Panels = [spec] }, Panels = [panel] };
    }

    /// <summary>A bent plate 300 wide: two flats of 100 and 150 with a sharp bend between and some lines across, numbered from the front.</summary>
    public static Development Bent(int bends = 1)
    {
        Development sample = Samples.HalfCylinder();
        var spec = new PanelSpec("Top plate", [], ElementMatching.BendOnly)
        {
            Bent = new BentSpec([], new SidePoints([], Fit.Straight), null, new Placement(default, 0, 0, 0)),
        };
        Vec3 Formed(double x, double y) => y > -100 ? new Vec3(-y, x, 0) : new Vec3(100, x, y + 100);
        ElementLine[] lines = [.. Enumerable.Range(0, 11).Select(i => -25.0 * i).Select((y, i) => new ElementLine(
            i + 1, Formed(-150, y), Formed(150, y), new Vec2(-150, y), new Vec2(150, y), -y, -y, y > -100 ? new Vec3(0, 0, 1) : new Vec3(1, 0, 0), 0, 500, 500, true))];
        ImmutableArray<Vec2> cut = [new(-150, -250), new(150, -250), new(150, 0), new(-150, 0)];
        BlankEdge Edge(string name, Vec2 from, Vec2 to) => new(name, (to - from).Length, (to - from).Length, [from, to]);
        ImmutableArray<Vec2> Across(double y) => [new(-150, y), new(150, y)];
        var panel = new PanelDevelopment(
            spec, Verdict.BendsOnly, default, default, default, 75_000, 75_000,
            [Edge("front", cut[3], cut[2]), Edge("right", cut[2], cut[1]), Edge("rear", cut[0], cut[1]), Edge("left", cut[3], cut[0])],
            [.. lines], cut,
            new SheetMesh([.. lines.SelectMany(e => new[] { e.FormedFront, e.FormedRear })], [.. lines.SelectMany(e => new[] { e.Front, e.Rear })],
                [.. Enumerable.Range(0, 10).SelectMany(i => new[] { (2 * i, 2 * i + 2, 2 * i + 3), (2 * i, 2 * i + 3, 2 * i + 1) })]))
        {
            Bends =
            [
                .. Enumerable.Range(1, bends).Select(i => -110.0 * i / bends).Select((y, i) => new BendLine(
                    i + 1, null, Math.PI / 2, Math.PI / 2, Math.PI / 2, 0.9, true, Length, Across(y), [Across(y + 1.02), Across(y - 1.02)])),
            ],
        };
        return sample with { Job = sample.Job with { Panels = [spec] }, Panels = [panel] };
    }

    private static BlankOpening Round(string name, Vec2 centre, double radius, double cut, double bend)
    {
        Vec2[] Ring(double r) => [.. Enumerable.Range(0, 72).Select(i => centre + r * Vec2.FromAngle(-Math.Tau * i / 72))];
        Vec3 Formed(Vec2 p) => new(-p.Y, -bend * Math.Cos(p.X / bend + Math.PI / 2), bend * Math.Sin(p.X / bend + Math.PI / 2));
        double area = Math.PI * radius * radius;
        return new BlankOpening(name, FormattableString.Invariant($"Ø {2 * radius}"), Formed(centre), centre, [.. Ring(radius).Select(Formed)], [.. Ring(radius)], area, area, [.. Ring(cut)]);
    }

    private static MatchMark Mark(int i, double half, double length)
    {
        double x = -half + 20 + i * (2 * half - 40) / 8;
        return new MatchMark("A", i + 1, "rear", x + half, new Vec2(x, -length), new Vec2(0, 1), new Vec3(length, x, 1));
    }

    private static JointFit Joint(double half)
    {
        EdgeName cover = new("Cover", "rear"), plate = new("Front plate", "arch");
        var spec = new JointSpec(null, [cover, plate], JointKind.Lip, 12, 0, new LipSpec(null, null, null, LipRelief.Auto, null), null, null);
        return new JointFit(
            spec, "A", [new JointMate(cover, 2 * half, 11.2, new LipStrain(0.034, 0, 1)), new JointMate(plate, 2 * half + 1.5, 0, null)],
            1.5, 0.8, 143, new Vec3(400, 10, 150), (85 * Math.PI / 180, 95 * Math.PI / 180), false);
    }
}
