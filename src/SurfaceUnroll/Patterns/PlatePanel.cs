using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Plates;

namespace SurfaceUnroll.Patterns;

/// <summary>The pattern of a flat or bent plate.</summary>
internal static class PlatePanel
{
    // Lines of rolled areas stand about this far apart, mm, where the job does not say.
    private const double Pitch = 25;

    /// <summary>The pattern, net: without openings, trims and allowances.</summary>
    /// <param name="spec">The panel.</param>
    /// <param name="plate">Its plate.</param>
    /// <param name="offset">From the measured face to the middle surface along the outside normal, mm.</param>
    /// <param name="pitch">Distance of the lines that the job asks for, mm; null where it does not.</param>
    public static PanelDevelopment Of(PanelSpec spec, Plate plate, double offset, double? pitch)
    {
        SheetMesh mesh = plate.Mesh(offset);
        double flatArea = Polygons.SignedArea(plate.Outline);
        SideChain? side = (plate.Shape as BentShape)?.Side;
        double gained = side is null ? 0 : Bent(side).Sum(b => Gained(plate, b.Start, b.Span));
        return new PanelDevelopment(
            spec, Verdict.BendsOnly, default, default, default, flatArea - gained, flatArea,
            [.. plate.Edges.Select(e => Edge(e, mesh))], side is null ? [] : [.. Lines(plate, side, offset, pitch ?? Pitch)], plate.Outline, mesh)
        {
            Bends = side is null ? [] : [.. Bends(plate, side)],
            Offset = offset,
        };
    }

    private static BlankEdge Edge(PlateEdge edge, SheetMesh mesh)
    {
        ImmutableArray<Vec2> path = edge.Against ? [.. edge.Path.Reverse()] : edge.Path;
        ImmutableArray<int> chain = mesh.Chains.First(c => c.Name == edge.Name).Vertices;
        return new BlankEdge(edge.Name, EdgeLengths.Formed(mesh, chain), EdgeLengths.Flat(path), path);
    }

    private static IEnumerable<(double Start, ArcSpan Span)> Bent(SideChain side) =>
        side.Spans.Select((span, i) => (Start: side.Starts[i], Span: span as ArcSpan)).Where(s => s.Span?.Bend is not null).Select(s => (s.Start, s.Span!));

    // What a bend takes of the blank beyond the arc of the middle surface, over the width that it has on this plate.
    private static double Gained(Plate plate, double start, ArcSpan span)
    {
        double arc = span.MiddleRadius * Math.Abs(span.Turn);
        return span.Length > 0 ? plate.AreaBetween(-start - span.Length, -start) * (1 - arc / span.Length) : 0;
    }

    // The bend that lies nearest to an end of the blank comes first, so that the larger part stays free of the brake (common practice).
    private static IEnumerable<BendLine> Bends(Plate plate, SideChain side)
    {
        (double front, double rear) = (-plate.Stations[^1], -plate.Stations[0]);
        (double Start, ArcSpan Span)[] ordered = [.. Bent(side).Where(b => plate.Across(-b.Start - 0.5 * b.Span.Length).Any()).OrderBy(b => Math.Min(b.Start - front, rear - b.Start - b.Span.Length)).ThenBy(b => b.Start)];
        for (int i = 0; i < ordered.Length; i++)
        {
            (double start, ArcSpan span) = ordered[i];
            double angle = Math.Abs(span.Turn), middle = -start - 0.5 * span.Length;
            foreach ((double left, double right) in plate.Across(middle))
            {
                ImmutableArray<Vec2> At(double y) => [.. plate.Across(y).Where(a => a.Right > left && a.Left < right).Take(1).SelectMany(a => new[] { new Vec2(a.Left, y), new Vec2(a.Right, y) })];
                const double inside = 1e-6;
                yield return new BendLine(
                    i + 1, null, angle, angle, angle, span.Bend!.Value.InsideRadius, span.Turn > 0, span.Bend.Value.Length, At(middle),
                    [.. new[] { At(-start - inside), At(-start - span.Length + inside) }.Where(line => line.Length > 1)]);
            }
        }
    }

    // Lines from left to right over rolled areas, numbered from the front.
    private static IEnumerable<ElementLine> Lines(Plate plate, SideChain side, double offset, double pitch)
    {
        int number = 0;
        for (int i = 0; i < side.Spans.Length; i++)
        {
            if (!IsRolled(side.Spans[i])) continue;
            int last = i;
            while (last + 1 < side.Spans.Length && IsRolled(side.Spans[last + 1])) last++;
            double start = side.Starts[i], end = side.Starts[last + 1];
            int gaps = Math.Max(2, (int)Math.Round((end - start) / pitch));
            for (int k = 0; k <= gaps; k++)
            {
                double along = start + (end - start) * k / gaps;
                (double Left, double Right)[] runs = [.. plate.Across(-along)];
                if (runs.Length > 0) number++;
                foreach ((double left, double right) in runs) yield return Line(plate, side, offset, along, (left, right), number);
            }
            i = last;
        }
    }

    private static bool IsRolled(SideSpan span) => span is CubicSpan or ArcSpan { Bend: null };

    private static ElementLine Line(Plate plate, SideChain side, double offset, double along, (double Left, double Right) run, int number)
    {
        (Vec2 left, Vec2 right) = (new(run.Left, -along), new(run.Right, -along));
        (Vec3 face, Vec3 normal) = plate.Shape.At(left);
        Vec3 other = plate.Shape.At(right).Face;
        // A line where two spans meet goes by the one after it, but at the end of the rolled area.
        int span = Enumerable.Range(0, side.Spans.Length).Last(j => IsRolled(side.Spans[j]) && side.Starts[j] <= along + 1e-9);
        double radius = side.Spans[span].Radius(Math.Clamp((along - side.Starts[span]) / side.Spans[span].Length, 0, 1));
        return new ElementLine(number, face + offset * normal, other + offset * normal, left, right, along, along, normal, 0, Math.Abs(radius), Math.Abs(radius), radius > 0);
    }
}
