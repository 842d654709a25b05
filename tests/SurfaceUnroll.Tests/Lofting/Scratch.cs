using System.Diagnostics;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;
using Xunit.Abstractions;

namespace SurfaceUnroll.Tests.Lofting;

public class Scratch(ITestOutputHelper output)
{
    private void Show(string name, SpaceCurve a, SpaceCurve b)
    {
        RuledSheet sheet = Loft.Between(a, b, ElementMatching.BendOnly);
        var w = Stopwatch.StartNew();
        for (int i = 0; i < 5; i++) { w.Restart(); sheet = Loft.Between(a, b, ElementMatching.BendOnly); }
        double t1 = w.Elapsed.TotalMilliseconds;
        w.Restart();
        Blank blank = Blank.Of(sheet);
        double t2 = w.Elapsed.TotalMilliseconds;
        RuledSheet even = Loft.Between(a, b, ElementMatching.Even);
        var tw = SheetFitness.Twist(sheet); var te = SheetFitness.Twist(even);
        output.WriteLine($"{name}: strips {sheet.Strips.Length} mirrored {sheet.IsMirrored} twist max {tw.Max * 180 / Math.PI:g4} mean {tw.Mean * 180 / Math.PI:g4}  even {te.Max * 180 / Math.PI:g4}/{te.Mean * 180 / Math.PI:g4} strips {even.Strips.Length} strain {SheetFitness.Strain(sheet)}  {t1:f1} + {t2:f1} ms");
        foreach (var e in BlankOutline.Edges(blank)) output.WriteLine($"   {e.Name} {e.FormedLength:f9} flat {e.FlatLength:f9} rel {e.FlatLength / e.FormedLength - 1:g3} points {e.Flat.Length}");
        output.WriteLine($"   area formed {blank.FormedArea:f6} flat {blank.FlatArea:f6}; curve lengths {a.Length:f9} {b.Length:f9}");
        if (sheet.IsMirrored)
        {
            var l = blank.FlatLines.ToArray();
            output.WriteLine($"   mirror error {Enumerable.Range(0, l.Length).Max(i => Math.Abs(l[i].Front.X + l[^(i + 1)].Front.X) + Math.Abs(l[i].Rear.Y - l[^(i + 1)].Rear.Y)):g3}");
        }
        foreach (var e in ElementLines.Of(blank).Where(e => e.Number > 0 && e.Number % 3 == 1)) output.WriteLine($"   #{e.Number} s {e.FrontLength:f2}/{e.RearLength:f2} len {e.Length:f4} tw {e.Twist * 180 / Math.PI:g3} R {e.BendRadiusFront:f2} {e.BendRadiusRear:f2} {e.BendsOutward}");
    }

    private static readonly Vec3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    [Fact]
    public void Cylinder() => Show("cyl", AnalyticPiece.Arc(default, -Y, Z, 150, 0, Math.PI), AnalyticPiece.Arc(new(400, 0, 0), -Y, Z, 150, 0, Math.PI));

    [Fact]
    public void Cone() => Show("cone", AnalyticPiece.Arc(default, -Y, Z, 100, 0, Math.PI), AnalyticPiece.Arc(new(400, 0, 0), -Y, Z, 200, 0, Math.PI));

    [Fact]
    public void Oblique() => Show("oblique", AnalyticPiece.Arc(default, -Y, Z, 100, 0, Math.PI), AnalyticPiece.Arc(new(400, 0, 50), -Y, Z, 200, 0, Math.PI));

    [Fact]
    public void Trike()
    {
        double lean = 25 * Math.PI / 180;
        Vec3 up = new(Math.Sin(lean), 0, Math.Cos(lean));
        var front = new SpaceCurve([
            new LinePiece(-120 * Y, -120 * Y + 55 * up),
            new ArcPiece(55 * up, -Y, up, 120, 0, Math.PI),
            new LinePiece(120 * Y + 55 * up, 120 * Y)]);
        var rear = new SpaceCurve([
            new LinePiece(-120 * Y, -120 * Y + 175 * X),
            new ArcPiece(175 * X, -Y, X, 120, 0, Math.PI),
            new LinePiece(120 * Y + 175 * X, 120 * Y)]);
        Show("trike", front, rear);
        rear = new SpaceCurve([
            new LinePiece(-110 * Y, -110 * Y + 195 * X),
            new ArcPiece(195 * X - 10 * Y, -Y, X, 100, 0, Math.PI / 2),
            new LinePiece(295 * X - 10 * Y, 295 * X + 10 * Y),
            new ArcPiece(195 * X + 10 * Y, X, Y, 100, 0, Math.PI / 2),
            new LinePiece(110 * Y + 195 * X, 110 * Y)]);
        Show("trike2", front, rear);
    }

    [Fact]
    public void Oloid()
    {
        double m = 2 * Math.PI / 3;
        Vec3 B(double t) => new(0, 0.5 - Math.Cos(t) / (1 + Math.Cos(t)), Math.Sqrt(1 + 2 * Math.Cos(t)) / (1 + Math.Cos(t)));
        // half circle in the yz plane, centre (0, .5, 0)
        var a = AnalyticPiece.Arc(new(0, -0.5, 0), X, Y, 1, -Math.PI / 2 - m, -Math.PI / 2 + m);
        output.WriteLine($"{a.Start.Point} {a.End.Point} {B(-m)} {B(0)} {B(m)}");
        Show("oloid", a, AnalyticPiece.Arc(new(0, 0.5, 0), Y, Z, 1, Math.PI / 2 - Math.PI / 2 - 0, Math.PI - 0));
    }

    [Fact]
    public void SquareToRound()
    {
        var sq = AnalyticPiece.Polyline(new(0, 0, -100), new(0, -100, -100), new(0, -100, 100), new(0, 100, 100), new(0, 100, -100), new(0, 0, -100));
        var c = AnalyticPiece.Arc(new(150, 0, 0), -Z, -Y, 50, 0, 2 * Math.PI);
        Show("s2r", sq, c);
    }

    [Fact]
    public void Hypar() => Show("hypar", AnalyticPiece.Polyline(new(0, -100, -50), new(0, 100, 50)), AnalyticPiece.Polyline(new(200, -100, 50), new(200, 100, -50)));
}
