using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>The pattern of a sheet that was given as a mesh.</summary>
internal static class MeshPanel
{
    /// <summary>Name of the one edge of a mesh.</summary>
    public const string Rim = "rim";

    /// <summary>The pattern: forward up, the middle of its box at the origin.</summary>
    /// <param name="spec">The panel.</param>
    /// <param name="formed">Its mesh.</param>
    /// <param name="blank">The blank of least energy.</param>
    public static PanelDevelopment Of(PanelSpec spec, TriangleMesh formed, FlattenedMesh blank)
    {
        ImmutableArray<Vec2> flat = ForwardUp(formed, blank.Flat);
        ImmutableArray<int> border = DiscCheck.Border(formed);
        ImmutableArray<int> closed = [.. border, border[0]];
        ImmutableArray<Vec2> rim = [.. closed.Select(v => flat[v])];
        double formedLength = PathLength.Of(closed.Select(v => formed.Places[v]));
        double flatLength = rim.Zip(rim.Skip(1), (a, b) => (b - a).Length).Sum();
        return new PanelDevelopment(
            spec, Verdict.NeedsStretching, default, default, new StrainSummary(blank.MaxStretch, blank.MaxShrink, blank.Energy),
            GridPanel.FormedArea(formed), GridPanel.FlatArea(formed, flat), [new BlankEdge(Rim, formedLength, flatLength, rim)], [],
            GridPanel.Loop(border, flat), new SheetMesh(formed.Places, flat, formed.Faces) { Chains = [new EdgeChain(Rim, closed)] })
        {
            Map = StrainField.Of(formed, flat),
        };
    }

    // Turns the blank so that what points forward on the part, −x, points up on the blank on the whole; what points right if the part has no forward, as a part square to it.
    private static ImmutableArray<Vec2> ForwardUp(TriangleMesh formed, ImmutableArray<Vec2> flat)
    {
        Vec2 forward = Mean(formed, flat, new Vec3(-1, 0, 0)), right = Mean(formed, flat, new Vec3(0, 1, 0));
        Vec2 up = forward.Length >= 0.05 * right.Length ? forward : right.Left;
        double turn = up.Length > 0 ? Math.PI / 2 - Math.Atan2(up.Y, up.X) : 0;
        ImmutableArray<Vec2> turned = [.. flat.Select(p => p.Rotate(turn))];
        Vec2 centre = Box.Around(turned).Centre;
        return [.. turned.Select(p => p - centre)];
    }

    // Sum over the triangles of a direction's image on the blank, weighed by area.
    private static Vec2 Mean(TriangleMesh formed, ImmutableArray<Vec2> flat, Vec3 direction)
    {
        Vec2 sum = Vec2.Zero;
        foreach ((int a, int b, int c) in formed.Faces)
        {
            Vec3 u = formed.Places[b] - formed.Places[a], w = formed.Places[c] - formed.Places[a];
            double uu = u.Dot(u), uw = u.Dot(w), ww = w.Dot(w), du = direction.Dot(u), dw = direction.Dot(w), det = uu * ww - uw * uw;
            // direction ≈ p·u + q·w by least squares; its image is p·u′ + q·w′.
            double p = (du * ww - dw * uw) / det, q = (dw * uu - du * uw) / det;
            sum += 0.5 * Math.Sqrt(det) * (p * (flat[b] - flat[a]) + q * (flat[c] - flat[a]));
        }
        return sum;
    }
}
