using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>Questions about places on a blank. Each costs one walk round its cut lines.</summary>
/// <param name="Points">Closed outer cut line, the first point not repeated, mm.</param>
internal readonly record struct CutOutline(ImmutableArray<Vec2> Points)
{
    // A part of a path shorter than this is rounding, mm.
    private const double NoLength = 1e-6;

    /// <summary>Closed inner cut lines: what lies in them lies outside.</summary>
    public ImmutableArray<ImmutableArray<Vec2>> Holes { get => field.IsDefault ? [] : field; init; }

    /// <summary>All cut lines of a piece.</summary>
    public static CutOutline Of(PanelDevelopment panel) => new(panel.Cut) { Holes = [.. panel.Openings.Select(o => o.Cut), .. panel.InnerCuts] };

    /// <summary>How deep inside the cut line a place lies, mm; negative outside.</summary>
    public double Depth(Vec2 p)
    {
        double nearest = double.PositiveInfinity;
        bool inside = false;
        Walk(Points, p, ref nearest, ref inside);
        foreach (ImmutableArray<Vec2> hole in Holes) Walk(hole, p, ref nearest, ref inside);
        return inside ? nearest : -nearest;
    }

    /// <summary>The parts of a path that cross no hole, in order.</summary>
    public ImmutableArray<ImmutableArray<Vec2>> BesideHoles(ImmutableArray<Vec2> path)
    {
        ImmutableArray<ImmutableArray<Vec2>> holes = Holes;
        return holes.IsEmpty ? [path] : Parts(path, holes, p => !holes.Any(hole => new CutOutline(hole).Depth(p) > 0));
    }

    /// <summary>The parts of a path that lie on the metal, in order.</summary>
    public ImmutableArray<ImmutableArray<Vec2>> Inside(ImmutableArray<Vec2> path)
    {
        CutOutline self = this;
        return Parts(path, [Points, .. Holes], p => self.Depth(p) > 0);
    }

    /// <summary>True if the whole of a text lies inside with at least <paramref name="clearance"/> mm of white around it.</summary>
    public bool Holds(TextOutline text, double clearance) => !Touches(text, clearance) && Depth(0.5 * (text.Corners[0] + text.Corners[2])) > 0;

    /// <summary>True if the whole of a text lies outside with at least <paramref name="clearance"/> mm of white around it.</summary>
    public bool Leaves(TextOutline text, double clearance) => !Touches(text, clearance) && Depth(0.5 * (text.Corners[0] + text.Corners[2])) < 0;

    private bool Touches(TextOutline text, double clearance)
    {
        ImmutableArray<Vec2> corners = text.Corners;
        Vec2 origin = corners[0], right = (corners[1] - corners[0]).Unit, up = right.Left;
        Vec2 ToBox(Vec2 p) => new((p - origin).Dot(right), (p - origin).Dot(up));
        Box box = Box.Around(corners.Select(ToBox)).Grow(clearance);
        return Enters(Points, ToBox, box) || Holes.Any(hole => Enters(hole, ToBox, box));
    }

    private static bool Enters(ImmutableArray<Vec2> loop, Func<Vec2, Vec2> toBox, Box box)
    {
        Vec2 a = toBox(loop[^1]);
        foreach (Vec2 point in loop)
        {
            Vec2 b = toBox(point);
            bool beside = Math.Max(a.X, b.X) < box.Min.X || Math.Min(a.X, b.X) > box.Max.X || Math.Max(a.Y, b.Y) < box.Min.Y || Math.Min(a.Y, b.Y) > box.Max.Y;
            if (!beside && !Clip.Line([a, b], false, box).IsEmpty) return true;
            a = b;
        }
        return false;
    }

    private static void Walk(ImmutableArray<Vec2> loop, Vec2 p, ref double nearest, ref bool inside)
    {
        for (int i = 0, j = loop.Length - 1; i < loop.Length; j = i++)
        {
            Vec2 a = loop[j], b = loop[i];
            nearest = Math.Min(nearest, Segment.Distance(p, a, b));
            // Even-odd rule.
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + (p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)) inside = !inside;
        }
    }

    // A path is cut where it crosses a loop; each part is kept or not by its middle.
    private static ImmutableArray<ImmutableArray<Vec2>> Parts(ImmutableArray<Vec2> path, ImmutableArray<ImmutableArray<Vec2>> loops, Func<Vec2, bool> keep)
    {
        var parts = ImmutableArray.CreateBuilder<ImmutableArray<Vec2>>();
        var run = ImmutableArray.CreateBuilder<Vec2>();
        for (int i = 0; i + 1 < path.Length; i++)
        {
            Vec2 a = path[i], b = path[i + 1];
            double[] stops = [0, .. loops.SelectMany(loop => Crossings(a, b, loop)).Order(), 1];
            for (int k = 0; k + 1 < stops.Length; k++)
            {
                (double from, double to) = (stops[k], stops[k + 1]);
                if ((to - from) * (b - a).Length < NoLength) continue;
                if (!keep(Vec2.Lerp(a, b, 0.5 * (from + to)))) End();
                else
                {
                    if (run.Count == 0) run.Add(Vec2.Lerp(a, b, from));
                    run.Add(to < 1 ? Vec2.Lerp(a, b, to) : b);
                }
            }
        }
        End();
        return parts.ToImmutable();

        void End()
        {
            if (run.Count > 1) parts.Add(run.ToImmutable());
            run.Clear();
        }
    }

    private static IEnumerable<double> Crossings(Vec2 a, Vec2 b, ImmutableArray<Vec2> loop)
    {
        Vec2 d = b - a;
        for (int i = 0, j = loop.Length - 1; i < loop.Length; j = i++)
        {
            Vec2 e = loop[i] - loop[j];
            double turn = d.Cross(e);
            if (turn == 0) continue;
            double t = (loop[j] - a).Cross(e) / turn, u = (loop[j] - a).Cross(d) / turn;
            if (t is > 0 and < 1 && u is >= 0 and <= 1) yield return t;
        }
    }
}
