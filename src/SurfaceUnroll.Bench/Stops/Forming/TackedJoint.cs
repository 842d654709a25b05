using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings.ShopSheet;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Stops.Forming;

/// <summary>A joint as it is tacked.</summary>
/// <param name="Plan">Its tacks.</param>
/// <param name="Fit">Its edges; null if they are not known.</param>
/// <param name="Along">The tacks along it.</param>
/// <param name="Tacks">Tack by tack.</param>
/// <param name="Welds">Weld by weld.</param>
/// <param name="Cools">Numbers of the tacks after which the joint cools.</param>
public sealed record TackedJoint(TackPlan Plan, JointFit? Fit, ImmutableArray<TackWords> Along, FormCard Tacks, FormCard Welds, ImmutableHashSet<string> Cools)
{
    /// <summary>All joints of a job that are tacked.</summary>
    public static ImmutableArray<TackedJoint> Of(Development development) =>
    [
        .. from plan in development.Tacks
           where !plan.Tacks.IsEmpty
           let along = WorkWords.Along(plan, development.Job.Units)
           select new TackedJoint(
               plan, development.Joints.FirstOrDefault(j => j.Label == plan.Joint), along, FormCard.Tacks(plan, along, welds: false), FormCard.Tacks(plan, along, welds: true),
               [.. WorkWords.Rounds(plan).SkipLast(1).Select(n => n.ToString(CultureInfo.InvariantCulture))]),
    ];
}
