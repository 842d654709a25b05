using System.Collections.Immutable;
using System.Diagnostics;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using static SurfaceUnroll.Tests.Flattening.TestMeshes;

namespace SurfaceUnroll.Tests.Flattening;

public class DiscCheckTests
{
    public static TheoryData<string> Discs => [.. DiscsByName.Keys];

    public static TheoryData<string> Broken => [.. BrokenByName.Keys];

    private static readonly Dictionary<string, TriangleMesh> DiscsByName = new()
    {
        ["one triangle"] = Sheet(1).Without(1),
        ["sheet"] = Sheet(),
        ["sheet inside out"] = Sheet().Turned(_ => true),
        ["tube cut open"] = Tube(cut: true),
        ["sheet with vertices that no face uses"] = Sheet() with { Places = [.. Sheet().Places, new Vec3(9, 9, 9)] },
        // The fan of the corner taken away leaves a border that touches no vertex twice.
        ["sheet without a corner"] = Sheet().Without(0, 1),
        ["fan of many"] = Fan(500),
    };

    private static readonly Dictionary<string, (TriangleMesh Mesh, string[] Codes, string Says)> BrokenByName = new()
    {
        ["nothing"] = (new TriangleMesh([], []), ["mesh-no-faces"], ""),
        ["torus"] = (Torus(), ["mesh-closed", "mesh-handle"], "1 handle,"),
        ["torus with a hole"] = (Torus().Without(0), ["mesh-handle"], "1 handle,"),
        ["ball"] = (Ball, ["mesh-closed"], "no border"),
        ["tube"] = (Tube(), ["mesh-tube"], "621.2 mm round from vertex 1 at (0, 100, 0) mm"), // 24 · 100 sin 15°.
        ["hole"] = (Sheet().Without(90), ["mesh-hole"], "1 hole: 34.1 mm round"), // (2 + √2) · 10.
        ["two holes"] = (Sheet().Without(90, 130), ["mesh-hole"], "2 holes: "),
        ["tube with a hole"] = (Tube(24, 8).Without(100), ["mesh-tube", "mesh-hole"], "1 hole: "),
        ["narrow end or hole"] = (Tube(taper: 14), ["mesh-hole"], "narrow end of a tube or cone"),
        ["two pieces"] = (Sheet().And(Sheet(2), new Vec3(50, 0, 0)), ["mesh-pieces"], "2 pieces: 200 faces, 10000 mm², with face 1 at (0, 6.667, 3.333) mm; 8 faces, 10000 mm²"),
        ["three leaves on one edge"] = (Leaves, ["mesh-edge-shared"], "the first has 3, at (5, 0, 0) mm"),
        ["bow-tie"] = (BowTie, ["mesh-bow-tie"], "first vertex 1 at (0, 0, 0) mm"),
        ["bow-tie at a closed fan"] = (Fan(6).Touching(), ["mesh-bow-tie"], "first vertex 1 at"),
        ["face turned over"] = (Sheet().Turned(f => f == 17), ["mesh-face-turned"], "1 face is turned over against its neighbours, first face 18 at"),
        ["most faces turned over"] = (Sheet().Turned(f => f is not 17 and not 40), ["mesh-face-turned"], "(faces 18, 41)"),
        ["strip with half a twist"] = (Moebius(), ["mesh-one-sided"], "one side only"),
        ["vertex twice in a face"] = (Sheet() with { Faces = [.. Sheet().Faces, (3, 3, 4)] }, ["mesh-face-repeats"], "face 201 at"),
        ["thin face"] = (WithThinFace, ["mesh-face-thin"], "first face 2 at (5, 5, 0) mm"),
        ["loose triangles"] = (Sheet().Loose(), ["mesh-seam"], "at the place of another"),
        ["loose triangles of a tube"] = (Tube().Loose(), ["mesh-seam", "mesh-tube"], ""),
        ["two sheets side by side"] = (Sheet().And(Sheet(), new Vec3(0, 100 + 1e-5, 0)), ["mesh-seam"], "11 vertices lie"),
        ["tube cut open, with a hole"] = (Tube(24, 8, cut: true).Without(100), ["mesh-hole"], "1 hole"), // Cut on purpose: no word of a seam.
        ["slit inside a sheet"] = (Slit(), ["mesh-seam"], "1 vertex lies"),
        ["many at once"] = (Sheet().Turned(f => f == 17).Without(90) with { Faces = [.. Sheet().Turned(f => f == 17).Without(90).Faces, (1, 1, 1)] },
            ["mesh-face-repeats", "mesh-face-turned", "mesh-hole"], ""),
    };

    [Theory]
    [MemberData(nameof(Discs))]
    public void Disc_has_no_fault(string name) => Assert.Empty(DiscCheck.Check(DiscsByName[name]));

    [Theory]
    [MemberData(nameof(Broken))]
    public void What_is_no_disc_is_refused_with_every_reason_once(string name)
    {
        (TriangleMesh mesh, string[] codes, string says) = BrokenByName[name];
        ImmutableArray<DiscFault> faults = DiscCheck.Check(mesh);
        Assert.Equal(codes, faults.Select(f => f.Code));
        Assert.Contains(says, string.Concat(faults.Select(f => f.Message + f.Mend)), StringComparison.Ordinal);
        Assert.All(faults, f => Assert.False(string.IsNullOrWhiteSpace(f.Mend)));
    }

    [Fact]
    public void Names_are_those_of_the_file()
    {
        TriangleMesh mesh = Sheet().Turned(f => f == 17).Without(90);
        var numbers = new MeshNumbers([.. Enumerable.Range(0, mesh.Places.Length).Select(v => 1000 + v)], [.. Enumerable.Range(0, mesh.Faces.Length).Select(f => 5000 + f)]);
        string text = string.Concat(DiscCheck.Check(mesh, numbers).Select(f => f.Message));
        Assert.Contains("face 5017 at", text, StringComparison.Ordinal);
        Assert.Contains("round from vertex 10", text, StringComparison.Ordinal);
        Assert.Contains("round from the one at (", DiscCheck.Check(mesh, numbers with { Vertices = [] })[1].Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Discs))]
    public void Border_goes_once_round_with_the_sheet_on_the_left(string name)
    {
        TriangleMesh mesh = DiscsByName[name];
        ImmutableArray<int> border = DiscCheck.Border(mesh);
        var sides = mesh.Faces.SelectMany(f => new[] { (f.A, f.B), (f.B, f.C), (f.C, f.A) }).ToHashSet();
        Assert.Equal(border.Min(), border[0]);
        Assert.Equal(border.Length, border.Distinct().Count());
        Assert.Equal(sides.Count(s => !sides.Contains((s.Item2, s.Item1))), border.Length);
        for (int i = 0; i < border.Length; i++)
        {
            (int a, int b) = (border[i], border[(i + 1) % border.Length]);
            Assert.Contains((a, b), sides);
            Assert.DoesNotContain((b, a), sides);
        }
    }

    // A quiet machine takes 0.1 s, a busy one with a debugging build may take 3; anything quadratic in the fan takes minutes.
    [Fact]
    public void Two_hundred_thousand_triangles_are_checked_at_once()
    {
        TriangleMesh mesh = Grid(316, 316, (i, j) => new Vec3(i, j, 0)), fan = Fan(200_000);
        DiscCheck.Check(Sheet());
        var watch = Stopwatch.StartNew();
        Assert.Empty(DiscCheck.Check(mesh));
        Assert.Equal(4 * 316, DiscCheck.Border(mesh).Length);
        Assert.Empty(DiscCheck.Check(fan));
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 20);
    }

    // One vertex in the middle of n triangles.
    private static TriangleMesh Fan(int n) => new(
        [Vec3.Zero, .. Enumerable.Range(0, n).Select(k => new Vec3(0, 100 * Math.Cos(Math.Tau * k / n), 100 * Math.Sin(Math.Tau * k / n)))],
        [.. Enumerable.Range(0, n).Select(k => (0, 1 + k, 1 + (k + 1) % n))]);

    // Two triangles that share both ends of an edge, but have the middle of it twice, in the middle of a sheet.
    private static TriangleMesh Slit()
    {
        TriangleMesh sheet = Sheet(4);
        const int middle = 12;
        int twin = sheet.Places.Length;
        return new TriangleMesh([.. sheet.Places, sheet.Places[middle]],
            [.. sheet.Faces.Select(f => Below(f) ? (Swap(f.A), Swap(f.B), Swap(f.C)) : f)]);
        int Swap(int v) => v == middle ? twin : v;
        bool Below((int A, int B, int C) f) => (sheet.Places[f.A].Z + sheet.Places[f.B].Z + sheet.Places[f.C].Z) / 3 < 50;
    }
}

internal static class TouchingMesh
{
    /// <summary>With one more triangle that hangs on the first vertex by a point.</summary>
    public static TriangleMesh Touching(this TriangleMesh mesh)
    {
        int n = mesh.Places.Length;
        return new TriangleMesh([.. mesh.Places, mesh.Places[0] + new Vec3(50, 0, 0), mesh.Places[0] + new Vec3(50, 5, 0)], [.. mesh.Faces, (0, n, n + 1)]);
    }
}
