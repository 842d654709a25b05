using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>The blank as areas of one colour each: the band of the stretch where that is the larger, of the shrink elsewhere.</summary>
internal sealed class StrainBands
{
    private readonly Dictionary<int, List<ImmutableArray<Vec2>>> loops = [];
    private readonly Dictionary<int, List<(int A, int B, int C)>> faces = [];
    private readonly SheetMesh mesh;
    private readonly StrainMap map;
    private readonly double step;

    private StrainBands(SheetMesh mesh, StrainMap map)
    {
        (this.mesh, this.map) = (mesh, map);
        (double stretch, double shrink) = StrainLevels.Largest(map);
        step = StrainLevels.Step(stretch, shrink);
        foreach ((int A, int B, int C) face in mesh.Faces) Add(face);
        foreach ((int band, List<(int, int, int)> whole) in faces) Loops(band).AddRange(Outlines(whole));
    }

    /// <summary>One fill a band.</summary>
    /// <param name="mesh">Its flat places are used.</param>
    /// <param name="map">Strain at its vertices.</param>
    /// <param name="place">From the blank to the page.</param>
    public static IEnumerable<PageFill> Of(SheetMesh mesh, StrainMap map, Func<Vec2, Vec2> place)
    {
        var bands = new StrainBands(mesh, map);
        int highest = bands.loops.Keys.Select(Math.Abs).DefaultIfEmpty(0).Max();
        foreach ((int band, List<ImmutableArray<Vec2>> areas) in bands.loops.Where(b => b.Value.Count > 0).OrderBy(b => b.Key))
        {
            StrainKind kind = band > 0 ? StrainKind.Stretch : StrainKind.Shrink;
            ImmutableArray<ImmutableArray<Vec2>> onPage = [.. areas.Select(loop => loop.Select(place).ToImmutableArray())];
            yield return new PageFill(onPage[0], 1) { Colour = StrainColours.Of(kind, Math.Abs(band), highest), More = onPage[1..] };
        }
    }

    private readonly record struct Corner(Vec2 Flat, double Stretch, double Shrink)
    {
        public static Corner Lerp(Corner a, Corner b, double t) =>
            new(Vec2.Lerp(a.Flat, b.Flat, t), a.Stretch + t * (b.Stretch - a.Stretch), a.Shrink + t * (b.Shrink - a.Shrink));
    }

    private void Add((int A, int B, int C) face)
    {
        Corner[] corners = [.. new[] { face.A, face.B, face.C }.Select(v => new Corner(mesh.Flat[v], map.Vertices[v].Stretch, map.Vertices[v].Shrink))];
        int[] bands = [.. corners.Select(BandOf)];
        // Little strain at all corners is little all over, of whichever kind; otherwise one kind must be the larger at all of them.
        if (bands[0] == bands[1] && bands[1] == bands[2])
        {
            if (!faces.TryGetValue(bands[0], out List<(int, int, int)>? whole)) faces[bands[0]] = whole = [];
            whole.Add(face);
            return;
        }
        Split(Cut(corners, c => c.Stretch - c.Shrink), c => c.Stretch, 1);
        Split(Cut(corners, c => c.Shrink - c.Stretch), c => c.Shrink, -1);
    }

    private int BandOf(Corner c) => c.Stretch >= c.Shrink ? Level(c.Stretch) : -Level(c.Shrink);

    private int Level(double size) => (int)Math.Floor(size / step);

    private void Split(Corner[] area, Func<Corner, double> size, int sign)
    {
        if (area.Length < 3) return;
        int last = Level(area.Max(size));
        for (int band = Level(area.Min(size)); band <= last; band++)
        {
            double low = band * step, high = (band + 1) * step;
            Corner[] part = Cut(Cut(area, c => size(c) - low), c => high - size(c));
            if (part.Length >= 3) Loops(sign * band).Add([.. part.Select(c => c.Flat)]);
        }
    }

    // What of a convex area lies on the side where a linear function is not negative (Sutherland and Hodgman, Communications of the ACM 17(1), 1974).
    private static Corner[] Cut(Corner[] area, Func<Corner, double> side)
    {
        List<Corner> kept = [];
        for (int i = 0; i < area.Length; i++)
        {
            Corner a = area[i], b = area[(i + 1) % area.Length];
            (double atA, double atB) = (side(a), side(b));
            if (atA >= 0) kept.Add(a);
            if (atA > 0 != atB > 0 && atA != 0 && atB != 0) kept.Add(Corner.Lerp(a, b, atA / (atA - atB)));
        }
        return [.. kept];
    }

    private List<ImmutableArray<Vec2>> Loops(int band)
    {
        if (!loops.TryGetValue(band, out List<ImmutableArray<Vec2>>? areas)) loops[band] = areas = [];
        return areas;
    }

    // The edges that whole faces of one band do not share, joined end to end: far fewer than the faces. Holes run clockwise.
    private IEnumerable<ImmutableArray<Vec2>> Outlines(List<(int, int, int)> whole)
    {
        HashSet<(int From, int To)> sides = [];
        foreach ((int from, int to) in whole.SelectMany(MeshLinks.Sides))
            if (!sides.Remove((to, from))) sides.Add((from, to));
        var leaving = sides.OrderBy(s => s).GroupBy(s => s.From).ToDictionary(g => g.Key, g => new Stack<int>(g.Select(s => s.To)));
        foreach (int start in leaving.Keys.Order())
        {
            while (leaving[start].Count > 0)
            {
                var loop = ImmutableArray.CreateBuilder<Vec2>();
                for (int at = start; leaving.TryGetValue(at, out Stack<int>? next) && next.TryPop(out int to); at = to) loop.Add(mesh.Flat[at]);
                yield return loop.ToImmutable();
            }
        }
    }
}
