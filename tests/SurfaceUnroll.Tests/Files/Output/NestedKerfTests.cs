using System.Collections.Immutable;
using System.Text;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Proof;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Files.Output;

/// <summary>Nested cut files with a kerf, read back.</summary>
public class NestedKerfTests
{
    // The line that arcs are fitted to is drawn in chords, this near to the exact one, mm.
    private const double Chords = 0.005;

    [Theory]
    [InlineData(0.4, 5)]
    [InlineData(6, 2)]
    public void Outlines_are_cut_outside_openings_inside_and_no_cut_burns_the_next_piece(double kerf, double gap)
    {
        Development development = Develop(kerf, gap);
        ImmutableArray<OutputFile> files = PatternFiles.Of(development);
        double half = 0.5 * kerf;
        Assert.NotEmpty(development.Nest!.Sheets);
        for (int i = 0; i < development.Nest.Sheets.Length; i++)
        {
            NestedSheet sheet = development.Nest.Sheets[i];
            string Text(string ending) => Encoding.UTF8.GetString(files.Single(f => f.Name == System.FormattableString.Invariant($"nested-{i + 1}.{ending}")).Content.Span);
            // The SVG of a sheet is upright as the sheet is.
            foreach (LineSet cuts in new[] { DxfCut.Read(Text("dxf"), "CUT").Lines, SvgCut.Read(Text("svg"), "cut").Lines })
            {
                Polygon[] paths = [.. cuts.Paths.Select(p => Polygons.Of(p[..^1]))];
                Polygon[] pieces = [.. sheet.Placements.Select(p => Piece(development.Panels[p.Panel], p))];
                Assert.Equal(pieces.Sum(p => 1 + p.NumInteriorRings), paths.Length);
                var burnt = NetTopologySuite.Operation.Union.UnaryUnionOp.Union([.. paths.Select(p => p.ExteriorRing.Buffer(half - CutPathFit.Tolerance - Chords))]);
                foreach (Polygon piece in pieces)
                {
                    // Nothing of the metal is burnt away: the cut runs half a kerf beside it, less what arcs and chords may miss by.
                    Assert.False(burnt.Intersects(piece), "a cut reaches into a piece");
                    // One path goes round it, and one runs in each of its openings.
                    var solid = new Polygon((LinearRing)piece.ExteriorRing);
                    Assert.Single(paths, p => p.Contains(solid));
                    foreach (LineString hole in piece.InteriorRings) Assert.Single(paths, p => new Polygon((LinearRing)hole).Contains(p));
                }
            }
        }
    }

    private static Polygon Piece(PanelDevelopment panel, NestPlacement placement) =>
        Polygons.Of(panel.Cut.Select(placement.Place), panel.Openings.Select(o => ImmutableArray.CreateRange(o.Cut.Select(placement.Place))));

    private static Development Develop(double kerf, double gap) => Developer.Develop(JobFile.Read(File.ReadAllText(Fixtures.PathOf("jobs/bench-hood.json"))
        .Replace("\"stock\": {", System.FormattableString.Invariant($"\"cutting\": {{ \"kerf\": {kerf} }}, \"nest\": {{ \"gap\": {gap} }}, \"stock\": {{"), StringComparison.Ordinal)).Job!);
}
