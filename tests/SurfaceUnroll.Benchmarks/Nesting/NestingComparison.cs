using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;

namespace SurfaceUnroll.Benchmarks.Nesting;

/// <summary>Shelf packing and nesting side by side on twenty fixed sets of pieces: sheets, use of the length of sheet that is taken, and time.</summary>
internal static class NestingComparison
{
    private const int Sets = 20;

    public static int Run()
    {
        Console.WriteLine("set  pieces  turns    sheets         length used, mm      use, %          seconds");
        Console.WriteLine("                      shelf  nested  shelf   nested       shelf  nested   nested");
        (double shelf, double nested, double seconds) sums = default;
        for (int set = 0; set < Sets; set++)
        {
            ImmutableArray<NestPiece> pieces = Pieces(set);
            var nest = new NestSpec(5, set % 2 == 0 ? NestTurns.Quarter : NestTurns.Any);
            var stock = new StockSheet(2000, 1000, null, false);
            ImmutableArray<TurnablePiece> turnable = [.. pieces.Select((p, i) => PieceTurns.Of(i, p, nest, 5))];
            Packing shelves = Shelves.Ways.Select(way => Shelves.Lay(turnable, [stock], nest.Gap, way)).MinBy(p => p.Cost)!;
            var clock = Stopwatch.StartNew();
            NestLayout layout = Nester.OnSheets(pieces, [stock], nest);
            double seconds = clock.Elapsed.TotalSeconds, area = pieces.Sum(p => Polygons.SignedArea(p.Outline));
            double shelfLength = shelves.Cost.Length, length = (layout.Sheets.Length - 1) * stock.Length + layout.Sheets[^1].LengthUsed;
            (double shelfUse, double use) = (100 * area / (shelfLength * stock.Width), 100 * area / (length * stock.Width));
            sums = (sums.shelf + shelfUse, sums.nested + use, sums.seconds + seconds);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{set + 1,3}  {pieces.Length,6}  {nest.Turns,-7}  {shelves.Sheets.Length,5}  {layout.Sheets.Length,6}  {shelfLength,6:F0}  {length,6:F0}       {shelfUse,5:F1}  {use,6:F1}   {seconds,6:F2}"));
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"mean use {sums.shelf / Sets:F1} % on shelves, {sums.nested / Sets:F1} % nested; {sums.seconds / Sets:F2} s a set"));
        return 0;
    }

    // Gores, elbows, brackets, rings' sectors and plates, 4 to 42 of them.
    private static ImmutableArray<NestPiece> Pieces(int set)
    {
        var random = new Random(1000 + set);
        return [.. Enumerable.Range(0, 4 + 2 * set).Select(_ => new NestPiece(Shape(random), random.Next(5) == 0 ? Vec2.FromAngle(random.NextDouble() * Math.PI) : null))];
    }

    private static ImmutableArray<Vec2> Shape(Random random)
    {
        double a = 80 + 420 * random.NextDouble(), b = 60 + 240 * random.NextDouble();
        return random.Next(5) switch
        {
            0 => [.. Enumerable.Range(0, 61).Select(i => new Vec2(a * i / 60, -b * 0.5 * Math.Sin(Math.PI * i / 60))), .. Enumerable.Range(1, 59).Select(i => new Vec2(a * (60 - i) / 60, b * 0.5 * Math.Sin(Math.PI * i / 60)))],
            1 => [new(0, 0), new(a, 0), new(a, 0.3 * b), new(0.25 * a, 0.3 * b), new(0.25 * a, b), new(0, b)],
            2 => [new(0, 0), new(a, 0), new(0.3 * a, b), new(0.1 * a, b)],
            3 => Sector(a, 0.45 * a, 1 + 1.6 * random.NextDouble()),
            _ => [new(0, 0), new(a, 0), new(a, 0.7 * b), new(0.8 * a, b), new(0, b)],
        };
    }

    private static ImmutableArray<Vec2> Sector(double outer, double inner, double angle) =>
        [.. Enumerable.Range(0, 81).Select(i => outer * Vec2.FromAngle(angle * i / 80)), .. Enumerable.Range(0, 81).Select(i => inner * Vec2.FromAngle(angle * (80 - i) / 80))];
}
