using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;

namespace SurfaceUnroll.Jobs;

/// <summary>Makes two curves of a loft run the same way.</summary>
internal static class CurveAlignment
{
    /// <summary>Both curves; the one that runs against left → right turned round, or the rear one if that does not tell.</summary>
    public static (SpaceCurve Front, SpaceCurve Rear, Notice? Turned) Of(string frontName, string rearName, SpaceCurve front, SpaceCurve rear)
    {
        if (!CurveDirection.Opposed(front, rear)) return (front, rear, null);
        bool turnFront = CurveDirection.Rightward(front) < 0 && CurveDirection.Rightward(rear) >= 0;
        string name = turnFront ? frontName : rearName;
        var notice = new Notice(
            "curve-turned-round", Severity.Note, $"curves.{name}",
            $"“{frontName}” and “{rearName}” were measured in opposite directions; “{name}” was turned round.",
            "Nothing to do if that is right. To be rid of this note, list its points from left to right.");
        return turnFront ? (front.Reversed(), rear, notice) : (front, rear.Reversed(), notice);
    }
}
