using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Valid;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Plates;

/// <summary>What can be said of the side profile of a bent plate, in the words of the shop.</summary>
/// <param name="job">Sheet and units.</param>
/// <param name="spec">The panel.</param>
/// <param name="where">Path of its side in the job file.</param>
internal sealed class SideNotices(Job job, PanelSpec spec, string where)
{
    // The ends of a tube, or of a flange that closes on another, may touch: so much is left off at both before it is asked whether a side crosses itself, mm.
    private const double Ends = 0.01;

    /// <summary>The error of a side that cannot be laid.</summary>
    public Notice Of(SideFault fault)
    {
        double t = job.Sheet.Thickness;
        return fault switch
        {
            CrampedBend bend => Error(
                "bends-too-near", "", $"The bend at point {bend.Point} of the side of “{spec.Name}” does not fit between its neighbours: its radius takes more metal than the flats beside it have.",
                "Give it a smaller radius, or move the points apart."),
            TightArc arc => Error(
                "bend-tighter-than-sheet", $".run[{arc.Step}]",
                $"The rolled arc in step {arc.Step + 1} of the side of “{spec.Name}” has a radius of {Size(arc.Radius)} on its measured face, so that the inside of a sheet {Size(t)} thick would fold; it can be {Size(arc.Least)} at the least.",
                "Measure it again, check on which face it was measured (\"measured\"), or make it a sharp bend: { \"bend\": degrees, \"radius\": inside radius }."),
            TightRoll roll => Error(
                "bend-tighter-than-sheet", "",
                $"The smooth side of “{spec.Name}” turns so sharply at aft {Size(roll.Place.X)}, height {Size(roll.Place.Y)} that the inside of a sheet {Size(t)} thick would fold: {Middle(roll)}.",
                "Check the points there, move them apart, or make the place a sharp bend: [aft, height, \"bend\"]."),
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "There is no such fault."),
        };
    }

    /// <summary>A warning where a side crosses itself, so that metal would have to go through metal; null if it does not.</summary>
    /// <param name="side">The profile.</param>
    /// <param name="offset">From the measured face to the middle surface along the outside normal, mm.</param>
    public Notice? Crossing(SideChain side, double offset)
    {
        if (side.RunsAft || side.Length <= 4 * Ends) return null;
        Coordinate[] line = [.. side.Stations(Ends, side.Length - Ends).Select(side.At).Select(p => p.Face + offset * p.Normal).Select(p => new Coordinate(p.X, p.Y))];
        var check = new IsSimpleOp(new LineString(line));
        if (check.IsSimple()) return null;
        Coordinate place = check.NonSimpleLocation;
        return new Notice(
            "side-crosses-itself", Severity.Warning, where, $"The side of “{spec.Name}” crosses itself at aft {Size(place.X)}, height {Size(place.Y)}: metal would have to go through metal.",
            "Check the lengths and the directions of its bends; a turn is positive down and negative up.");
    }

    private string Middle(TightRoll roll) => roll.MiddleRadius > 0
        ? $"its middle would have a radius of {Size(roll.MiddleRadius)}, less than half the thickness"
        : "not even its middle has room to turn";

    private Notice Error(string code, string part, string message, string mend) => new(code, Severity.Error, where + part, message, mend);

    private string Size(double mm) => ShopLength.Print(mm, job.Units, 2);
}
