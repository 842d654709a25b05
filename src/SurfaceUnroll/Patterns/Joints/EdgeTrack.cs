using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Joints;

/// <summary>A place along an edge.</summary>
/// <param name="At">Distance along the joint line from its start, mm.</param>
/// <param name="Joint">On the face on which the sheet was measured: the line where the pieces meet.</param>
/// <param name="Flat">On the blank.</param>
/// <param name="Along">Unit tangent in job space.</param>
/// <param name="Normal">Unit outside normal of the sheet.</param>
/// <param name="Inward">Unit vector in the sheet, square to the edge, into the metal.</param>
/// <param name="FlatAlong">Unit tangent on the blank.</param>
/// <param name="FlatInward">Unit vector on the blank, square to the edge, into the metal.</param>
internal readonly record struct TrackPlace(double At, Vec3 Joint, Vec2 Flat, Vec3 Along, Vec3 Normal, Vec3 Inward, Vec2 FlatAlong, Vec2 FlatInward);

/// <summary>An edge of a sheet to walk along, formed and flat at once.</summary>
internal sealed class EdgeTrack
{
    // So many neighbouring segments are looked at together: none of them if the ball round them is farther off than what was found.
    private const int BallSize = 16;

    // A place nearer to the edge than this on the blank, mm, lies on it.
    private const double OnEdge = 0.02;

    private readonly (Vec3 Centre, double Radius)[] _balls;
    private readonly Vec3[] _joint;
    private readonly Vec2[] _flat;
    private readonly double[] _at;
    private readonly (Vec3 Normal, Vec3 Inward, Vec2 FlatInward)[] _sides;

    private EdgeTrack(Vec3[] joint, Vec2[] flat, (Vec3, Vec3, Vec2)[] sides)
    {
        (_joint, _flat, _sides) = (joint, flat, sides);
        _at = EdgeLengths.Running(joint);
        _balls = [.. Enumerable.Range(0, (sides.Length + BallSize - 1) / BallSize).Select(Ball)];

        (Vec3, double) Ball(int k)
        {
            Vec3[] part = joint[(k * BallSize)..Math.Min(joint.Length, (k + 1) * BallSize + 1)];
            Vec3 centre = 0.5 * (part[0] + part[^1]);
            return (centre, part.Max(p => (p - centre).Length));
        }
    }

    /// <summary>Length of the joint line, mm.</summary>
    public double Length => _at[^1];

    /// <summary>It ends where it starts.</summary>
    public bool IsClosed => _joint.Length > 2 && (_joint[0] - _joint[^1]).Length <= 1e-6;

    /// <summary>Places of the joint line.</summary>
    public IReadOnlyList<Vec3> Joint => _joint;

    /// <summary>Distance along the joint line of each of its places, mm.</summary>
    public IReadOnlyList<double> Distances => _at;

    /// <summary>The runs of an edge; none if the sheet has no such edge, or it is a point.</summary>
    public static ImmutableArray<EdgeTrack> Of(SheetMesh mesh, string name) =>
        [.. mesh.Chains.Where(c => c.Name == name && c.Vertices.Length > 1).Select(c => Along(mesh, c.Vertices)).OfType<EdgeTrack>()];

    private static EdgeTrack? Along(SheetMesh mesh, ImmutableArray<int> chain)
    {
        Dictionary<(int, int), (int A, int B, int C)> faces = Beside(mesh, chain);
        var sides = new (Vec3, Vec3, Vec2)[chain.Length - 1];
        int known = -1;
        for (int i = 0; i < sides.Length; i++)
        {
            (int a, int b) = (chain[i], chain[i + 1]);
            if (!faces.TryGetValue((Math.Min(a, b), Math.Max(a, b)), out (int A, int B, int C) face)) continue;
            int third = face.A != a && face.A != b ? face.A : face.B != a && face.B != b ? face.B : face.C;
            Vec3 along = (mesh.Formed[b] - mesh.Formed[a]).Unit, off = mesh.Formed[third] - mesh.Formed[a];
            Vec3 normal = (mesh.Formed[face.B] - mesh.Formed[face.A]).Cross(mesh.Formed[face.C] - mesh.Formed[face.A]).Unit;
            Vec2 way = mesh.Flat[b] - mesh.Flat[a];
            Vec2 left = way.Left.Unit;
            sides[i] = (normal, (off - off.Dot(along) * along).Unit, left.Dot(mesh.Flat[third] - mesh.Flat[a]) >= 0 ? left : -left);
            // The mouth of a relief cut has no metal beside it, and takes after its neighbours.
            for (int k = known + 1; k < i; k++) sides[k] = sides[i];
            known = i;
        }
        if (known < 0) return null;
        for (int k = known + 1; k < sides.Length; k++) sides[k] = sides[known];
        return new EdgeTrack([.. chain.Select(v => mesh.Face[v])], [.. chain.Select(v => mesh.Flat[v])], sides);
    }

    /// <summary>The place at a distance along the joint line, mm, held to its ends.</summary>
    public TrackPlace At(double distance)
    {
        int i = Array.BinarySearch(_at, distance);
        i = Math.Clamp(i < 0 ? ~i - 1 : i, 0, _at.Length - 2);
        double step = _at[i + 1] - _at[i], share = step > 0 ? Math.Clamp((distance - _at[i]) / step, 0, 1) : 0;
        return Place(i, share, Math.Clamp(distance, 0, Length));
    }

    /// <summary>The place nearest to a point, and its distance, mm.</summary>
    public (TrackPlace Place, double Distance) Nearest(Vec3 point)
    {
        (int at, double share, double nearest) = (0, 0, double.PositiveInfinity);
        foreach (int ball in Enumerable.Range(0, _balls.Length).OrderBy(k => (point - _balls[k].Centre).Length))
        {
            if ((point - _balls[ball].Centre).Length - _balls[ball].Radius >= nearest) continue;
            for (int i = ball * BallSize; i < Math.Min(_sides.Length, (ball + 1) * BallSize); i++) Look(i);
        }
        return (Place(at, share, _at[at] + share * (_at[at + 1] - _at[at])), nearest);

        void Look(int i)
        {
            double t = Segment.NearestShare(point, _joint[i], _joint[i + 1]);
            double distance = (point - Vec3.Lerp(_joint[i], _joint[i + 1], t)).Length;
            if (distance < nearest || (distance == nearest && i < at)) (at, share, nearest) = (i, t, distance);
        }
    }

    /// <summary>Distances along the joint line, mm, at which a straight line on the blank crosses the edge, or begins or ends on it.</summary>
    public IEnumerable<double> Crossings(ImmutableArray<Vec2> line)
    {
        (Vec2 from, Vec2 to) = (line[0], line[^1]);
        Vec2 way = to - from;
        double length = way.Length, last = double.NegativeInfinity;
        if (length <= OnEdge) yield break;
        for (int i = 0; i + 1 < _flat.Length; i++)
        {
            Vec2 side = _flat[i + 1] - _flat[i];
            double cross = way.Cross(side);
            if (Math.Abs(cross) < 1e-12) continue;
            double along = (_flat[i] - from).Cross(side) / cross, share = (_flat[i] - from).Cross(way) / cross;
            if (share is < 0 or > 1 || along * length < -OnEdge || (along - 1) * length > OnEdge) continue;
            double at = _at[i] + share * (_at[i + 1] - _at[i]);
            // Through a place of the edge it crosses both sides of it.
            if (at - last > OnEdge) yield return at;
            last = at;
        }
    }

    /// <summary>The same edge from its other end.</summary>
    public EdgeTrack Reversed() => new([.. _joint.Reverse()], [.. _flat.Reverse()], [.. _sides.Reverse()]);

    /// <summary>The same closed edge from another of its places.</summary>
    public EdgeTrack StartingAt(double distance)
    {
        TrackPlace start = At(distance);
        int i = Math.Max(0, Enumerable.Range(0, _at.Length - 1).Last(k => _at[k] <= distance));
        Vec3[] joint = [start.Joint, .. _joint[(i + 1)..], .. _joint[1..(i + 1)], start.Joint];
        Vec2[] flat = [start.Flat, .. _flat[(i + 1)..], .. _flat[1..(i + 1)], start.Flat];
        return new EdgeTrack(joint, flat, [.. _sides[i..], .. _sides[..(i + 1)]]);
    }

    private TrackPlace Place(int i, double share, double distance)
    {
        (Vec3 normal, Vec3 inward, Vec2 flatInward) = _sides[i];
        return new TrackPlace(
            distance, Vec3.Lerp(_joint[i], _joint[i + 1], share), Vec2.Lerp(_flat[i], _flat[i + 1], share), (_joint[i + 1] - _joint[i]).Unit, normal, inward,
            (_flat[i + 1] - _flat[i]).Unit, flatInward);
    }

    // The faces that have two neighbours of the chain among their corners.
    private static Dictionary<(int, int), (int A, int B, int C)> Beside(SheetMesh mesh, ImmutableArray<int> chain)
    {
        HashSet<(int, int)> wanted = [.. chain.Zip(chain.Skip(1), (a, b) => (Math.Min(a, b), Math.Max(a, b)))];
        var faces = new Dictionary<(int, int), (int, int, int)>();
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            foreach ((int from, int to) in (ReadOnlySpan<(int, int)>)[(a, b), (b, c), (c, a)])
            {
                (int, int) key = (Math.Min(from, to), Math.Max(from, to));
                if (wanted.Contains(key)) faces[key] = (a, b, c);
            }
        }
        return faces;
    }
}
