using System.Collections.Immutable;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Fitness;

public class PieceTests
{
    private static Development Split(int pieces, SeamDirection along = SeamDirection.Lengthwise) =>
        Crowned.Develop(Crowned.Side, p => p with { Pieces = pieces, Along = along });

    [Theory]
    [InlineData(SeamDirection.Lengthwise)]
    [InlineData(SeamDirection.Across)]
    public void Table_of_one_piece_to_six_never_rises_in_strain_and_always_in_weld(SeamDirection along)
    {
        var grid = Crowned.Grid(Crowned.Side);
        ImmutableArray<PieceChoice> table = new PieceSearch(grid, along, 1).Table(grid);
        Assert.Equal(Enumerable.Range(1, PieceSearch.MostPieces), table.Select(c => c.Pieces));
        Assert.Equal(0, table[0].WeldLength);
        for (int i = 1; i < table.Length; i++)
        {
            Assert.True(Math.Max(table[i].MaxStretch, table[i].MaxShrink) <= Math.Max(table[i - 1].MaxStretch, table[i - 1].MaxShrink));
            Assert.True(table[i].WeldLength > table[i - 1].WeldLength);
        }
    }

    [Fact]
    public void Worst_strain_of_the_pieces_as_flattened_never_rises_and_is_about_what_the_table_says()
    {
        double before = double.PositiveInfinity;
        for (int n = 1; n <= PieceSearch.MostPieces; n++)
        {
            Development result = Split(n);
            Assert.Equal(n, result.Panels.Length);
            double worst = result.Panels.Max(p => Crowned.Worst(p.Strain));
            Assert.True(worst <= before, $"{n} pieces: {worst} after {before}");
            before = worst;
            // The table goes by a coarse grid, whose chords hide part of the bow: it is there to choose by.
            PieceChoice told = result.Panels[0].Choices[n - 1];
            Assert.InRange(Math.Max(told.MaxStretch, told.MaxShrink) / worst, 0.7, 1.4);
        }
    }

    [Theory]
    [InlineData(SeamDirection.Lengthwise, "right", "left", "front", "rear")]
    [InlineData(SeamDirection.Across, "rear", "front", "left", "right")]
    public void Pieces_add_up_to_the_whole_and_their_seams_match(SeamDirection along, string seam, string mate, string split, string otherSplit)
    {
        PanelDevelopment whole = Split(1).Panels[0];
        ImmutableArray<PanelDevelopment> pieces = Split(3, along).Panels;
        // The same triangles.
        Assert.Equal(whole.FormedArea, pieces.Sum(p => p.FormedArea), 1e-9 * whole.FormedArea);
        // An arc is taken to be longer than its chord by θ²/24, θ from the turns at both its ends; at a seam one of them is not known. Turns are below 0.05 rad, so a chord
        // is out by less than 2e-4 of itself and the edge, of 20 chords or more, by less than 1e-5 at each seam.
        foreach (string edge in new[] { split, otherSplit })
            Assert.Equal(whole.FindEdge(edge)!.FormedLength, pieces.Sum(p => p.FindEdge(edge)!.FormedLength), 2e-5 * whole.FindEdge(edge)!.FormedLength);
        double welds = 0;
        for (int k = 0; k + 1 < pieces.Length; k++)
        {
            Assert.Equal(pieces[k].FindEdge(seam)!.FormedLength, pieces[k + 1].FindEdge(mate)!.FormedLength, 1e-9);
            welds += pieces[k].FindEdge(seam)!.FormedLength;
        }
        // The table counts chords, within 0.01 mm of the arcs: 1e-4 of the length.
        Assert.Equal(welds, pieces[0].Choices[2].WeldLength, 1e-4 * welds);
    }

    [Fact]
    public void Pieces_are_named_and_numbered()
    {
        Development result = Split(2);
        Assert.Equal(["sheet 1 of 2", "sheet 2 of 2"], result.Panels.Select(p => p.Spec.Name));
        Assert.Equal([new PieceOfPanel("sheet", 1, 2), new PieceOfPanel("sheet", 2, 2)], result.Panels.Select(p => p.Piece!));
    }

    [Fact]
    public void An_outer_edge_is_held_on_the_piece_that_has_it()
    {
        Development result = Crowned.Develop(Crowned.Side, p => p with { Pieces = 2, Hold = ["left", "front"] });
        Assert.Equal("left, front", string.Join(", ", result.Panels[0].Spec.Hold));
        Assert.Equal("front", string.Join(", ", result.Panels[1].Spec.Hold));
    }

    [Theory]
    [InlineData("front", 120, 1)]
    [InlineData("front", 30, 0)]
    [InlineData("left", 150, 0)]
    [InlineData("right", 150, 1)]
    public void A_relief_cut_of_the_whole_goes_to_the_piece_in_which_it_lies(string edge, double at, int piece)
    {
        ImmutableArray<PanelDevelopment> pieces = Crowned.Develop(Crowned.Side, p => p with { Pieces = 2, Slits = [new SlitSpec(edge, at, 25)] }).Panels;
        SlitOpening slit = Assert.Single(pieces[piece].Slits);
        Assert.Empty(pieces[1 - piece].Slits);
        Assert.Equal(edge == "front" && piece == 1 ? at - pieces[0].FindEdge("front")!.FormedLength : at, slit.At, 0.01);
    }
}
