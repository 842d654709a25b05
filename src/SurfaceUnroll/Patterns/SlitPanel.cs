using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>The pattern of a sheet with relief cuts.</summary>
internal static class SlitPanel
{
    // The metal this near to the tip of a cut, mm, gives way into the hole that is drilled there.
    private const double TipRoom = 10;

    /// <summary>The pattern. Where the two sides of a cut would overlap, the outline runs on as if there were none and the cut is one line in the middle of the overlap; a gusset of the width
    /// told fills what is missing.</summary>
    /// <param name="spec">The panel.</param>
    /// <param name="cut">Grid, cuts and blank.</param>
    /// <param name="cuts">The cuts with the places and depths asked for, as many as the grid's.</param>
    /// <param name="pitch">Distance of the numbered lines that the job asks for, mm; null where it does not.</param>
    public static PanelDevelopment Of(PanelSpec spec, SlitGrid cut, ImmutableArray<(GridSlit Cut, double At, double Depth)> cuts, double? pitch)
    {
        PanelDevelopment panel = GridPanel.Of(spec, cut.Uncut, cut, pitch);
        GridMesh mesh = cut.Uncut.Mesh;
        ImmutableArray<Vec2> flat = panel.Mesh.Flat;
        var openings = ImmutableArray.CreateBuilder<SlitOpening>();
        ImmutableArray<Vec2> outline = panel.Cut;
        for (int i = 0; i < cuts.Length; i++)
        {
            (GridSlit slit, double at, double depth) = cuts[i];
            (Vec2 near, Vec2 far) = (flat[cut.Flanks[i][0].Near], flat[cut.Flanks[i][0].Far]);
            (int row, int column) = slit.Place(mesh.Grid, slit.Steps);
            Vec2 tip = flat[mesh.At(row, column)];
            // From the near flank to the far one the way of the edge, left to right or front to rear.
            Vec2 inward = (tip - 0.5 * (near + far)).Unit;
            Vec2 onward = slit.Edge is "front" or "right" ? inward.Left : -inward.Left;
            double width = (far - near).Dot(onward);
            Vec2 start = 0.5 * (near + far);
            if (width < 0) (outline, start) = Closed(outline, near, far, tip, onward);
            openings.Add(new SlitOpening(slit.Edge, at, depth, width, (near, far), tip, start));
        }
        return panel with
        {
            Cut = outline,
            Slits = openings.ToImmutable(),
            ClearOfTips = ClearOfTips(panel, openings),
            DrawnMap = WithoutTips(panel, openings),
        };
    }

    // As if the metal round each tip were strained like the nearest that lies off it: what is drilled away needs no forming.
    private static StrainMap WithoutTips(PanelDevelopment panel, IReadOnlyCollection<SlitOpening> slits)
    {
        ImmutableArray<Vec2> flat = panel.Mesh.Flat;
        ImmutableArray<VertexStrain> strains = panel.Map!.Vertices;
        int[] near = [.. Enumerable.Range(0, flat.Length).Where(i => slits.Any(s => (flat[i] - s.Tip).Length <= TipRoom))];
        int[] around =
        [
            .. Enumerable.Range(0, flat.Length).Except(near).OrderBy(i => slits.Min(s => (flat[i] - s.Tip).Length)).Take(Math.Max(64, 4 * near.Length)),
        ];
        ImmutableArray<VertexStrain>.Builder drawn = strains.ToBuilder();
        if (around.Length > 0)
            foreach (int i in near) drawn[i] = strains[around.MinBy(k => (flat[k] - flat[i]).Length)];
        return new StrainMap(drawn.ToImmutable());
    }

    // The outline without the flanks of a cut, and without what each side has beyond the line from the tip to the middle of the mouth; and where that line meets the edge.
    private static (ImmutableArray<Vec2> Outline, Vec2 Start) Closed(ImmutableArray<Vec2> outline, Vec2 near, Vec2 far, Vec2 tip, Vec2 onward)
    {
        Vec2 line = (0.5 * (near + far) - tip).Unit;
        int count = outline.Length, from = outline.IndexOf(far), to = outline.IndexOf(near);
        if (from < 0 || to < 0) return (outline, 0.5 * (near + far));
        // Counter-clockwise the outline runs into a cut along one flank and out along the other; which comes first depends on the edge. The way round that passes the tip is left out.
        int tipAt = outline.IndexOf(tip);
        if (!Passes(from, to, tipAt, count)) (from, to) = (to, from);
        List<Vec2> rest = [.. Enumerable.Range(1, count - 1 - (to - from + count) % count).Select(k => outline[(to + k) % count])];
        // rest starts beside `to` and ends beside `from`: each end belongs to one side of the cut.
        bool startIsFar = outline[to] == far;
        Vec2 first = Trim(rest, outline[to], startIsFar, atStart: true), last = Trim(rest, outline[from], !startIsFar, atStart: false);
        Vec2 start = (first - tip).Dot(line) < (last - tip).Dot(line) ? first : last;
        return ([first, .. rest, last], start);

        double Beyond(Vec2 p, bool isFar) => (isFar ? -1 : 1) * ((p - tip).Dot(onward) - (p - tip).Dot(line) * line.Dot(onward));

        // Takes away the places beyond the line, and returns where the edge crosses it.
        Vec2 Trim(List<Vec2> path, Vec2 before, bool isFar, bool atStart)
        {
            while (path.Count > 2 && Beyond(atStart ? path[0] : path[^1], isFar) > 0)
            {
                before = atStart ? path[0] : path[^1];
                path.RemoveAt(atStart ? 0 : path.Count - 1);
            }
            Vec2 after = atStart ? path[0] : path[^1];
            double b = Beyond(before, isFar), a = Beyond(after, isFar);
            return b > a ? Vec2.Lerp(before, after, b / (b - a)) : before;
        }
    }

    private static bool Passes(int from, int to, int place, int count) => (place - from + count) % count <= (to - from + count) % count;

    // Largest strains of the triangles that lie off every tip.
    private static StrainSummary ClearOfTips(PanelDevelopment panel, IReadOnlyCollection<SlitOpening> slits)
    {
        SheetMesh mesh = panel.Mesh;
        (int A, int B, int C)[] clear =
        [
            .. mesh.Faces.Where(f => slits.All(s => new[] { f.A, f.B, f.C }.All(v => (mesh.Flat[v] - s.Tip).Length > TipRoom))),
        ];
        (double stretch, double shrink) = Flattener.Worst(new TriangleMesh(mesh.Formed, [.. clear]), mesh.Flat);
        return new StrainSummary(stretch, shrink, panel.Strain.Energy);
    }
}
