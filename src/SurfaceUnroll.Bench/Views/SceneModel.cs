using System.Collections.Immutable;
using System.Runtime.InteropServices;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Views;

/// <summary>A point of the scene with a word beside it.</summary>
/// <param name="At">mm.</param>
/// <param name="Text">The word.</param>
/// <param name="Kind">Class of its look, such as <c>worst</c>.</param>
public sealed record SceneLabel(Vec3 At, string Text, string Kind);

/// <summary>What the scene shows, as plain arrays for the page: triangles, lines and words.</summary>
/// <param name="Corners">x, y, z of every vertex, mm, as 32-bit floats.</param>
/// <param name="Faces">Three vertices a triangle, as 32-bit numbers.</param>
/// <param name="Colours">Red, green, blue of every vertex; empty for bare metal.</param>
/// <param name="Rims">Ends of the strokes of cut edges and outlines, x, y, z each.</param>
/// <param name="Lines">Ends of the strokes of element lines.</param>
/// <param name="Labels">Words.</param>
/// <param name="IsFlat">Seen square from above, not to be turned.</param>
public sealed record SceneModel(byte[] Corners, byte[] Faces, byte[] Colours, byte[] Rims, byte[] Lines, ImmutableArray<SceneLabel> Labels, bool IsFlat)
{
    /// <summary>The formed pieces of a development where they stand in the job.</summary>
    /// <param name="panels">The pieces.</param>
    /// <param name="colours">Colour of each vertex of each piece; null for bare metal.</param>
    /// <param name="labels">Words.</param>
    public static SceneModel Formed(ImmutableArray<PanelDevelopment> panels, Func<PanelDevelopment, ImmutableArray<(byte R, byte G, byte B)>>? colours = null, ImmutableArray<SceneLabel> labels = default) =>
        Of(panels, p => p.Mesh.Formed, e => e.FormedPath, colours, labels, isFlat: false);

    /// <summary>The blank of one piece.</summary>
    public static SceneModel Flat(PanelDevelopment panel, Func<PanelDevelopment, ImmutableArray<(byte R, byte G, byte B)>>? colours = null, ImmutableArray<SceneLabel> labels = default) =>
        Of([panel], p => [.. p.Mesh.Flat.Select(OnPlane)], e => [.. e.Path.Select(OnPlane)], colours, labels, isFlat: true);

    private static Vec3 OnPlane(Vec2 p) => new(p.X, p.Y, 0);

    private static SceneModel Of(
        ImmutableArray<PanelDevelopment> panels, Func<PanelDevelopment, ImmutableArray<Vec3>> places, Func<ElementLine, ImmutableArray<Vec3>> paths,
        Func<PanelDevelopment, ImmutableArray<(byte R, byte G, byte B)>>? colours, ImmutableArray<SceneLabel> labels, bool isFlat)
    {
        List<float> corners = [], rims = [], lines = [];
        List<uint> faces = [];
        List<byte> tints = [];
        foreach (PanelDevelopment panel in panels)
        {
            ImmutableArray<Vec3> at = places(panel);
            uint first = (uint)(corners.Count / 3);
            foreach (Vec3 p in at) Add(corners, p);
            foreach ((int a, int b, int c) in panel.Mesh.Faces) faces.AddRange([first + (uint)a, first + (uint)b, first + (uint)c]);
            foreach ((byte r, byte g, byte b) in colours?.Invoke(panel) ?? []) tints.AddRange([r, g, b]);
            foreach ((int from, int to) in MeshRim.Of(panel.Mesh.Faces)) Stroke(rims, at[from], at[to]);
            foreach (ElementLine line in panel.Elements.Where(e => e.Number > 0))
            {
                ImmutableArray<Vec3> path = paths(line);
                for (int i = 1; i < path.Length; i++) Stroke(lines, path[i - 1], path[i]);
            }
        }
        return new SceneModel(Bytes(corners), MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(faces)).ToArray(), [.. tints], Bytes(rims), Bytes(lines), labels.IsDefault ? [] : labels, isFlat);
    }

    private static void Add(List<float> to, Vec3 p) => to.AddRange([(float)p.X, (float)p.Y, (float)p.Z]);

    private static void Stroke(List<float> to, Vec3 a, Vec3 b)
    {
        Add(to, a);
        Add(to, b);
    }

    private static byte[] Bytes(List<float> values) => MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(values)).ToArray();
}

/// <summary>The rim of a mesh: sides that one triangle alone has.</summary>
internal static class MeshRim
{
    public static IEnumerable<(int From, int To)> Of(ImmutableArray<(int A, int B, int C)> faces)
    {
        var sides = new HashSet<(int, int)>();
        foreach ((int a, int b, int c) in faces)
        {
            foreach ((int from, int to) in (ReadOnlySpan<(int, int)>)[(a, b), (b, c), (c, a)])
            {
                if (!sides.Remove((to, from))) sides.Add((from, to));
            }
        }
        return sides;
    }
}
