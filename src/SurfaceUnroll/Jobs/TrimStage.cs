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

    /// <summary>The panels after their trims; without those of which nothing would stay.</summary>
    public ImmutableArray<PanelInWork> Trim(ImmutableArray<PanelInWork> panels)
    {
        var trimmed = ImmutableArray.CreateBuilder<PanelInWork>(panels.Length);
        foreach (PanelInWork work in panels)
        {
            PanelInWork after = work;
            for (int i = 0; i < work.Source.Trims.Length; i++)
            {
                TrimSpec trim = work.Source.Trims[i];
                string where = $"{work.Where}.trims[{i}]";
                if (Field(trim, panels) is not { } field) continue;
                after = after with { Panel = Trimmed(after.Panel, trim, field, where) };
            }
            trimmed.Add(after);
        }
        return trimmed.ToImmutable();
    }

    // Null where the panel that trims could not be made itself.
    private static TrimField? Field(TrimSpec trim, ImmutableArray<PanelInWork> panels)
    {
        if (trim.Plane is { } plane) return TrimField.Of(trim, plane);
        SheetMesh[] by = [.. panels.Where(p => p.Source.Name == trim.By).Select(p => p.Panel.Mesh)];
        return by.Length == 0 ? null : TrimField.Of(trim, Joined(by));
    }

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
        if (MeshBorders.Of(cut.Mesh).Length > MeshBorders.Of(panel.Mesh).Length)
            return Refused("trim-inside", $"“{trim.Name}” would cut a hole into “{name}” that reaches none of its edges.", "Use \"openings\" for that.");
        if (cut.LeftOver > 0)
            _notices.Add(new Notice("trim-leaves-parts", Severity.Warning, where, $"“{trim.Name}” cuts “{name}” in {cut.LeftOver + 1} parts; only the largest is kept.", "If the others are wanted, make them panels of their own."));
        PanelDevelopment after = TrimmedPanel.Of(panel, field, cut);
        return after;

        PanelDevelopment Refused(string code, string message, string mend)
        {
            _notices.Add(new Notice(code, Severity.Error, where, message, mend));
            return panel;
        }
    }
}
