using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;

namespace SurfaceUnroll.Tests.Patterns.Nesting;

public class NesterTests
{
    private const int Samples = 300, Shares = 6;

    // Places go through a turn and a move and back: some roundings of 1e-16 of the size, ten digits below what a torch can hold.
    private const double Rounding = 1e-6;

    private static readonly Vec2 Right = new(1, 0);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Random_pieces_lie_apart_on_their_sheets_with_their_grain_and_no_worse_than_on_shelves(int share)
    {
        for (int seed = share; seed < Samples; seed += Shares)
        {
            var sample = NestSample.Of(seed);
            NestLayout layout = Nester.OnSheets(sample.Pieces, sample.Stock, sample.Nest);
            Assert.Equal(Enumerable.Range(0, sample.Pieces.Length), layout.Sheets.SelectMany(s => s.Placements.Select(p => p.Panel)).Concat(layout.TooLarge).Order());
            Assert.All(layout.TooLarge, i => Assert.False(Fits(sample, i), $"{seed}: piece {i} fits"));
            foreach (NestedSheet sheet in layout.Sheets)
            {
                LieApart(seed, sample, sheet);
                Assert.All(sheet.Placements, p => Assert.True(MayTurn(sample, sheet, p), $"{seed}: piece {p.Panel} turned by {p.Turn}"));
            }
            NoWorseThanShelves(seed, sample, layout);
            if (seed % 25 == share) Same(layout, Nester.OnSheets(sample.Pieces, sample.Stock, sample.Nest));
        }
    }

    [Fact]
    public void Pieces_that_interlock_lie_on_one_sheet_where_their_boxes_take_two()
    {
        NestPiece triangle = new([new(0, 0), new(300, 0), new(0, 200)]);
        NestLayout layout = Nester.OnSheets([triangle, triangle], [new StockSheet(340, 240, null, false)], NestSpec.Default);
        NestedSheet sheet = Assert.Single(layout.Sheets);
        Assert.Equal(2 * 30_000 / (340.0 * 240), sheet.Use, 1e-9);
        Assert.Equal(layout.Use, sheet.Use, 1e-12);
    }

    [Fact]
    public void Grain_keeps_them_on_two()
    {
        NestPiece triangle = new([new(0, 0), new(300, 0), new(0, 200)]);
        NestPiece up = triangle with { Grain = new Vec2(1, 0) }, across = triangle with { Grain = new Vec2(0, 1) };
        StockSheet sheet = new(340, 240, null, false);
        // Along the grain it may lie upside down, which is how the two interlock; with the grain across the sheet neither fits.
        Assert.Single(Nester.OnSheets([up, up], [sheet], NestSpec.Default).Sheets);
        Assert.Equal<int>([0, 1], Nester.OnSheets([across, across], [sheet], NestSpec.Default).TooLarge);
        Assert.Single(Nester.OnSheets([across, across], [sheet with { GrainAcross = true }], NestSpec.Default).Sheets);
        Assert.Equal(2, Nester.OnSheets([triangle, triangle], [sheet], NestSpec.Default with { Turns = NestTurns.None }).Sheets.Length);
    }

    [Fact]
    public void A_piece_that_just_fits_fits_and_one_a_little_larger_is_named()
    {
        StockSheet sheet = new(1000, 500, null, false);
        NestPiece[] pieces = [Plate(490, 990), Plate(490.01, 990), Plate(100, 100)];
        NestLayout layout = Nester.OnSheets([.. pieces], [sheet], NestSpec.Default);
        Assert.Equal<int>([1], layout.TooLarge);
        Assert.Equal([0, 2], layout.Sheets.SelectMany(s => s.Placements).Select(p => p.Panel).Order());
        Assert.Empty(Nester.OnSheets([.. pieces], [sheet], NestSpec.Default with { Gap = 4 }).TooLarge);
    }

    [Fact]
    public void Few_sheets_come_first_and_then_little_area()
    {
        StockSheet large = new(2000, 1000, null, false), small = new(1000, 500, null, false);
        Assert.Same(small, Assert.Single(Nester.OnSheets([Plate(400, 400), Plate(400, 400)], [large, small], NestSpec.Default).Sheets).Stock);
        Assert.Same(large, Assert.Single(Nester.OnSheets([Plate(900, 400), Plate(900, 400)], [small, large], NestSpec.Default).Sheets).Stock);
        // Sheets that there are go before one more of a size that is used up.
        NestLayout layout = Nester.OnSheets([Plate(900, 400), Plate(900, 400), Plate(900, 400)], [small with { Count = 1 }, large with { Length = 1001, Width = 501, Count = 2 }], NestSpec.Default);
        Assert.Equal([1, 2], layout.Taken.Select(t => t.Count).Order());
        Assert.Equal(3, layout.Sheets.Length);
    }

    [Fact]
    public void A_run_is_as_long_as_its_pieces_pushed_together()
    {
        NestPiece triangle = new([new(0, 0), new(300, 0), new(0, 200)]);
        NestedStrip run = Nester.OnStrip([triangle, triangle], 240, NestSpec.Default);
        // Two triangles across from each other, at least the gap apart square to their long sides; the raster and the grown outlines cost a little.
        double least = 10 + 300 + 5 / Math.Sin(Math.Atan2(200, 300)) - 30 * 300 / 200.0;
        Assert.InRange(run.Length, Math.Max(310, least), 320);
        Assert.Equal(60_000 / (240 * run.Length), run.Use, 1e-9);
        Assert.Equal<int>([0], Nester.OnStrip([Plate(300, 300)], 240, NestSpec.Default).TooLarge);
        Assert.Equal((0, 0), (Nester.OnStrip([], 240, NestSpec.Default).Length, Nester.OnStrip([], 240, NestSpec.Default).Placements.Length));
    }

    [Fact]
    public void A_piece_too_wide_by_its_box_fits_aslant_if_it_may_be_turned()
    {
        NestPiece bar = new([.. new Vec2[] { new(0, 0), new(500, 0), new(500, 40), new(0, 40) }.Select(p => p.Rotate(0.7))]);
        StockSheet narrow = new(520, 60, null, false);
        Assert.Equal<int>([0], Nester.OnSheets([bar], [narrow], NestSpec.Default).TooLarge);
        Assert.Empty(Nester.OnSheets([bar], [narrow], NestSpec.Default with { Turns = NestTurns.Any }).TooLarge);
    }

    private static NestPiece Plate(double width, double height) => new([new(0, 0), new(width, 0), new(width, height), new(0, height)]);

    private static void LieApart(int seed, NestSample sample, NestedSheet sheet)
    {
        double gap = sample.Nest.Gap, tolerance = Rounding * sheet.Stock.Length;
        Polygon[] laid = [.. sheet.Placements.Select(p => Polygons.Of(sample.Pieces[p.Panel].Outline.Select(p.Place)))];
        NetTopologySuite.Geometries.Geometry room = new GeometryFactory().ToGeometry(new Envelope(gap - tolerance, sheet.Stock.Length - gap + tolerance, gap - tolerance, sheet.Stock.Width - gap + tolerance));
        Assert.Equal(laid.Max(p => p.EnvelopeInternal.MaxX), sheet.LengthUsed, tolerance);
        Assert.Equal(laid.Sum(p => p.Area) / (sheet.Stock.Length * sheet.Stock.Width), sheet.Use, 1e-9);
        for (int i = 0; i < laid.Length; i++)
        {
            Assert.True(room.Covers(laid[i]), $"{seed}: piece {sheet.Placements[i].Panel} is off the sheet");
            for (int k = 0; k < i; k++)
            {
                Assert.True(laid[i].Distance(laid[k]) >= gap - tolerance, $"{seed}: pieces {sheet.Placements[k].Panel} and {sheet.Placements[i].Panel} are {laid[i].Distance(laid[k])} apart, not {gap}");
                Assert.True(Polygons.Shared(laid[i], laid[k]).Area <= tolerance * laid[i].Length, $"{seed}: pieces {sheet.Placements[k].Panel} and {sheet.Placements[i].Panel} overlap");
            }
        }
    }

    private static bool MayTurn(NestSample sample, NestedSheet sheet, NestPlacement placement)
    {
        if (sample.Pieces[placement.Panel].Grain is { } grain) return Math.Abs(grain.Rotate(placement.Turn).Cross(sheet.Stock.GrainAcross ? Right.Left : Right)) < 1e-9;
        return sample.Nest.Turns switch
        {
            NestTurns.None => placement.Turn == 0,
            NestTurns.Quarter => Math.Abs(Math.Sin(2 * placement.Turn)) < 1e-9,
            _ => true,
        };
    }

    // By its box at any of the angles that are asked for, on any sheet.
    private static bool Fits(NestSample sample, int piece)
    {
        (ImmutableArray<Vec2> outline, Vec2? grain) = (sample.Pieces[piece].Outline, sample.Pieces[piece].Grain);
        return sample.Stock.Any(sheet =>
        {
            double along = grain is { } g ? (sheet.GrainAcross ? 0.5 * Math.PI : 0) - Math.Atan2(g.Y, g.X) : 0;
            int steps = grain is not null ? 1 : sample.Nest.Turns switch { NestTurns.None => 1, NestTurns.Quarter => 2, _ => 12 };
            return Enumerable.Range(0, steps).Select(k => Box.Around(outline.Select(p => p.Rotate(along + k * Math.PI / steps))))
                .Any(box => box.Width + 2 * sample.Nest.Gap <= sheet.Length && box.Height + 2 * sample.Nest.Gap <= sheet.Width);
        });
    }

    private static void NoWorseThanShelves(int seed, NestSample sample, NestLayout layout)
    {
        ImmutableArray<TurnablePiece> fit = [.. sample.Pieces.Select((p, i) => PieceTurns.Of(i, p, sample.Nest, sample.Stock.Max(s => s.Width) / 50)).Where(p => !layout.TooLarge.Contains(p.Number))];
        if (fit.IsEmpty) return;
        foreach (StockSheet first in sample.Stock)
        {
            foreach (ShelfWay way in Shelves.Ways)
            {
                Packing shelves = Shelves.Lay(fit, [first, .. sample.Stock.Where(s => !ReferenceEquals(s, first)).OrderByDescending(s => s.Length * s.Width)], sample.Nest.Gap, way);
                Assert.All(shelves.Sheets, s => Assert.True(NestCheck.IsSound(s, [.. sample.Pieces.Select(p => p.Outline)]), $"{seed}: shelves"));
                double tolerance = Rounding * first.Length;
                (int, int) count = (Missing(layout), layout.Sheets.Length), against = (shelves.Cost.Missing, shelves.Cost.Count);
                Assert.True(count.CompareTo(against) <= 0, $"{seed}: {count} sheets missing and in all, {against} on shelves");
                if (count != against) continue;
                double area = layout.Sheets.Sum(s => s.Area);
                Assert.True(area <= shelves.Cost.Area + tolerance, $"{seed}: area");
                if (sample.Stock.Length == 1) Assert.True((layout.Sheets.Length - 1) * first.Length + layout.Sheets[^1].LengthUsed <= shelves.Cost.Length + tolerance, $"{seed}: longer than on shelves");
            }
        }
    }

    private static int Missing(NestLayout layout) => layout.Sheets.GroupBy(s => s.Stock, ReferenceEqualityComparer.Instance).Sum(g => ((StockSheet)g.Key!).Count is { } have ? Math.Max(0, g.Count() - have) : 0);

    private static void Same(NestLayout one, NestLayout other)
    {
        Assert.Equal<int>(one.TooLarge, other.TooLarge);
        Assert.Equal(one.Sheets.Select(s => s.Stock), other.Sheets.Select(s => s.Stock));
        Assert.Equal(one.Sheets.SelectMany(s => s.Placements), other.Sheets.SelectMany(s => s.Placements));
    }
}
