using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using SurfaceUnroll.Files.Wavefront;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Files.JobFiles;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Forming;

public class TapePlannerTests
{
    public static TheoryData<string> Demos => ["trike-tail-cover", "trike-full-cover", "bench-hood", "elbow", "square-to-round", "half-cone-shroud", "crowned-side-panel"];

    private static ImmutableArray<PanelDevelopment> Panels(string demo) => Run(Fixtures.Read($"jobs/{demo}.json").Job!).Panels;

    [Theory]
    [MemberData(nameof(Demos))]
    public void Distances_agree_with_those_read_back_from_the_mesh_file(string demo)
    {
        foreach (PanelDevelopment panel in Panels(demo))
        {
            (Vec3[] places, Vec2[] flat, (int, int, int)[] faces) = Read(ObjMesh.Write(panel.Spec.Name, panel.Mesh));
            Dictionary<string, TapeMark> marks = panel.Plan!.Marks.ToDictionary(m => m.Letter);
            Assert.True(panel.Plan.Tapes.Length >= 6, $"{panel.Spec.Name}: {panel.Plan.Tapes.Length}");
            foreach (TapeCheck check in panel.Plan.Tapes)
            {
                (Vec2 from, Vec2 to) = (marks[check.From].Flat, marks[check.To].Flat);
                Assert.Equal((to - from).Length, check.OnBlank, 0.05);
                // Taut: straight between the two places. On the sheet: along the straight line of the blank, which is the shortest way on a sheet that only bends.
                int steps = check.How == TapeRun.Taut ? 1 : 400;
                Vec3[] way = [.. Enumerable.Range(0, steps + 1).Select(k => Lift(places, flat, faces, from + (double)k / steps * (to - from)))];
                Assert.Equal(way.Zip(way.Skip(1), (a, b) => (b - a).Length).Sum(), check.OnPart, 0.05);
                Assert.True(check.How == TapeRun.Taut || panel.Verdict == Verdict.BendsOnly);
            }
        }
    }

    [Fact]
    public void Letters_stand_at_the_rim_once_each_and_every_one_is_taped()
    {
        foreach (PanelDevelopment panel in Panels("trike-full-cover"))
        {
            FormingPlan plan = panel.Plan!;
            Assert.Equal(plan.Marks.Length, plan.Marks.Select(m => m.Letter).Distinct().Count());
            // The outline of a trimmed piece leaves out places that are in line to within 0.002 mm.
            Assert.All(plan.Marks, m => Assert.InRange(Distance(m.Flat, panel.Net), 0, 0.0021));
            Assert.Superset(plan.Marks.Select(m => m.Letter).ToHashSet(), plan.Tapes.SelectMany(t => new[] { t.From, t.To }).ToHashSet());
            Assert.All(plan.Marks, m => Assert.Contains(plan.Tapes, t => t.From == m.Letter || t.To == m.Letter));
        }
    }

    [Fact]
    public void Half_a_pipe_is_taped_across_its_chord_and_round_its_girth()
    {
        RunSpec Half(double aft) => new([new ArcStep(100, Math.PI)], 0, null, new Placement(new Vec3(aft, 0, 0), 0, 0, 0));
        Job job = Job(new SheetStock("mild steel", 0), [("front", Half(0)), ("rear", Half(300))], new PanelSpec("cover", ["front", "rear"], ElementMatching.BendOnly));
        FormingPlan plan = Run(job).Panels[0].Plan!;
        // From corner to corner: √(200² + 300²) taut, √((100π)² + 300²) along the sheet.
        TapeCheck diagonal = plan.Tapes.Where(t => t.How == TapeRun.Taut).MaxBy(t => t.OnBlank)!;
        Assert.Equal(Math.Sqrt(200 * 200 + 300 * 300), diagonal.OnPart, 0.01);
        Assert.Equal(Math.Sqrt(1e4 * Math.PI * Math.PI + 9e4), diagonal.OnBlank, 0.01);
        Assert.Contains(plan.Tapes, t => t.How == TapeRun.OnSheet && Math.Abs(t.OnPart - diagonal.OnBlank) < 0.01);
    }

    private static double Distance(Vec2 p, IReadOnlyList<Vec2> ring) => Enumerable.Range(0, ring.Count).Min(i =>
    {
        (Vec2 a, Vec2 b) = (ring[i], ring[(i + 1) % ring.Count]);
        double t = Math.Clamp((p - a).Dot(b - a) / Math.Max((b - a).Dot(b - a), 1e-18), 0, 1);
        return (p - a - t * (b - a)).Length;
    });

    private static (Vec3[], Vec2[], (int, int, int)[]) Read(byte[] obj)
    {
        var places = new List<Vec3>();
        var flat = new List<Vec2>();
        var faces = new List<(int, int, int)>();
        foreach (string[] words in Encoding.UTF8.GetString(obj).Split('\n').Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Where(w => w.Length > 0))
        {
            double Number(int i) => double.Parse(words[i], CultureInfo.InvariantCulture);
            int Vertex(int i) => int.Parse(words[i].Split('/')[0], CultureInfo.InvariantCulture) - 1;
            if (words[0] == "v") places.Add(new Vec3(Number(1), Number(2), Number(3)));
            if (words[0] == "vt") flat.Add(new Vec2(Number(1), Number(2)));
            if (words[0] == "f") faces.Add((Vertex(1), Vertex(2), Vertex(3)));
        }
        return ([.. places], [.. flat], [.. faces]);
    }

    // The place of the formed sheet over a place of the blank: in the triangle that holds it, or comes nearest to that.
    private static Vec3 Lift(Vec3[] places, Vec2[] flat, (int A, int B, int C)[] faces, Vec2 p)
    {
        (double best, Vec3 place) = (double.NegativeInfinity, Vec3.Zero);
        foreach ((int a, int b, int c) in faces)
        {
            Vec2 ab = flat[b] - flat[a], ac = flat[c] - flat[a], ap = p - flat[a];
            double det = ab.Cross(ac), u = ap.Cross(ac) / det, v = ab.Cross(ap) / det, inside = Math.Min(Math.Min(u, v), 1 - u - v);
            if (inside > best) (best, place) = (inside, places[a] + u * (places[b] - places[a]) + v * (places[c] - places[a]));
        }
        return place;
    }
}
