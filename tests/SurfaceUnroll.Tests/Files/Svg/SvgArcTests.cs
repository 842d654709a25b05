using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Svg;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Patterns.CutPaths;

namespace SurfaceUnroll.Tests.Files.Svg;

/// <summary>Arcs read back by the rules of SVG 1.1, appendix F.6, from end points, radius and flags to a centre.</summary>
public partial class SvgArcTests
{
    [Fact]
    public void Every_kind_of_arc_comes_back_where_it_was()
    {
        double[] angles = [0, 1, -1, 3, -3, Math.PI, -Math.PI, 4, -4, 1e-3];
        foreach (double angle in angles)
        {
            var stroke = new Stroke(Role.Cut, [new Vec2(10, 20), new Vec2(60, 45), new Vec2(5, 90)], Closed: true) { Bulges = [Math.Tan(angle / 4), 0, Math.Tan(0.2)] };
            CheckPath(stroke);
        }
    }

    [Fact]
    public void The_demo_outline_comes_back_with_its_arcs()
    {
        Stroke outline = CutFittingTests.Demo("jobs/trike-tail-cover.json", CuttingSpec.Default)[0][0];
        Assert.Contains(outline.Bulges, b => b != 0);
        CheckPath(outline);
    }

    // Numbers are written to 1e-9 mm; the centre of a flat arc magnifies that, its place on the arc does not.
    private static void CheckPath(Stroke stroke)
    {
        XNamespace ns = "http://www.w3.org/2000/svg";
        XElement root = XDocument.Parse(Encoding.UTF8.GetString(SvgPattern.Write(new Drawing("", [stroke], [])))).Root!;
        Vec2[] read = [.. Read(root.Descendants(ns + "path").Single().Attribute("d")!.Value)];
        Assert.InRange(PathRuler.Apart(PathRuler.Dense(stroke), read), 0, 5e-4);
    }

    private static IEnumerable<Vec2> Read(string path)
    {
        Vec2 at = default;
        foreach (Match command in Command().Matches(path))
        {
            double[] n = [.. Number().Matches(command.Groups[2].Value).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture))];
            if (command.Groups[1].Value == "Z") yield break;
            Vec2 to = new(n[^2], -n[^1]);
            if (command.Groups[1].Value != "A") yield return to;
            else
                foreach (Vec2 p in Arc(at, to, n[0], n[3] == 1, n[4] == 1)) yield return p;
            at = to;
        }
    }

    private static IEnumerable<Vec2> Arc(Vec2 from, Vec2 to, double radius, bool large, bool sweep)
    {
        // In the frame of SVG, y down.
        Vec2 a = new(from.X, -from.Y), b = new(to.X, -to.Y), half = 0.5 * (a - b);
        double over = Math.Sqrt(Math.Max(0, radius * radius / half.Dot(half) - 1));
        Vec2 centre = 0.5 * (a + b) + (large == sweep ? -1 : 1) * over * new Vec2(half.Y, -half.X);
        double angle = Math.Atan2((a - centre).Cross(b - centre), (a - centre).Dot(b - centre));
        if (sweep && angle < 0) angle += Math.Tau;
        if (!sweep && angle > 0) angle -= Math.Tau;
        int steps = 20 + (int)(Math.Abs(angle) * Math.Sqrt(radius / 8e-4));
        for (int i = 1; i <= steps; i++)
        {
            Vec2 p = centre + (a - centre).Rotate(angle * i / steps);
            yield return new Vec2(p.X, -p.Y);
        }
    }

    [GeneratedRegex("([MLAZ])([^MLAZ]*)")]
    private static partial Regex Command();

    [GeneratedRegex("-?[0-9.]+")]
    private static partial Regex Number();
}
