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

    /// <summary>The panels after their trims, without the pieces that one takes whole; one that a trim is refused for stays as it is.</summary>
    public ImmutableArray<PanelInWork> Trim(ImmutableArray<PanelInWork> panels)
    {
        Dictionary<string, TrimSurface> surfaces = panels.SelectMany(p => p.Source.Trims).Select(t => t.By).OfType<string>().Distinct()
            .ToDictionary(by => by, by => new TrimSurface([.. panels.Where(p => p.Source.Name == by).Select(p => p.Panel.Mesh)]));
        return [.. panels.GroupBy(p => p.Source).SelectMany(pieces => Trimmed([.. pieces], surfaces))];
    }

    // The pieces of one panel, trim after trim.
    private PanelInWork[] Trimmed(PanelInWork[] pieces, Dictionary<string, TrimSurface> surfaces)
    {
        PanelSpec panel = pieces[0].Source;
        for (int i = 0; i < panel.Trims.Length; i++)
        {
            TrimSpec trim = panel.Trims[i];
            string where = $"{pieces[0].Where}.trims[{i}]";
            if (trim.By is { } by) pieces = [.. pieces.Select(p => p with { Panel = new TrimRefinement(surfaces[by], Math.Abs(trim.Clearance)).Of(p.Panel) })];
            TrimField field = trim.Plane is { } plane ? TrimField.Of(trim, plane) : TrimField.Of(trim, surfaces[trim.By!], [.. pieces.Select(p => p.Panel.Mesh)]);
            Outcome[] outcomes = [.. pieces.Select(p => Trimmed(p.Panel, trim, field))];
            if (outcomes.FirstOrDefault(o => o.Refused is not null).Refused is { } refused)
            {
                _notices.Add(refused(where));
                continue;
            }
            if (outcomes.All(o => o.Panel is null))
            {
                _notices.Add(new Notice("trim-takes-all", Severity.Error, where, $"“{trim.Name}” would take away all of “{panel.Name}”.", "Check where the surface stands, and which way is to be kept."));
                continue;
            }
            if (!outcomes.Any(o => o.IsCut))
                _notices.Add(new Notice("trim-cuts-nothing", Severity.Warning, where, $"“{trim.Name}” does not meet “{panel.Name}”: nothing is cut.", "Check where the surface stands."));
            for (int k = 0; k < pieces.Length; k++) Tell(pieces[k].Panel.Spec.Name, trim, outcomes[k], where);
            pieces = [.. pieces.Zip(outcomes).Where(p => p.Second.Panel is not null).Select(p => p.First with { Panel = p.Second.Panel! })];
        }
        return pieces;
    }

    // What a trim makes of a piece.
    private readonly record struct Outcome(PanelDevelopment? Panel, bool IsCut, int LeftOver, Func<string, Notice>? Refused = null);

    private void Tell(string name, TrimSpec trim, Outcome outcome, string where)
    {
        if (outcome.Panel is null)
            _notices.Add(new Notice("trim-takes-piece", Severity.Note, where, $"“{trim.Name}” takes away all of “{name}”: that piece is left out.", "Choose fewer pieces if that is not wanted."));
        if (outcome.LeftOver > 0)
            _notices.Add(new Notice("trim-leaves-parts", Severity.Warning, where, $"“{trim.Name}” cuts “{name}” in {outcome.LeftOver + 1} parts; only the largest is kept.", "If the others are wanted, make them panels of their own."));
    }

    private static Outcome Trimmed(PanelDevelopment panel, TrimSpec trim, TrimField field)
    {
        string name = panel.Spec.Name;
        if (!field.IsClear)
            return Refused("trim-keep", $"“{trim.Name}” trims “{name}” by a surface that runs along the way that is to be kept, so that this does not tell its sides apart.", "Name a way that points more squarely off the surface.");
        if (MeshTrim.Cut(panel.Mesh, field, trim.Name) is not { } cut) return new Outcome(null, true, 0);
        if (!cut.Mesh.Chains.Any(c => c.Name == trim.Name)) return new Outcome(panel, false, 0);
        if (cut.Borders.Length > MeshBorders.Of(panel.Mesh).Length)
            return Refused("trim-inside", $"“{trim.Name}” would cut a hole into “{name}” that reaches none of its edges.", "Use \"openings\" for that.");
        return new Outcome(TrimmedPanel.Of(panel, field, cut), true, cut.LeftOver);

        Outcome Refused(string code, string message, string mend) => new(panel, true, 0, where => new Notice(code, Severity.Error, where, message, mend));
    }
}
