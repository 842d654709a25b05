using System.Collections.Immutable;
using NetTopologySuite.Geometries.Prepared;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Openings;

/// <summary>A place on a sheet, formed and flat.</summary>
/// <param name="Formed">On the measured face, mm.</param>
/// <param name="Flat">On the blank, mm.</param>
internal readonly record struct SheetPlace(Vec3 Formed, Vec2 Flat);

/// <summary>Projects openings on the measured face of a sheet; they are cut square through it.</summary>
/// <param name="panel">The sheet, its cut line still the net outline.</param>
internal sealed class SheetPiercing(PanelDevelopment panel)
{
    // Places in line to within this, mm, on the part and on the blank are not needed.
    private const double InLine = 2e-4;

    private readonly SheetMesh _mesh = panel.Mesh;
    private readonly TriangleTree _formed = new(panel.Mesh.Face, panel.Mesh.Faces);
    private readonly IPreparedGeometry _outline = PreparedGeometryFactory.Prepare(Polygons.Of(panel.Cut));
    private TriangleTree? _flat;

    /// <summary>Where the edge of an opening and its axis come to lie.</summary>
    /// <param name="Centre">Of the axis; null where it meets no metal.</param>
    /// <param name="Edge">Of the edge; empty if part of it meets no metal.</param>
    /// <param name="Missed">Share of the edge that meets no metal.</param>
    public readonly record struct Result(SheetPlace? Centre, ImmutableArray<SheetPlace> Edge, double Missed)
    {
        // Neighbours lie this many times farther apart on the blank than on the part, and a little more, where the blank is cut between them.
        private const double TornApart = 3, TornLeast = 1;

        /// <summary>It lies across the seam of a sheet that closes on itself: together on the part, apart on the blank.</summary>
        public bool IsTorn
        {
            get
            {
                ImmutableArray<SheetPlace> edge = Edge;
                return Enumerable.Range(0, edge.Length).Any(i => (edge[i], edge[(i + 1) % edge.Length]) is var (a, b) && (b.Flat - a.Flat).Length > TornApart * (b.Formed - a.Formed).Length + TornLeast);
            }
        }
    }

    /// <summary>Projects an opening along its direction, on the side of the sheet nearest to where it stands.</summary>
    public Result Project(OpeningOutline opening)
    {
        MeshPlace? axis = Hit(opening.Centre, opening.Along, 0);
        double near = axis?.Distance ?? 0;
        var edge = ImmutableArray.CreateBuilder<SheetPlace>(opening.Outline.Length);
        int missed = 0;
        foreach (Vec3 place in opening.Outline)
        {
            if (Hit(place, opening.Along, near) is not { } hit)
            {
                missed++;
                continue;
            }
            near = hit.Distance;
            edge.Add(Place(hit));
        }
        return new Result(axis is { } at ? Place(at) : null, missed == 0 ? Thinned(edge.ToImmutable()) : [], (double)missed / opening.Outline.Length);
    }

    /// <summary>Lays an opening that is given on the blank, its places as (0, x, y), on the sheet.</summary>
    public Result Lay(OpeningOutline opening)
    {
        SheetPlace?[] edge = [.. opening.Outline.Select(Laid)];
        int missed = edge.Count(p => p is null);
        return new Result(Laid(opening.Centre), missed == 0 ? Thinned([.. edge.Select(p => p!.Value)]) : [], (double)missed / edge.Length);
    }

    /// <summary>True if a closed edge on the blank is simple and inside the outline.</summary>
    public bool Holds(ImmutableArray<Vec2> edge) => Polygons.Simple(edge) is { } opening && _outline.Contains(opening);

    private SheetPlace? Laid(Vec3 onBlank)
    {
        _flat ??= new TriangleTree([.. _mesh.Flat.Select(p => new Vec3(0, p.X, p.Y))], _mesh.Faces);
        IReadOnlyList<MeshPlace> hits = _flat.Hits(onBlank, new Vec3(1, 0, 0));
        return hits.Count == 0 ? null : Place(hits[0]);
    }

    private MeshPlace? Hit(Vec3 from, Vec3 along, double near)
    {
        IReadOnlyList<MeshPlace> hits = _formed.Hits(from, along);
        return hits.Count == 0 ? null : hits.MinBy(h => Math.Abs(h.Distance - near));
    }

    private SheetPlace Place(MeshPlace at)
    {
        VertexBlend on = at.On(_mesh.Faces);
        return new SheetPlace(on.Of(_mesh.Face), on.Of(_mesh.Flat));
    }

    private static ImmutableArray<SheetPlace> Thinned(ImmutableArray<SheetPlace> edge)
    {
        var kept = ImmutableArray.CreateBuilder<SheetPlace>();
        int last = 0;
        kept.Add(edge[0]);
        for (int i = 1; i < edge.Length; i++)
        {
            SheetPlace next = edge[(i + 1) % edge.Length];
            bool needless = Enumerable.Range(last + 1, i - last).All(k => Gap(edge[last], next, edge[k]) <= InLine);
            if (needless) continue;
            kept.Add(edge[i]);
            last = i;
        }
        return kept.ToImmutable();
    }

    private static double Gap(SheetPlace a, SheetPlace b, SheetPlace p)
    {
        Vec3 along = (b.Formed - a.Formed).Unit, off = p.Formed - a.Formed;
        Vec2 way = (b.Flat - a.Flat).Unit;
        return Math.Max((off - off.Dot(along) * along).Length, Math.Abs(way.Cross(p.Flat - a.Flat)));
    }
}
