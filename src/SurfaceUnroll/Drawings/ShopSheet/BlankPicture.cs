using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The picture of a blank as the shop sheet has it: letters for the tape, numbered lines and bends, crosses where metal is worked, grain.</summary>
public static class BlankPicture
{
    /// <summary>Draws it.</summary>
    /// <param name="width">Of the page, mm.</param>
    /// <param name="height">The same, upright.</param>
    /// <param name="panel">The piece.</param>
    /// <param name="plan">How it is formed.</param>
    /// <param name="job">For names and units.</param>
    /// <returns>Forward up, not to scale.</returns>
    public static Page Of(double width, double height, PanelDevelopment panel, FormingPlan plan, Job job) =>
        Page.Of(width, height, FlatArt.Draw(new Box(Vec2.Zero, new Vec2(width, height)), panel, plan, job));
}
