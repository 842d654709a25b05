using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Patterns.Strain;

/// <summary>Pages of sheets of several shapes, on several papers.</summary>
internal static class StrainPages
{
    public static Job Job(LengthUnit units = LengthUnit.Millimetre, PaperSpec? paper = null) => new(
        "Delivery trike tail cover", units, new SheetStock("mild steel", 0.9), MeasuredFace.Middle, [], [], paper ?? PaperSpec.Default);

    public static TheoryData<string> Names => ["dome", "saddle", "saddle landscape", "saddle letter", "strip", "wide margins", "bent only", "many peaks"];

    public static Page Of(string name) => name switch
    {
        "dome" => Dome(PaperSpec.Default, LengthUnit.Millimetre),
        "saddle" => Saddle(1, PaperSpec.Default, LengthUnit.Millimetre),
        "saddle landscape" => Saddle(1, PaperSpec.Default with { Orientation = PaperOrientation.Landscape }, LengthUnit.Millimetre),
        "saddle letter" => Saddle(2.5, new PaperSpec(PaperSize.Letter, 6.35, 10, PaperOrientation.Portrait), LengthUnit.Inch),
        "strip" => Panel(StrainSamples.Grid(1500, 30, 200, 4), p => 0.004 * Math.Sin(p.X / 100), PaperSpec.Default, LengthUnit.Millimetre),
        "wide margins" => Saddle(1, PaperSpec.Default with { Margins = 25 }, LengthUnit.Millimetre),
        "bent only" => Panel(StrainSamples.Grid(300, 200, 10, 10), p => 0.0000001 * p.X, PaperSpec.Default, LengthUnit.Millimetre),
        "many peaks" => Panel(
            StrainSamples.Grid(400, 600, 40, 60), p => 0.08 * Math.Sin(p.X / 30) * Math.Sin(p.Y / 40), PaperSpec.Default, LengthUnit.Millimetre),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
    };

    private static Page Dome(PaperSpec paper, LengthUnit units)
    {
        (SheetMesh mesh, StrainMap map) = StrainSamples.Dome();
        ImmutableArray<Vec2> cut = [.. Enumerable.Range(0, 120).Select(i => 203 * Vec2.FromAngle(i * Math.PI / 60))];
        return StrainPage.Of("headlamp bowl", mesh, map, [], [], cut, Job(units, paper));
    }

    // A fender-like sheet, its blank bent like a banana: stretched along both long edges, shrunk along the middle of it.
    private static Page Saddle(double amount, PaperSpec paper, LengthUnit units)
    {
        SheetMesh straight = StrainSamples.Grid(700, 260, 70, 26);
        Vec2 Bent(Vec2 p) => new Vec2(0, -900) + (900 + p.Y) * Vec2.FromAngle(Math.PI / 2 - p.X / 900);
        SheetMesh mesh = straight with { Flat = [.. straight.Flat.Select(Bent)] };
        var map = new StrainMap(
        [
            .. straight.Flat.Select(p =>
            {
                double e = amount * (0.03 * p.Y * p.Y / 16900 - 0.012 - 0.006 * Math.Cos(p.X / 80)), other = -0.2 * e;
                Vec2 along = Vec2.FromAngle(-p.X / 900);
                return e >= other ? new VertexStrain(e, other, along, 1 / ((1 + e) * (1 + other)) - 1) : new VertexStrain(other, e, along.Left, 1 / ((1 + e) * (1 + other)) - 1);
            }),
        ]);
        ImmutableArray<ElementLine> lines =
        [
            .. Enumerable.Range(0, 15).Select(i => Line(i + 1, straight, Bent, -350 + 50 * i)),
        ];
        ImmutableArray<BlankEdge> edges = [.. Edges(350, 130).Select(e => e with { Flat = [.. e.Flat.Select(Bent)] })];
        return StrainPage.Of("rear fender, left", mesh, map, edges, lines, Loop(edges), Job(units, paper));
    }

    private static ElementLine Line(int number, SheetMesh straight, Func<Vec2, Vec2> flat, double x) => new(
        number, new Vec3(-130, x, 0), new Vec3(130, x, 0), flat(new Vec2(x, 130)), flat(new Vec2(x, -130)), 0, 0, new Vec3(0, 0, 1), 0,
        double.PositiveInfinity, double.PositiveInfinity, straight.Faces.Length > 0);

    private static Page Panel(SheetMesh mesh, Func<Vec2, double> strain, PaperSpec paper, LengthUnit units)
    {
        Box box = Box.Around(mesh.Flat);
        ImmutableArray<BlankEdge> edges = Edges(box.Max.X, box.Max.Y);
        return StrainPage.Of("side", mesh, StrainSamples.Signed(mesh, strain), edges, [], Loop(edges), Job(units, paper));
    }

    private static ImmutableArray<BlankEdge> Edges(double right, double front)
    {
        static BlankEdge Edge(string name, Vec2 a, Vec2 b) =>
            new(name, (b - a).Length, (b - a).Length, [.. Enumerable.Range(0, 41).Select(i => Vec2.Lerp(a, b, i / 40.0))]);
        return
        [
            Edge("front", new(-right, front), new(right, front)), Edge("right", new(right, front), new(right, -front)),
            Edge("rear", new(-right, -front), new(right, -front)), Edge("left", new(-right, front), new(-right, -front)),
        ];
    }

    // Counter-clockwise: rear from left to right, right and front backwards, left.
    private static ImmutableArray<Vec2> Loop(ImmutableArray<BlankEdge> edges) =>
        [.. edges[2].Flat[..^1], .. edges[1].Flat.Reverse().Take(40), .. edges[0].Flat.Reverse().Take(40), .. edges[3].Flat[..^1]];
}
