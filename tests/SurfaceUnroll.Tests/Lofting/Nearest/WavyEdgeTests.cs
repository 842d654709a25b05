using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Lofting.Nearest;

/// <summary>Edges that were read with a millimetre of error, or that go in and out (invented).</summary>
public class WavyEdgeTests
{
    private const string
        Arch = """
            { "run": [ { "line": 40 }, { "arc": 110, "turn": 180 }, { "line": 40 } ], "at": { "lean": 8 } }
            """,
        // Half a circle whose radius goes in and out by 6 mm.
        Lobes = """
            { "points": [
            [-150, 0], [-149.2, 15.7], [-147, 31.2], [-142.8, 46.4], [-136.5, 60.8], [-128.6, 74.2], [-120.4, 87.5], [-112.1, 100.9], [-102.5, 113.8],
            [-90, 123.9], [-75, 129.9], [-59.4, 133.3], [-44.8, 137.7], [-30.8, 145], [-16, 152.6], [0, 156], [16, 152.6], [30.8, 145], [44.8, 137.7],
            [59.4, 133.3], [75, 129.9], [90, 123.9], [102.5, 113.8], [112.1, 100.9], [120.4, 87.5], [128.6, 74.2], [136.5, 60.8], [142.8, 46.4], [147, 31.2],
            [149.2, 15.7], [150, 0]
            ], "at": { "origin": [320, 0, 0] } }
            """,
        RoughFront = """
            { "points": [
            [-110, 0], [-110.2, 14.5], [-109.2, 27.1], [-109.9, 40.1], [-106.4, 69], [-95.9, 96.5], [-76.4, 118.1], [-53.8, 136.6], [-28.5, 145.6], [0.9, 148.7],
            [29.4, 146.7], [54.3, 133.1], [78.1, 118.5], [95.7, 92.5], [106.6, 68.7], [110, 39.1], [108.5, 28], [110, 11.9], [110, 0]
            ], "at": { "lean": 8 } }
            """,
        RoughRear = """
            { "points": [
            [-150, 0], [-148.9, 12.1], [-149.5, 25.3], [-150.3, 39.8], [-143, 77.6], [-130.7, 116.1], [-103.5, 144.8], [-73.9, 166.4], [-40.5, 185.9],
            [0.7, 190.9], [39.7, 185.4], [76, 169], [108, 146.4], [129.2, 114], [144.7, 79.6], [150.6, 41.3], [152.3, 27.4], [151.1, 14.2], [150, 0]
            ], "at": { "origin": [320, 0, 0] } }
            """;

    private static Development Cowl(string front, string rear, double freedom) => Developer.Develop(JobFile.Read(FormattableString.Invariant(
        $$"""{ "job": "Cowl", "units": "mm", "measured": "outside", "sheet": { "material": "mild steel", "thickness": 0.8 }, "curves": { "front": {{front}}, "rear": {{rear}} }, "panels": [ { "name": "cowl", "loft": ["front", "rear"], "freedom": { "rear": {{freedom}} } } ] }""")).Job!);

    [Theory]
    [InlineData(4)]
    [InlineData(12)]
    public void An_edge_with_lobes_is_moved_and_its_sheet_is_one_piece(double freedom)
    {
        Development done = Cowl(Arch, Lobes, freedom);
        Assert.False(done.Failed, string.Join("; ", done.Notices.Select(n => n.Message)));
        PanelDevelopment cowl = Assert.Single(done.Panels);
        Assert.InRange(Math.Abs(cowl.Freedom!.Largest.Move), 0.1, freedom);
        Assert.InRange(cowl.Twist.Max, 0, 0.01 * Math.PI / 180);
        // Element lines that differ by rounding alone leave no crack: there is one rim, and it is as long as the four edges.
        ImmutableArray<int> rim = Assert.Single(MeshBorders.Of(cowl.Mesh));
        Assert.Equal(cowl.Edges.Sum(e => e.FlatLength), rim.Zip([.. rim.Skip(1), rim[0]], (a, b) => (cowl.Mesh.Flat[a] - cowl.Mesh.Flat[b]).Length).Sum(), 0.05);
    }

    [Fact]
    public void A_search_that_finds_nothing_says_so_in_numbers()
    {
        Development done = Cowl(RoughFront, RoughRear, 6);
        Assert.False(done.Failed, string.Join("; ", done.Notices.Select(n => n.Message)));
        Assert.All(done.Notices, n => Assert.DoesNotContain("NaN", n.Message + n.Mend, StringComparison.Ordinal));
        Assert.Contains(done.Notices, n => n.Code.StartsWith("freedom-", StringComparison.Ordinal));
    }
}
