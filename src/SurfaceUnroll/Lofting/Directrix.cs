using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>A directrix at one place: where it is and which way it runs.</summary>
/// <param name="Point">mm.</param>
/// <param name="Tangent">Any nonzero length.</param>
internal readonly record struct DirectrixSample(Vec3 Point, Vec3 Tangent);

/// <summary>A measured curve as an edge to match element lines on, over one coordinate from 0 at its left end to 1 at its right end.</summary>
/// <remarks>A corner takes a stretch of the coordinate of its own, over which the place stands still while the tangent swings from one side's
/// to the other's. Tangent and place are then continuous everywhere, and a fan of element lines at a corner is found by the same
/// root search as any other line.</remarks>
internal sealed class Directrix
{
    // Coordinate given to a half turn of corner, as a fraction of that given to the curve's whole length. It only has to be wide enough
    // for the lattice to see the tangent swing in small steps.
    private const double CornerShare = 0.1;

    // Tangents this close (radians) are one tangent: above the rounding of curve kinds, far below any angle that can be bent.
    private const double SmoothAngle = 1e-7;

    // Coordinates this close are one: a root search ends within a few units of the last place.
    private const double Rounding = 1e-12;

    private readonly ImmutableArray<Span> spans;
    private readonly ImmutableArray<int> spanOfPiece;

    public Directrix(SpaceCurve curve)
    {
        Curve = curve;
        Length = curve.Length;
        var parts = new List<Span>();
        var places = ImmutableArray.CreateBuilder<int>();
        for (int i = 0; i < curve.Pieces.Length; i++)
        {
            CurvePiece piece = curve.Pieces[i];
            if (i > 0 && CornerBetween(curve.Pieces[i - 1].At(1), piece.At(0)) is { } corner) parts.Add(corner);
            places.Add(parts.Count);
            parts.Add(new Span(0, curve.PieceLengths[i], piece, default, default, default));
        }
        double extent = parts.Sum(p => p.End), x = 0;
        spans = [.. parts.Select(p => p with { Start = x, End = x += p.End / extent })];
        spans = spans.SetItem(spans.Length - 1, spans[^1] with { End = 1 });
        spanOfPiece = places.ToImmutable();
        Joints = [0, .. spans.Select(span => span.End)];
    }

    /// <summary>The curve as measured.</summary>
    public SpaceCurve Curve { get; }

    /// <summary>Arc length, mm.</summary>
    public double Length { get; }

    /// <summary>Coordinates where spans join, 0 and 1 included, increasing.</summary>
    public ImmutableArray<double> Joints { get; }

    /// <summary>Place and tangent at a coordinate in [0, 1].</summary>
    public DirectrixSample At(double x)
    {
        Span span = spans[SpanAt(x)];
        double t = span.Fraction(x);
        if (span.Piece is { } piece)
        {
            CurveSample sample = piece.At(t);
            return new DirectrixSample(sample.Point, sample.D1);
        }
        return new DirectrixSample(span.Corner, Swing(span.From, span.To, t));
    }

    /// <summary>Coordinate at an arc length from the left end; the left side of a corner.</summary>
    public double AtLength(double s)
    {
        (int piece, double t) = Curve.Locate(s);
        Span span = spans[spanOfPiece[piece]];
        return span.Start + t * (span.End - span.Start);
    }

    /// <summary>Arc length from the left end at a coordinate, mm.</summary>
    public double LengthAt(double x)
    {
        int at = SpanAt(x);
        double before = 0;
        for (int i = 0; i < spanOfPiece.Length && spanOfPiece[i] < at; i++) before += Curve.PieceLengths[i];
        return before + (spans[at].Piece?.Length(0, spans[at].Fraction(x)) ?? 0);
    }

    /// <summary>True if the place stands still between two neighbouring coordinates.</summary>
    public bool StandsStill(double x0, double x1) => x1 - x0 <= Rounding || spans[SpanAt(0.5 * (x0 + x1))].Piece is null;

    /// <summary>Coordinates to sample from <paramref name="from"/> to <paramref name="to"/>: every joint, and about <paramref name="count"/> steps to a whole curve.</summary>
    public ImmutableArray<double> Samples(double from, double to, int count)
    {
        var xs = ImmutableArray.CreateBuilder<double>();
        xs.Add(from);
        foreach (Span span in spans)
        {
            double a = Math.Max(span.Start, from), b = Math.Min(span.End, to);
            if (b <= a) continue;
            // At least four steps in each span: short arcs and corners carry most of the bend.
            int steps = Math.Max(4, (int)Math.Ceiling(count * (b - a)));
            for (int i = 1; i <= steps; i++)
                xs.Add(i == steps ? b : a + (b - a) * i / steps);
        }
        return xs.ToImmutable();
    }

    // A corner as a span whose End holds its width until the coordinates are laid out; null where the tangents agree.
    private Span? CornerBetween(CurveSample before, CurveSample after)
    {
        double angle = before.D1.AngleTo(after.D1);
        return angle > SmoothAngle
            ? new Span(0, CornerShare * angle / Math.PI * Length, null, after.Point, before.Tangent, after.Tangent)
            : null;
    }

    private int SpanAt(double x)
    {
        int lo = 0, hi = spans.Length - 1;
        while (lo < hi)
        {
            int mid = (lo + hi) / 2;
            if (x <= spans[mid].End) hi = mid; else lo = mid + 1;
        }
        return lo;
    }

    // Great-circle turn from one unit tangent to the other. Exactly opposed tangents have no unique plane; curve building refuses them.
    private static Vec3 Swing(Vec3 from, Vec3 to, double t)
    {
        double angle = from.AngleTo(to);
        return (Math.Sin((1 - t) * angle) * from + Math.Sin(t * angle) * to).Unit;
    }

    private readonly record struct Span(double Start, double End, CurvePiece? Piece, Vec3 Corner, Vec3 From, Vec3 To)
    {
        public double Fraction(double x) => Math.Clamp((x - Start) / (End - Start), 0, 1);
    }
}
