using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;

namespace SurfaceUnroll.Tests.Patterns.Nesting;

/// <summary>Pieces, sheets, gaps and turns drawn by lot, the same for the same number.</summary>
internal sealed record NestSample(ImmutableArray<NestPiece> Pieces, ImmutableArray<StockSheet> Stock, NestSpec Nest)
{
    public static NestSample Of(int seed)
    {
        var random = new Random(seed);
        double unit = Math.Pow(10, 2 * random.NextDouble());
        NestTurns turns = random.Next(3) switch { 0 => NestTurns.None, 1 => NestTurns.Any, _ => NestTurns.Quarter };
        ImmutableArray<NestPiece> pieces =
        [
            .. Enumerable.Range(0, random.Next(1, 8)).Select(_ => new NestPiece(Shape(random, unit * (1 + 9 * random.NextDouble())), random.Next(4) == 0 ? Vec2.FromAngle(Math.PI * random.NextDouble()) : null)),
        ];
        ImmutableArray<StockSheet> stock =
        [
            .. Enumerable.Range(0, random.Next(1, 4)).Select(_ => unit * (8 + 12 * random.NextDouble()))
                .Select(length => new StockSheet(length, length * (0.4 + 0.6 * random.NextDouble()), random.Next(2) == 0 ? null : random.Next(1, 3), random.Next(2) == 0)),
        ];
        return new NestSample(pieces, stock, new NestSpec(random.Next(4) switch { 0 => 0, 1 => 0.02 * unit, 2 => 0.2 * unit, _ => unit }, turns));
    }

    private static ImmutableArray<Vec2> Shape(Random random, double size)
    {
        double aspect = 0.2 + 0.8 * random.NextDouble(), turn = random.Next(2) * random.NextDouble();
        ImmutableArray<Vec2> shape = random.Next(6) switch
        {
            0 => [new(0, 0), new(1, 0), new(1, aspect), new(0, aspect)],
            1 => [new(0, 0), new(1, 0), new(1, 0.2), new(0.2, 0.2), new(0.2, aspect + 0.2), new(0, aspect + 0.2)],
            // A sliver.
            2 => [new(0, 0), new(1, 0.002), new(0.5, 0.004)],
            // A ring that is almost closed: its bay is no room once the gap is wider than the mouth.
            3 => Ring(0.5, 0.3, 2 * Math.PI - 0.3 - random.NextDouble()),
            4 => Ring(1, 0.5 + 0.4 * random.NextDouble(), 0.4 + 2 * random.NextDouble()),
            _ => Star(random),
        };
        return [.. shape.Select(p => (size * p).Rotate(turn))];
    }

    private static ImmutableArray<Vec2> Ring(double outer, double inner, double angle) =>
        [.. Enumerable.Range(0, 121).Select(i => outer * Vec2.FromAngle(angle * i / 120)), .. Enumerable.Range(0, 121).Select(i => inner * Vec2.FromAngle(angle * (120 - i) / 120))];

    private static ImmutableArray<Vec2> Star(Random random)
    {
        int corners = random.Next(3, 14);
        return [.. Enumerable.Range(0, corners).Select(i => (0.1 + 0.4 * random.NextDouble()) * Vec2.FromAngle(2 * Math.PI * i / corners))];
    }
}
