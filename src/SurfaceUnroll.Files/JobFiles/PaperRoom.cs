using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Whether bars, words and map find their room on every sheet, whichever way it may lie.</summary>
public static class PaperRoom
{
    // Length of a roll for the question: longer than anything else that counts, mm.
    private const double Long = 5000;

    private static readonly bool[] Ways = [false, true], Upright = [false];

    /// <summary>What is wrong, its code and how to mend it; null if nothing.</summary>
    /// <param name="paper">Without its printer.</param>
    /// <param name="show">A length in words.</param>
    public static (string Code, string Problem, string Mend)? Fault(PaperSpec paper, Func<double, string> show)
    {
        Box[] areas = [.. (paper.Size.IsRoll ? Upright : Ways).Select(level => PrintSheet.Of(paper, level, Long).Area)];
        double least = areas.Min(a => Math.Min(a.Width, a.Height));
        if (double.IsNaN(least) || double.IsNaN(paper.Overlap)) return null;
        if (least < CheckBars.RoomForShort - 1e-9)
        {
            double most = Math.Floor(5 * (paper.Size.Width - CheckBars.RoomForShort)) / 10;
            return (
                "paper-margin", $"Of {paper.Size.Name} the margins leave {show(Math.Max(0, least))}; the check bars and words need {show(CheckBars.RoomForShort)} both ways.",
                most >= 0 ? $"Make the margins {show(most)} at most, or take larger paper." : $"Take larger paper: with margins of {show(PaperSpec.Default.Margins.Left)} the smallest is A6.");
        }
        // A short piece may be cut off a roll.
        double printed = paper.Size.IsRoll ? CheckBars.RoomForShort : least;
        return paper.Overlap <= printed / 3
            ? null
            : ("paper-overlap", $"An overlap of {show(paper.Overlap)} is more than a third of the printed width, {show(printed)}.", "Make it smaller; 10 mm is enough for tape.");
    }
}
