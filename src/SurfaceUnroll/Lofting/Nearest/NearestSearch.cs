using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>How far the edge may move and bend.</summary>
/// <param name="Most">Largest move, mm.</param>
/// <param name="Curvature">Largest change of the edge's curvature, 1/mm.</param>
/// <param name="Spread">Length over which a move is spread where nothing asks for less, mm.</param>
internal readonly record struct MoveLimits(double Most, double Curvature, double Spread);

/// <summary>What the last station is.</summary>
internal enum EdgeEnd
{
    /// <summary>The end of the edge: it stays.</summary>
    Free,

    /// <summary>The end of an edge that comes back to its start: there it keeps its direction too.</summary>
    Closed,

    /// <summary>The middle of a mirrored edge that runs through it smoothly: it keeps its direction and moves in the plane of symmetry.</summary>
    Middle,

    /// <summary>The middle of a mirrored edge that has a corner there: the corner stays.</summary>
    MiddleCorner,
}

/// <summary>A moved edge.</summary>
/// <param name="Moves">For each station the move along its normal, mm, positive to the left.</param>
/// <param name="Turns">For each station the angle by which the edge is turned there, radians.</param>
/// <param name="Turned">For each station the turn of the fixed edge whose tangent plane it lies in, radians.</param>
/// <param name="Cost">Mean of the squared move and of the squared change of curvature, mm².</param>
/// <param name="Miss">Largest angle by which a tangent misses its plane, or a chord its tangents, radians.</param>
internal sealed record MovedStations(double[] Moves, double[] Turns, double[] Turned, double Cost, double Miss)
{
    /// <summary>Largest move, mm.</summary>
    public double Largest => Moves.Max(Math.Abs);
}

/// <summary>Moves the stations of an edge so that each of its tangents lies in a tangent plane of the fixed edge, the planes following each other.</summary>
/// <remarks>
/// The unknowns of each station are its move, its turn and the tangent plane of the fixed edge that it lies in. Neighbouring stations are joined by circular arcs tangent to both, so the polygon of the unknowns
/// is an edge and not a sample of one. Sequential quadratic programming with an augmented Lagrangian for what must be met exactly (Nocedal and Wright, Numerical Optimization, chapters 17 and 18).
/// </remarks>
internal sealed class NearestSearch(FixedEdge edge, ImmutableArray<EdgeStation> stations, EdgeEnd end)
{
    // Weight of a radian squared against a square millimetre of the cost. Multipliers take what it leaves.
    private const double Exact = 1e6;

    // A sheet misses nothing when every tangent is in its plane to this, radians: what a directrix takes for one direction, halved.
    public const double Met = 5e-8;

    private const int MostRounds = 40;

    // Steps of one round: of the turn of the fixed edge and of a station, radians.
    private const double PlaneStep = 0.08, TurnStep = 0.1;

    private const double Held = 1e10;

    // Sine of the angle between a line and an edge below which the line counts as running along it.
    private const double Flattest = 0.03;

    // Lines shorter than this share of the edge count as that long.
    private const double Shortest = 1e-3;

    private int N => stations.Length;

    /// <summary>Quadratic problems solved so far.</summary>
    public int Rounds { get; private set; }

    /// <summary>The edge of least cost over a given structure.</summary>
    /// <param name="start">Where to begin.</param>
    /// <param name="anchors">Stations at which the planes begin, turn back, and end.</param>
    /// <param name="limits">How far it may go.</param>
    public MovedStations Search(MovedStations start, ImmutableArray<int> anchors, MoveLimits limits)
    {
        (int first, int last) = (anchors[0], anchors[^1]);
        double[] moves = [.. start.Moves], turns = [.. start.Turns], turned = [.. start.Turned];
        var planes = new double[N];
        var links = new double[N];
        double cost = 0, miss = double.PositiveInfinity;
        int stuck = 0;
        for (int round = 0; round < MostRounds; round++)
        {
            Rounds++;
            var problem = new BandedQuadratic(3 * N, 5);
            AddCost(problem, moves, turns, limits);
            AddLinks(problem, moves, turns, links);
            for (int i = first; i <= last; i++) AddPlane(problem, i, moves[i], turns[i], turned[i], planes[i]);
            AddBounds(problem, moves, turns, turned, anchors, limits);
            double[] step = problem.Minimise();
            double change = 0;
            for (int i = 0; i < N; i++)
            {
                moves[i] += step[3 * i];
                turns[i] += step[3 * i + 1];
                turned[i] = Math.Clamp(turned[i] + step[3 * i + 2], 0, edge.Turned);
                change = Math.Max(change, Math.Abs(step[3 * i]));
            }
            // A problem whose numbers have no bounds any more has no answer either.
            if (!double.IsFinite(change) || step.Any(s => !double.IsFinite(s))) return start with { Cost = double.PositiveInfinity, Miss = double.PositiveInfinity };
            double before = miss;
            miss = 0;
            for (int i = 0; i < N; i++)
            {
                if (i > 0 && !stations[i].StartsSpan)
                {
                    double link = Link(i, moves, turns);
                    links[i] += link;
                    miss = Math.Max(miss, Math.Abs(link));
                }
                if (i < first || i > last) continue;
                double plane = Plane(i, moves[i], turns[i], turned[i]).Miss;
                planes[i] += plane;
                miss = Math.Max(miss, Math.Abs(plane));
            }
            cost = Cost(moves, turns, limits);
            if (miss < Met && change < 1e-4) break;
            stuck = miss > 0.7 * before && miss > Met ? stuck + 1 : 0;
            if (stuck > 8) break;
        }
        return new MovedStations(moves, turns, turned, cost, miss);
    }

    private double Share(int i)
    {
        double left = i > 0 ? stations[i].Length - stations[i - 1].Length : 0, right = i + 1 < N ? stations[i + 1].Length - stations[i].Length : 0;
        return 0.5 * (left + right) / stations[^1].Length;
    }

    private double Step(int i) => stations[i].Length - stations[i - 1].Length;

    private double Cost(double[] moves, double[] turns, MoveLimits limits)
    {
        double cost = 0, spread = Math.Pow(limits.Spread, 4);
        for (int i = 0; i < N; i++)
        {
            cost += Share(i) * moves[i] * moves[i];
            if (i == 0 || stations[i].StartsSpan) continue;
            double bend = (turns[i] - turns[i - 1]) / Step(i);
            cost += spread * bend * bend * Step(i) / stations[^1].Length;
        }
        return cost;
    }

    private void AddCost(BandedQuadratic problem, double[] moves, double[] turns, MoveLimits limits)
    {
        double spread = Math.Pow(limits.Spread, 4);
        for (int i = 0; i < N; i++)
        {
            problem.AddSquare(2 * Share(i), moves[i], (3 * i, 1));
            // Leaves a plane where it is if nothing asks for another.
            problem.AddSquare(1e-6, 0, (3 * i + 2, 1));
            problem.AddSquare(1e-6, 0, (3 * i + 1, 1));
            if (i == 0 || stations[i].StartsSpan) continue;
            double h = Step(i);
            problem.AddSquare(2 * spread * h / stations[^1].Length, (turns[i] - turns[i - 1]) / h, (3 * i + 1, 1 / h), (3 * i - 2, -1 / h));
        }
    }

    private void AddLinks(BandedQuadratic problem, double[] moves, double[] turns, double[] links)
    {
        for (int i = 1; i < N; i++)
        {
            if (stations[i].StartsSpan) continue;
            Vec2 chord = Chord(i, moves);
            double square = chord.Dot(chord);
            problem.AddSquare(Exact, Link(i, moves, turns) + links[i],
                (3 * i, chord.Cross(stations[i].Normal) / square), (3 * i - 3, -chord.Cross(stations[i - 1].Normal) / square), (3 * i + 1, -0.5), (3 * i - 2, -0.5));
        }
    }

    private void AddPlane(BandedQuadratic problem, int i, double move, double turn, double turned, double multiplier)
    {
        (double miss, double byMove, double byTurn, double scale) = Plane(i, move, turn, turned);
        double h = 1e-4, lo = Math.Max(0, turned - h), hi = Math.Min(edge.Turned, turned + h);
        // Along a straight piece the determinant stays and its scale does not, so only that is differenced.
        double byPlane = hi > lo ? scale * (Line(i, move, turn, hi).Determinant - Line(i, move, turn, lo).Determinant) / (hi - lo) : 0;
        problem.AddSquare(Exact, miss + multiplier, (3 * i, byMove), (3 * i + 1, byTurn), (3 * i + 2, byPlane));
    }

    private void AddBounds(BandedQuadratic problem, double[] moves, double[] turns, double[] turned, ImmutableArray<int> anchors, MoveLimits limits)
    {
        (int first, int last) = (anchors[0], anchors[^1]);
        for (int i = 0; i < N; i++)
        {
            bool corner = stations[i].StartsSpan || (i + 1 < N && stations[i + 1].StartsSpan) || (i == N - 1 && end != EdgeEnd.Middle);
            if (corner) Fix(3 * i, moves[i], 0);
            else if (double.IsFinite(limits.Most)) Within(3 * i, -limits.Most - moves[i], limits.Most - moves[i]);
            if ((end == EdgeEnd.Closed && i is 0) || (end is EdgeEnd.Closed or EdgeEnd.Middle && i == N - 1)) Fix(3 * i + 1, turns[i], 0);
            else Within(3 * i + 1, -TurnStep, TurnStep);
            int at = 3 * i + 2;
            if (i < first || (i == first && (first > 0 || !edge.LeftFan))) Fix(at, turned[i], 0);
            else if (i > last || (i == last && (last < N - 1 || end == EdgeEnd.Middle || (end != EdgeEnd.MiddleCorner && !edge.RightFan)))) Fix(at, turned[i], edge.Turned);
            else if (anchors.IndexOf(i) is > 0 and int k && i < last) Fix(at, turned[i], edge.Inflections[k - 1]);
            else Within(at, Math.Max(-PlaneStep, -turned[i]), Math.Min(PlaneStep, edge.Turned - turned[i]));
            if (i > first && i <= last) problem.AddBound(at, 1, at - 3, -1, turned[i - 1] - turned[i]);
            if (i == 0 || stations[i].StartsSpan) continue;
            double room = limits.Curvature * Step(i), now = turns[i] - turns[i - 1];
            problem.AddBound(3 * i + 1, 1, 3 * i - 2, -1, -room - now);
            problem.AddBound(3 * i + 1, -1, 3 * i - 2, 1, now - room);
        }

        void Fix(int index, double now, double wanted) => problem.AddSquare(Held, now - wanted, (index, 1));

        void Within(int index, double least, double most)
        {
            problem.AddBound(index, 1, index, 0, least);
            problem.AddBound(index, -1, index, 0, -most);
        }
    }

    private Vec2 Chord(int i, double[] moves) =>
        stations[i].Place + moves[i] * stations[i].Normal - (stations[i - 1].Place + moves[i - 1] * stations[i - 1].Normal);

    // The angle from the mean of both tangents to the chord: 0 for a circular arc.
    private double Link(int i, double[] moves, double[] turns)
    {
        Vec2 chord = Chord(i, moves);
        double mean = 0.5 * (stations[i].Angle + turns[i] + stations[i - 1].Angle + turns[i - 1]);
        return Math.IEEERemainder(Math.Atan2(chord.Y, chord.X) - mean, Math.Tau);
    }

    // Sine of the twist along the line to the fixed edge, with its derivatives by the move and the turn, and its scale.
    private (double Miss, double ByMove, double ByTurn, double Scale) Plane(int i, double move, double turn, double turned)
    {
        (double determinant, Vec3 ruling, Vec3 tangent, Vec3 along) = Line(i, move, turn, turned);
        // Where the line runs along an edge, or has no length, the sine has no meaning but the determinant has.
        double length = Math.Max(ruling.Length, Shortest * stations[^1].Length);
        double scale = length / (Math.Max(ruling.Cross(tangent).Length, Flattest * length) * Math.Max(ruling.Cross(along).Length, Flattest * length));
        Vec2 out2 = stations[i].Normal;
        Vec3 normal = new(out2.X, out2.Y, 0), side = new(-along.Y, along.X, 0);
        return (scale * determinant, scale * tangent.Cross(along).Dot(normal), scale * tangent.Cross(side).Dot(ruling), scale);
    }

    // det[T, b, r] of the fixed edge's tangent, the moved one's, and the line from one to the other.
    private (double Determinant, Vec3 Ruling, Vec3 Tangent, Vec3 Along) Line(int i, double move, double turn, double turned)
    {
        DirectrixSample a = edge.At(turned);
        EdgeStation s = stations[i];
        Vec2 place = s.Place + move * s.Normal, along = Vec2.FromAngle(s.Angle + turn);
        Vec3 ruling = new Vec3(place.X, place.Y, 0) - a.Point, b = new(along.X, along.Y, 0);
        return (a.Tangent.Cross(b).Dot(ruling), ruling, a.Tangent, b);
    }
}
