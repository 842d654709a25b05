using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Uncertainty;

/// <summary>Ends of a panel's curves that meet on the part. Read apart they come out apart, but the part has one place there: it is taken half way between them, and each curve gives
/// way, evenly from end to end. A closed curve stays closed.</summary>
internal sealed class SharedEnds
{
    // Ends no farther apart than this meet, mm: as on a plate.
    private const double Meeting = 0.05;

    // Below this, mm, there is nothing to draw together.
    private const double Rounding = 1e-9;

    // A curve whose ends stand nearer to each other, mm, is moved whole.
    private const double Near = 1;

    private readonly ImmutableArray<ImmutableArray<(string Curve, bool Start)>> _places;

    private readonly ImmutableArray<string> _closed;

    /// <summary>The ends that meet among the curves of a panel as they were read.</summary>
    /// <param name="names">Names of its curves, each once.</param>
    /// <param name="curves">Curves by name.</param>
    public SharedEnds(IEnumerable<string> names, IReadOnlyDictionary<string, SpaceCurve> curves)
    {
        var places = new List<(Vec3 Place, List<(string, bool)> Ends)>();
        var closed = new List<string>();
        foreach (string name in names)
        {
            SpaceCurve curve = curves[name];
            if ((curve.End.Point - curve.Start.Point).Length <= Meeting)
            {
                closed.Add(name);
                continue;
            }
            foreach (bool start in new[] { true, false })
            {
                Vec3 end = (start ? curve.Start : curve.End).Point;
                if (places.Find(p => (p.Place - end).Length <= Meeting) is { Ends: { } found }) found.Add((name, start));
                else places.Add((end, [(name, start)]));
            }
        }
        _closed = [.. closed];
        _places = [.. places.Where(p => p.Ends.Count > 1).Select(p => p.Ends.ToImmutableArray())];
    }

    /// <summary>The curves, drawn together where their ends met.</summary>
    public IReadOnlyDictionary<string, SpaceCurve> Closed(IReadOnlyDictionary<string, SpaceCurve> curves)
    {
        var pulls = new Dictionary<string, (Vec3 Start, Vec3 End)>();
        foreach (ImmutableArray<(string Curve, bool Start)> place in _places)
        {
            Vec3[] ends = [.. place.Select(e => (e.Start ? curves[e.Curve].Start : curves[e.Curve].End).Point)];
            Vec3 middle = ends.Aggregate(Vec3.Zero, (sum, end) => sum + end) / ends.Length;
            foreach (((string name, bool start), Vec3 end) in place.Zip(ends))
            {
                (Vec3 atStart, Vec3 atEnd) = pulls.GetValueOrDefault(name);
                pulls[name] = start ? (middle - end, atEnd) : (atStart, middle - end);
            }
        }
        foreach (string name in _closed) pulls[name] = (Vec3.Zero, curves[name].Start.Point - curves[name].End.Point);
        if (pulls.Values.All(p => p.Start.Length + p.End.Length < Rounding)) return curves;
        return curves.ToDictionary(c => c.Key, c => !pulls.TryGetValue(c.Key, out (Vec3 Start, Vec3 End) pull) ? c.Value : _closed.Contains(c.Key) ? Bent(c.Value, pull.End) : Pulled(c.Value, pull.Start, pull.End));
    }

    private static SpaceCurve Pulled(SpaceCurve curve, Vec3 atStart, Vec3 atEnd)
    {
        Vec3 from = curve.Start.Point, span = curve.End.Point - from;
        bool whole = span.Length < Near;
        Vec3 axis = whole ? Vec3.Zero : span / span.Dot(span), shift = whole ? 0.5 * (atStart + atEnd) : atStart;
        return new SpaceCurve([.. curve.Pieces.Select(p => new PulledPiece(p, from, axis, shift, atEnd - atStart))]);
    }

    // What is missing at its seam spread over the length of a closed curve: a constant is added to its unit tangent everywhere.
    private static SpaceCurve Bent(SpaceCurve curve, Vec3 missing)
    {
        double start = 0;
        var pieces = ImmutableArray.CreateBuilder<CurvePiece>(curve.Pieces.Length);
        for (int i = 0; i < curve.Pieces.Length; start += curve.PieceLengths[i++]) pieces.Add(new SpreadPiece(curve.Pieces[i], start, missing / curve.Length));
        return missing.Length < Rounding ? curve : new SpaceCurve(pieces.MoveToImmutable());
    }

    private sealed class SpreadPiece(CurvePiece piece, double start, Vec3 slope) : CurvePiece
    {
        public override bool IsStraight => piece.IsStraight;

        public override CurveSample At(double t)
        {
            CurveSample s = piece.At(t);
            double speed = s.D1.Length;
            return new CurveSample(s.Point + (start + piece.Length(0, t)) * slope, s.D1 + speed * slope, s.D2 + s.D1.Dot(s.D2) / speed * slope);
        }
    }

    // Moved by what changes evenly from the first end of the curve to its last, as measured along the straight line between them: no smooth curve gets a corner by it.
    private sealed class PulledPiece(CurvePiece piece, Vec3 from, Vec3 axis, Vec3 shift, Vec3 more) : CurvePiece
    {
        public override bool IsStraight => piece.IsStraight;

        public override CurveSample At(double t)
        {
            CurveSample s = piece.At(t);
            return new CurveSample(s.Point + shift + (s.Point - from).Dot(axis) * more, s.D1 + s.D1.Dot(axis) * more, s.D2 + s.D2.Dot(axis) * more);
        }
    }
}
