namespace SurfaceUnroll.Bench.Stops;

/// <summary>One of the five stops of a job, in the order of the shop.</summary>
/// <param name="Key">In the address.</param>
/// <param name="Name">On the page.</param>
/// <param name="Says">What is done there, in a few words.</param>
/// <param name="View">The component that shows it.</param>
public sealed record ShopStop(string Key, string Name, string Says, Type View)
{
    /// <summary>All five.</summary>
    public static IReadOnlyList<ShopStop> All() =>
    [
        new("measure", "Measure", "the curves and where they stand", typeof(MeasureStop)),
        new("fit-up", "Fit up", "pieces, joints, openings", typeof(FitUpStop)),
        new("check", "Check", "the formed sheet and its verdict", typeof(CheckStop)),
        new("cut", "Cut", "paper, cut files, nesting", typeof(CutStop)),
        new("form", "Form", "rolls, bends, tacks", typeof(FormStop)),
    ];
}
