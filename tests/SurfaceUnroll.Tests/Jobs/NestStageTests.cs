using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Jobs;

public class NestStageTests
{
    // The shell of the hood is 600 mm wide and 536 mm long, its bends across: the grain must run lengthwise. 550 mm between the gaps are too little for its width.
    private const string Narrow = "{ \"size\": [650, 560] }";

    [Fact]
    public void A_piece_that_its_grain_keeps_off_the_sheet_is_told_so()
    {
        Notice notice = Assert.Single(Hood(Narrow, "{ }").Notices, n => n.Code == "stock-too-small");
        Assert.Contains("“shell” does not fit on a sheet of 650 mm × 560 mm with its grain along that of the sheet", notice.Message, StringComparison.Ordinal);
        // To turn it by any angle would not help: the grain binds it.
        Assert.DoesNotContain("turns", notice.Mend, StringComparison.Ordinal);
        Assert.Contains(Hood(Narrow, "{ \"turns\": \"any\" }").Notices, n => n.Code == "stock-too-small");
    }

    [Theory]
    [InlineData("{ \"size\": [650, 560] }", "{ \"grain\": \"free\" }", "\"grain\": \"free\"")]
    [InlineData("{ \"size\": [650, 560], \"grain\": \"short\" }", "{ }", "grain runs the other way")]
    [InlineData("{ \"size\": [650, 612] }", "{ }", "larger sheets")]
    public void Every_mend_that_it_is_told_works(string stock, string nest, string told)
    {
        Assert.Contains(told, Assert.Single(Hood(Narrow, "{ }").Notices, n => n.Code == "stock-too-small").Mend, StringComparison.Ordinal);
        Assert.DoesNotContain(Hood(stock, nest).Notices, n => n.Code == "stock-too-small");
    }

    [Fact]
    public void Turns_are_spoken_of_only_where_they_help()
    {
        // 300 × 20 mm at 45° takes 226 × 226 mm.
        ImmutableArray<Vec2> bar = [.. new Vec2[] { new(0, 0), new(300, 0), new(300, 20), new(0, 20) }.Select(p => p.Rotate(Math.PI / 4))];
        NestSpec quarter = new(5, NestTurns.Quarter), any = quarter with { Turns = NestTurns.Any };
        ImmutableArray<StockSheet> strip = [new(320, 100, null, false)], tiny = [new(200, 200, null, false)];
        Assert.Equal(new NestRelief(FreeGrain: false, AnyTurn: true, OtherGrain: false), NestRelief.Of(new NestPiece(bar), strip, quarter));
        Assert.Null(NestRelief.Of(new NestPiece(bar), tiny, quarter));
        Assert.Null(NestRelief.Of(new NestPiece(bar), tiny, any));
        // Bound by its grain as well, which runs at 45° to the bar.
        Assert.Equal(new NestRelief(FreeGrain: true, AnyTurn: true, OtherGrain: false), NestRelief.Of(new NestPiece(bar, new Vec2(1, 0)), strip, quarter));
        Assert.Equal(new NestRelief(FreeGrain: true, AnyTurn: false, OtherGrain: false), NestRelief.Of(new NestPiece(bar, new Vec2(1, 0)), strip, any));
    }

    [Theory]
    [InlineData(3, 0, 6.3)]
    [InlineData(3, 5, 6.3)]
    [InlineData(2, 5, 5)]
    public void Pieces_keep_so_far_apart_that_no_cut_reaches_the_next(double kerf, double gap, double kept)
    {
        Development development = Hood("{ \"size\": [2000, 1000] }", System.FormattableString.Invariant($"{{ \"gap\": {gap} }}, \"cutting\": {{ \"kerf\": {kerf} }}"));
        Assert.Equal(kept, NestStage.GapOf(development.Job), 1e-9);
        Assert.Equal(kept > gap, development.Notices.Any(n => n.Code == "nest-gap-kerf"));
    }

    private static Development Hood(string stock, string nest) => Developer.Develop(JobFile.Read(File.ReadAllText(Fixtures.PathOf("jobs/bench-hood.json"))
        .Replace("\"stock\": { \"size\": [2000, 1000], \"count\": 1 }", $"\"stock\": {stock}, \"nest\": {nest}", StringComparison.Ordinal)).Job!);
}
