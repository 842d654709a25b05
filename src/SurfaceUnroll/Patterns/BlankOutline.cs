using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Patterns;

/// <summary>Edges, cut line and triangles of a blank.</summary>
public static class BlankOutline
{
    // Places closer than this (mm) are one place.
    private const double Coincident = 1e-7;

    // A step along an edge whose face has no area is none if it is no longer than this (mm); a longer one is where an element line runs along the edge.
    private const double Thin = 1e-4;

    /// <summary>Front, right, rear and left edge.</summary>
    public static ImmutableArray<BlankEdge> Edges(Blank blank)
    {
        FlatLine left = blank.FlatLines.First(), right = blank.FlatLines.Last();
        Station formedLeft = blank.FormedLines.First(), formedRight = blank.FormedLines.Last();
        return
        [
            Side("front", s => s.Front, s => s.Front),
            Straight("right", formedRight, right),
            Side("rear", s => s.Rear, s => s.Rear),
            Straight("left", formedLeft, left),
        ];

        // Where the curves meet the edge is a point, and its length is 0 and not the rounding of two places.
        static BlankEdge Straight(string name, Station formed, FlatLine flat) => formed.Ruling.Length <= Coincident
            ? new BlankEdge(name, 0, 0, [flat.Front, flat.Rear])
            : new BlankEdge(name, formed.Ruling.Length, (flat.Rear - flat.Front).Length, [flat.Front, flat.Rear]);

        BlankEdge Side(string name, Func<Station, Vec3> formed, Func<FlatLine, Vec2> flat) => new(
            name,
            blank.Sheet.Strips.Sum(s => EdgeIntegral.Length(formed(s.Left), formed(s.Middle), formed(s.Right)).ToRight),
            blank.Flat.Sum(s => EdgeIntegral.Length(flat(s.Left), flat(s.Middle), flat(s.Right)).ToRight),
            Distinct(blank.FlatRulings.Select(flat)));
    }

    /// <summary>The closed net outline, counter-clockwise: rear from left to right, then front from right to left.</summary>
    public static ImmutableArray<Vec2> Loop(IEnumerable<FlatLine> lines)
    {
        FlatLine[] all = [.. lines];
        return Closed(all.Select(l => l.Rear).Concat(all.Select(l => l.Front).Reverse()));
    }

    /// <summary>A closed outline through places, of neighbours that coincide one, the first not repeated at the end.</summary>
    internal static ImmutableArray<Vec2> Closed(IEnumerable<Vec2> places)
    {
        List<Vec2> loop = [.. Distinct(places)];
        if (loop.Count > 1 && (loop[0] - loop[^1]).Length <= Coincident) loop.RemoveAt(loop.Count - 1);
        return [.. loop];
    }

    /// <summary>Two triangles to each half of a strip, one at the tip of a fan; the tip of a fan is one vertex.</summary>
    /// <param name="blank">Formed middle surface and blank.</param>
    /// <param name="measured">The same sheet on the face on which it was measured, line for line.</param>
    public static SheetMesh Triangles(Blank blank, RuledSheet measured)
    {
        Station[] formed = [.. blank.FormedRulings], onFace = [.. Blank.Rulings(measured)];
        FlatLine[] flat = [.. blank.FlatRulings];
        var places = ImmutableArray.CreateBuilder<Vec3>();
        var blankPlaces = ImmutableArray.CreateBuilder<Vec2>();
        var face = ImmutableArray.CreateBuilder<Vec3>();
        var faces = ImmutableArray.CreateBuilder<(int, int, int)>();
        int front = Add(formed[0].Front, flat[0].Front, onFace[0].Front);
        int rear = formed[0].Ruling.Length > Coincident ? Add(formed[0].Rear, flat[0].Rear, onFace[0].Rear) : front;
        List<int> fronts = [front], rears = [rear];
        for (int i = 1; i < formed.Length; i++)
        {
            Strip strip = blank.Sheet.Strips[(i - 1) / 2];
            bool tip = formed[i].Ruling.Length <= Coincident;
            bool rearStays = strip.RearStill || Stays(rear, flat[i].Rear, front), frontStays = strip.FrontStill || Stays(front, flat[i].Front, rear);
            int nextFront = frontStays ? front : Add(formed[i].Front, flat[i].Front, onFace[i].Front);
            int nextRear = rearStays ? rear : tip ? nextFront : Add(formed[i].Rear, flat[i].Rear, onFace[i].Rear);
            Face(front, rear, nextRear);
            Face(front, nextRear, nextFront);
            (front, rear) = (nextFront, nextRear);
            fronts.Add(front);
            rears.Add(rear);
        }
        return new SheetMesh(places.ToImmutable(), blankPlaces.ToImmutable(), faces.ToImmutable())
        {
            Chains = [Chain("front", fronts), Chain("right", [front, rear]), Chain("rear", rears), Chain("left", [fronts[0], rears[0]])],
            Face = face.ToImmutable(),
        };

        static EdgeChain Chain(string name, List<int> vertices) => new(name, [.. vertices.Where((v, i) => i == 0 || v != vertices[i - 1])]);

        // A place that differs by rounding alone, or from which no face with an area reaches across, would leave a crack.
        bool Stays(int vertex, Vec2 onBlank, int across) =>
            (onBlank - blankPlaces[vertex]).Length is var step && (step <= Coincident || (step <= Thin && !HasArea(blankPlaces[across], blankPlaces[vertex], onBlank)));

        int Add(Vec3 place, Vec2 onBlank, Vec3 onFace)
        {
            places.Add(place);
            face.Add(onFace);
            blankPlaces.Add(onBlank);
            return places.Count - 1;
        }

        void Face(int a, int b, int c)
        {
            if (a == b || b == c || c == a) return;
            // Where an element line runs along an edge the strip has no width and no face.
            if (HasArea(blankPlaces[a], blankPlaces[b], blankPlaces[c])) faces.Add((a, b, c));
        }
    }

    private static bool HasArea(Vec2 a, Vec2 b, Vec2 c)
    {
        (Vec2 ab, Vec2 ac) = (b - a, c - a);
        return Math.Abs(ab.Cross(ac)) > 1e-9 * (ab.Dot(ab) + ac.Dot(ac));
    }

    private static ImmutableArray<Vec2> Distinct(IEnumerable<Vec2> points)
    {
        var distinct = ImmutableArray.CreateBuilder<Vec2>();
        foreach (Vec2 p in points)
            if (distinct.Count == 0 || (p - distinct[^1]).Length > Coincident)
                distinct.Add(p);
        return distinct.ToImmutable();
    }
}
