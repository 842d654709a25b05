using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>The edge that stays, over the angle through which its tangent has turned: the one coordinate by which the tangent planes of the sheet are told apart.</summary>
/// <remarks>A straight piece takes no part of that coordinate: along it the sheet has one tangent plane. A corner takes its angle: there the planes roll about a point.</remarks>
internal sealed class FixedEdge
{
    // Largest turn between two entries of the table, radians, and how often a span may be halved to reach it.
    private const double Turn = 0.012;
    private const int Halvings = 14;

    // Turns to and fro of less than this (radians) are ripples of a measured curve and no change of its way.
    private const double Wave = 0.003;

    // An end this near to the plane (mm) lies in it.
    private const double OffPlane = 0.05;

    // Turns this close (radians) are one.
    private const double SameTurn = 1e-9;

    private readonly Directrix _edge;
    private readonly EdgePlane _plane;
    private readonly double[] _at, _turned;

    /// <summary>The edge up to a coordinate of it.</summary>
    /// <param name="edge">The edge.</param>
    /// <param name="plane">Plane in whose coordinates it is told.</param>
    /// <param name="end">Last coordinate, 0 to 1.</param>
    public FixedEdge(Directrix edge, EdgePlane plane, double end)
    {
        (_edge, _plane) = (edge, plane);
        double[] joints = [.. edge.Joints.Where(x => x > 0 && x < end), end];
        (_at, _turned) = Table(joints);
        // Once more with an entry at each place where the tangent comes back, which a step over it does not see.
        double[] backs = [.. Backs()];
        if (backs.Length > 0) (_at, _turned) = Table([.. joints.Concat(backs).Order()]);
        Inflections = [.. Inflected(backs)];
        LeftFan = CanFan(edge.At(0).Point);
        RightFan = CanFan(edge.At(end).Point);

        bool CanFan(Vec3 tip) => Math.Abs(plane.Own(tip).Z) > OffPlane;
    }

    /// <summary>Turn of the whole edge, radians; 0 if it is straight.</summary>
    public double Turned => _turned[^1];

    /// <summary>A cone about its left end can touch the other edge: it does not lie in that one's plane, as where the edges meet.</summary>
    public bool LeftFan { get; }

    /// <summary>The same about its right end.</summary>
    public bool RightFan { get; }

    /// <summary>Turns at which the edge begins to turn the other way, increasing: there its tangent planes stand still and come back.</summary>
    public ImmutableArray<double> Inflections { get; }

    /// <summary>So many places at even steps of the turn, both ends among them.</summary>
    public ImmutableArray<double> Even(int count) => [.. Enumerable.Range(0, count).Select(i => Turned * i / (count - 1))];

    /// <summary>Place and tangent, in the plane's coordinates, where the tangent has turned so far. On a straight piece: its middle.</summary>
    public DirectrixSample At(double turned)
    {
        (double from, double to) = Coordinates(turned);
        DirectrixSample s = _edge.At(0.5 * (from + to));
        return new DirectrixSample(_plane.Own(s.Point), _plane.OwnDirection(s.Tangent.Unit));
    }

    /// <summary>Coordinates of the edge between which its tangent has turned so far: one, or the two ends of a straight piece.</summary>
    public (double From, double To) Coordinates(double turned)
    {
        int hi = 0, end = _turned.Length - 1;
        for (int lo = end; hi < lo;)
        {
            int middle = (hi + lo) / 2;
            if (_turned[middle] >= turned - SameTurn) lo = middle; else hi = middle + 1;
        }
        if (Math.Abs(_turned[hi] - turned) <= SameTurn)
        {
            int last = hi;
            while (last < end && _turned[last + 1] <= turned + SameTurn) last++;
            return (_at[hi], _at[last]);
        }
        double share = (turned - _turned[hi - 1]) / (_turned[hi] - _turned[hi - 1]);
        double x = _at[hi - 1] + share * (_at[hi] - _at[hi - 1]);
        return (x, x);
    }

    private (double[] At, double[] Turned) Table(double[] joints)
    {
        var at = new List<double> { 0 };
        var turned = new List<double> { 0 };
        foreach (double to in joints) Divide(at[^1], _edge.At(at[^1]).Tangent, to, _edge.At(to).Tangent, 0);
        return ([.. at], [.. turned]);

        void Divide(double a, Vec3 ta, double b, Vec3 tb, int depth)
        {
            double middle = 0.5 * (a + b);
            Vec3 tm = _edge.At(middle).Tangent;
            double turn = ta.AngleTo(tm) + tm.AngleTo(tb);
            if (turn > Turn && depth < Halvings)
            {
                Divide(a, ta, middle, tm, depth + 1);
                Divide(middle, tm, b, tb, depth + 1);
                return;
            }
            at.Add(b);
            turned.Add(turned[^1] + turn);
        }
    }

    // Coordinates at which the tangent turns back the way it came.
    private IEnumerable<double> Backs()
    {
        Vec3 before = Vec3.Zero;
        double last = 0, from = 0;
        for (int i = 1; i < _at.Length; i++)
        {
            if (_turned[i] - _turned[i - 1] <= SameTurn) continue;
            Vec3 turn = (_edge.At(_at[i]).Tangent.Unit - _edge.At(_at[i - 1]).Tangent.Unit).Unit;
            if (turn.Dot(before) < 0 && _turned[i - 1] - last > Wave && Turned - _turned[i - 1] > Wave)
            {
                last = _turned[i - 1];
                yield return Farthest(before, from, _at[i]);
            }
            (before, from) = (turn, _at[i - 1]);
        }
    }

    // Where between two coordinates the tangent has gone farthest in a direction, by golden sections.
    private double Farthest(Vec3 way, double a, double b)
    {
        const double golden = 0.3819660112501051;
        for (int k = 0; k < 60; k++)
        {
            double x1 = a + golden * (b - a), x2 = b - golden * (b - a);
            if (_edge.At(x1).Tangent.Unit.Dot(way) >= _edge.At(x2).Tangent.Unit.Dot(way)) b = x2; else a = x1;
        }
        return 0.5 * (a + b);
    }

    private IEnumerable<double> Inflected(double[] backs) => backs.Select(x => _turned[Math.Max(0, Array.FindIndex(_at, at => at >= x))]);
}
