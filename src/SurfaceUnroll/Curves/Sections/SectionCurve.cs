using System.Collections.Immutable;
using SurfaceUnroll.Curves.Drawn;
using SurfaceUnroll.Curves.Fairing;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Curves.Sections;

/// <summary>Makes one clean curve of a plane's cut through a scan, in its own axes as (0, across, up).</summary>
internal static class SectionCurve
{
    // Of the scatter: groups of section points are at least this long, so that scatter does not make the row of their means run to and fro.
    private const double GroupLength = 4;

    // A curve of more points is grouped further: three millimetres apart on a part of a metre.
    private const int MostPoints = 300;

    // Of the mean distance of section points: neighbours share a corner of their triangles and err together, those two triangles apart do not. But no groups are made that would
    // cut corners off a coarse mesh: of the noise.
    private const double Apart = 2, MostApart = 20;

    // The next parameter of each point is where it stands on the curve; after this many rounds that moves the curve by nothing that counts.
    private const int Rounds = 3;

    // In the number of scatters: one point in 15,000 lies this far off by chance; what does is a spike, unless many neighbours do.
    private const double Spike = 4;

    private const int WidestSpike = 3;

    // Of the noise: a curve that is right leaves the points by just the noise in the mean, give or take; held to less than that it would have to follow it.
    private const double Room = 1.25;

    /// <summary>The curve of a section.</summary>
    public static OwnCurve Of(SectionSpec spec, CurveFaults faults)
    {
        var frame = Frame.Of(spec.At);
        ImmutableArray<SectionLine> lines = MeshSection.Of(spec.Scan.Mesh, frame.Origin, frame.X, spec.Join);
        if (lines.IsEmpty) return new OwnCurve([], false, [faults.SectionMisses(spec.Scan, LeftOutPieces.CutIn(spec.Scan.Mesh, frame))]);
        if (spec.Pick > lines.Length) return new OwnCurve([], false, [faults.SectionPick(spec.Pick, lines)]);
        SectionLine line = lines[spec.Pick - 1];
        ImmutableArray<Vec3> places = [.. line.Places.Select(p => InPlane(frame, p))];
        bool closed = line.IsClosed;
        if (closed) places = places[..^1];
        double step = Math.Max(Math.Max(GroupLength * spec.Noise, Math.Min(Apart * line.Length / places.Length, MostApart * spec.Noise)), line.Length / MostPoints);
        ThinnedSection row = ScanThinning.Of(places, closed, step);
        if (row.Places.Length < FairSpline.Fewest(closed)) return new OwnCurve([], false, [faults.SectionTooShort(line.Length, step)]);
        row = Ordered(row, closed, spec.Reverse);
        if (Smoothed(row, closed, spec.Noise) is not { } found) return new OwnCurve([], false, [faults.SectionTooShort(line.Length, step)]);
        ImmutableArray<CurvePiece> pieces = Thinned(closed ? found.Curve.Pieces() : Ended(found.Curve, found.Row.Places), closed, spec.Noise / 20);
        return new OwnCurve(pieces, false, [faults.SectionTaken(spec, lines, found.Curve, found.Row.Places, found.Spikes), .. LeftOutPieces.Of(spec, lines, faults)]);
    }

    private static Vec3 InPlane(Frame frame, Vec3 p) => new(0, (p - frame.Origin).Dot(frame.Y), (p - frame.Origin).Dot(frame.Z));

    // Open: from the end that lies further left. Closed: from the lowest place, up on the left and over to the right.
    private static ThinnedSection Ordered(ThinnedSection row, bool closed, bool reverse)
    {
        ImmutableArray<Vec3> p = row.Places;
        int n = p.Length, first = closed ? Enumerable.Range(0, n).MinBy(i => p[i].Z) : 0;
        bool turn = reverse != (closed ? DrawnDirection.Area(p) > 0 : p[^1].Y < p[0].Y);
        int[] order = [.. Enumerable.Range(0, n).Select(i => turn && !closed ? n - 1 - i : ((turn ? first - i : first + i) % n + n) % n)];
        return new ThinnedSection([.. order.Select(i => p[i])], [.. order.Select(i => row.Shares[i])]);
    }

    private static (FairCurve Curve, ThinnedSection Row, int Spikes)? Smoothed(ThinnedSection row, bool closed, double noise)
    {
        double[] parameters = Chords(row.Places, closed);
        int spikes = 0;
        FairCurve? curve = null;
        for (int round = 0; round <= Rounds; round++)
        {
            curve = FairFit.Scattered(new FairSpline(row.Places, parameters, closed), [.. row.Shares], Room * noise, robust: round == 0);
            if (curve is null) return null;
            if (round == Rounds) break;
            int[] wild = round == 0 ? Spikes(curve, noise, closed) : [];
            if (wild.Length > 0 && row.Places.Length - wild.Length >= FairSpline.Fewest(closed))
            {
                spikes = wild.Length;
                row = new ThinnedSection([.. row.Places.Where((_, i) => !wild.Contains(i))], [.. row.Shares.Where((_, i) => !wild.Contains(i))]);
                parameters = Chords(row.Places, closed);
                continue;
            }
            parameters = FootPoints.Of(curve, row.Places, parameters, closed) ?? parameters;
        }
        return (curve!, row, spikes);
    }

    // Points far off the curve, in groups too short to be a part of its shape.
    private static int[] Spikes(FairCurve curve, double noise, bool closed)
    {
        var wild = new List<int>();
        var group = new List<int>();
        for (int i = 0; i <= curve.Moves.Length; i++)
        {
            if (i < curve.Moves.Length && curve.Moves[i].Length > Spike * noise)
            {
                group.Add(i);
                continue;
            }
            bool end = !closed && (group.Contains(0) || group.Contains(curve.Moves.Length - 1));
            if (group.Count <= WidestSpike && !end) wild.AddRange(group);
            group.Clear();
        }
        return [.. wild];
    }

    // Lengths along the row, of which scatter would make too much, are those of the means of up to five neighbours.
    private static double[] Chords(ImmutableArray<Vec3> places, bool closed)
    {
        const int reach = 2;
        int n = places.Length;
        Vec3 Mean(int i)
        {
            int own = closed ? reach : Math.Min(reach, Math.Min(i, n - 1 - i));
            Vec3 sum = default;
            for (int k = -own; k <= own; k++) sum += places[((i + k) % n + n) % n];
            return sum / (2 * own + 1);
        }
        var parameters = new double[n + (closed ? 1 : 0)];
        for (int i = 1; i < parameters.Length; i++) parameters[i] = parameters[i - 1] + Math.Max((Mean(i % n) - Mean(i - 1)).Length, 0.2 * (places[i % n] - places[i - 1]).Length);
        return parameters;
    }

    // The places hold the curve less along it than square to it: it is cut off, or goes on, at the feet of the two that end it.
    private static ImmutableArray<CurvePiece> Ended(FairCurve curve, ImmutableArray<Vec3> places)
    {
        ImmutableArray<Cubic> cubics = curve.Cubics;
        cubics = cubics.SetItem(0, cubics[0].Over(cubics[0].Foot(places[0], 0), 1));
        return [.. cubics.SetItem(cubics.Length - 1, cubics[^1].Over(0, cubics[^1].Foot(places[^1], 1))).Select(c => c.Piece())];
    }

    // As few cubics as stay within a tolerance of the curve: a spline through more and more of its places.
    private static ImmutableArray<CurvePiece> Thinned(ImmutableArray<CurvePiece> pieces, bool closed, double within)
    {
        var curve = new SpaceCurve(pieces);
        for (int count = 8; count < pieces.Length; count = count * 3 / 2)
        {
            Vec3[] places = [.. Enumerable.Range(0, count + 1).Select(i => curve.AtLength(i * curve.Length / count).Point)];
            if (closed) places[^1] = places[0];
            ImmutableArray<CurvePiece> fewer = closed ? CubicSpline.Periodic(places) : CubicSpline.Open(places, CurveEnd.Free, CurveEnd.Free);
            var thin = new SpaceCurve(fewer);
            const int checks = 5;
            bool near = Enumerable.Range(0, checks * count + 1).All(i =>
                (thin.AtLength(i * thin.Length / (checks * count)).Point - curve.AtLength(i * curve.Length / (checks * count)).Point).Length <= within);
            if (near) return fewer;
        }
        return pieces;
    }
}
