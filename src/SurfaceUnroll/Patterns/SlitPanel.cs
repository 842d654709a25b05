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

    /// <summary>The pattern. Where the two sides of a cut would overlap, both are drawn back to the line half way between them, and a gusset of the width told fills what is missing.</summary>
    /// <param name="spec">The panel.</param>
    /// <param name="cut">Grid, cuts and blank.</param>
    /// <param name="cuts">The cuts with the places and depths asked for, as many as the grid's.</param>
    public static PanelDevelopment Of(PanelSpec spec, SlitGrid cut, ImmutableArray<(GridSlit Cut, double At, double Depth)> cuts)
    {
        PanelDevelopment panel = GridPanel.Of(spec, cut.Uncut, cut);
        GridMesh mesh = cut.Uncut.Mesh;
        ImmutableArray<Vec2> flat = panel.Mesh.Flat;
        var openings = ImmutableArray.CreateBuilder<SlitOpening>();
        var moved = new Dictionary<Vec2, Vec2>();
        for (int i = 0; i < cuts.Length; i++)
        {
            (GridSlit slit, double at, double depth) = cuts[i];
            (Vec2 near, Vec2 far) = (flat[cut.Mouths[i].Near], flat[cut.Mouths[i].Far]);
            int tip = slit.Edge switch
            {
                "front" => mesh.At(slit.Steps, slit.Line),
                "rear" => mesh.At(mesh.Grid.Rows - 1 - slit.Steps, slit.Line),
                "left" => mesh.At(slit.Line, slit.Steps),
                _ => mesh.At(slit.Line, mesh.Grid.Columns - 1 - slit.Steps),
            };
            // From the near flank to the far one the way of the edge, left to right or front to rear.
            Vec2 inward = (flat[tip] - 0.5 * (near + far)).Unit;
            Vec2 onward = slit.Edge is "front" or "right" ? inward.Left : -inward.Left;
            double width = (far - near).Dot(onward);
            openings.Add(new SlitOpening(slit.Edge, at, depth, width, (near, far), flat[tip]));
            if (width < 0) CloseUp(i, tip);

            void CloseUp(int k, int end)
            {
                int twins = cut.Mouths[k].Far;
                for (int s = 0; s < slit.Steps; s++)
                {
                    int vertex = slit.Edge switch
                    {
                        "front" => mesh.At(s, slit.Line),
                        "rear" => mesh.At(mesh.Grid.Rows - 1 - s, slit.Line),
                        "left" => mesh.At(slit.Line, s),
                        _ => mesh.At(slit.Line, mesh.Grid.Columns - 1 - s),
                    };
                    Vec2 a = flat[vertex], b = flat[twins + s], half = 0.5 * (a + b);
                    (moved[a], moved[b]) = (half, half);
                }
            }
        }
        ImmutableArray<Vec2> outline = moved.Count == 0 ? panel.Cut : [.. panel.Cut.Select(p => moved.GetValueOrDefault(p, p))];
        return panel with { Cut = outline, Slits = openings.ToImmutable(), ClearOfTips = ClearOfTips(panel, openings) };
    }

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
