using System.Collections.Immutable;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.Trims;

namespace SurfaceUnroll.Jobs;

/// <summary>Trims the panels of a job by planes and by each other, all as they are before any trim.</summary>
internal sealed class TrimStage
{
    private readonly ImmutableArray<Notice>.Builder _notices = ImmutableArray.CreateBuilder<Notice>();

    /// <summary>What was found.</summary>
    public ImmutableArray<Notice> Notices => _notices.ToImmutable();

    /// <summary>The panels after their trims; one that a trim is refused for stays as it is.</summary>
    public ImmutableArray<PanelInWork> Trim(ImmutableArray<PanelInWork> panels)
    {
        Dictionary<TrimSpec, TrimField> fields = panels.SelectMany(p => p.Source.Trims).Distinct().ToDictionary(trim => trim, trim => Field(trim, panels));
        return [.. panels.Select(work => work with
        {
            Panel = work.Source.Trims.Select((trim, i) => (Trim: trim, Where: $"{work.Where}.trims[{i}]"))
                .Aggregate(work.Panel, (panel, next) => Trimmed(panel, next.Trim, fields[next.Trim], next.Where)),
        })];
    }

    private static TrimField Field(TrimSpec trim, ImmutableArray<PanelInWork> panels) => trim.Plane is { } plane
        ? TrimField.Of(trim, plane)
        : TrimField.Of(trim, Joined([.. panels.Where(p => p.Source.Name == trim.By).Select(p => p.Panel.Mesh)]));

    // The pieces of a split panel are one surface.
    private static SheetMesh Joined(SheetMesh[] meshes)
    {
        if (meshes.Length == 1) return meshes[0];
        int[] starts = [.. meshes.Select((_, i) => meshes.Take(i).Sum(m => m.Formed.Length))];
        return new SheetMesh(
            [.. meshes.SelectMany(m => m.Formed)], [.. meshes.SelectMany(m => m.Flat)],
            [.. meshes.SelectMany((m, i) => m.Faces.Select(f => (f.A + starts[i], f.B + starts[i], f.C + starts[i])))]);
    }

    private PanelDevelopment Trimmed(PanelDevelopment panel, TrimSpec trim, TrimField field, string where)
    {
        string name = panel.Spec.Name;
        if (!field.IsClear)
            return Refused("trim-keep", $"“{trim.Name}” trims “{name}” by a surface that runs along the way that is to be kept, so that this does not tell its sides apart.", "Name a way that points more squarely off the surface.");
        if (MeshTrim.Cut(panel.Mesh, field, trim.Name) is not { } cut)
            return Refused("trim-takes-all", $"“{trim.Name}” would take away all of “{name}”.", "Check where the surface stands, and which way is to be kept.");
        if (!cut.Mesh.Chains.Any(c => c.Name == trim.Name))
        {
            // A piece of a split panel may well lie clear of a trim of the whole.
            if (panel.Piece is null) _notices.Add(new Notice("trim-cuts-nothing", Severity.Warning, where, $"“{trim.Name}” does not meet “{name}”: nothing is cut.", "Check where the surface stands."));
            return panel;
        }
        if (cut.Borders.Length > MeshBorders.Of(panel.Mesh).Length)
            return Refused("trim-inside", $"“{trim.Name}” would cut a hole into “{name}” that reaches none of its edges.", "Use \"openings\" for that.");
        if (cut.LeftOver > 0)
            _notices.Add(new Notice("trim-leaves-parts", Severity.Warning, where, $"“{trim.Name}” cuts “{name}” in {cut.LeftOver + 1} parts; only the largest is kept.", "If the others are wanted, make them panels of their own."));
        return TrimmedPanel.Of(panel, field, cut);

        PanelDevelopment Refused(string code, string message, string mend)
        {
            _notices.Add(new Notice(code, Severity.Error, where, message, mend));
            return panel;
        }
    }
}
