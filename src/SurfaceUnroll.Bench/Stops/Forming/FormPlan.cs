using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Stops.Forming;

/// <summary>One piece with its cards.</summary>
/// <param name="Panel">The piece.</param>
/// <param name="Cards">In the order of the work.</param>
public sealed record PiecePlan(PanelDevelopment Panel, ImmutableArray<FormCard> Cards)
{
    /// <summary>Name of the piece.</summary>
    public string Name => Panel.Spec.Name;
}

/// <summary>All steps of a job.</summary>
/// <param name="Development">The job.</param>
/// <param name="Order">The order of work.</param>
/// <param name="Joints">How it is tacked.</param>
/// <param name="Pieces">Pieces of which it is known how they are formed.</param>
public sealed record FormPlan(Development Development, FormCard Order, ImmutableArray<TackedJoint> Joints, ImmutableArray<PiecePlan> Pieces)
{
    /// <summary>The cards of the job as a whole.</summary>
    public IEnumerable<FormCard> JobCards => Joints.SelectMany(j => new[] { j.Tacks, j.Welds }).Prepend(Order);

    /// <summary>All cards.</summary>
    public IEnumerable<FormCard> AllCards => JobCards.Concat(Pieces.SelectMany(p => p.Cards));

    /// <summary>The steps of a job.</summary>
    public static FormPlan Of(Development development)
    {
        ArgumentNullException.ThrowIfNull(development);
        return new FormPlan(
            development, FormCard.Order(development), TackedJoint.Of(development),
            [.. development.Panels.Where(p => p.Plan is not null).Select(p => new PiecePlan(p, FormCard.Of(p, development.Job)))]);
    }
}
