using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Curves.Fairing;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Curves;

/// <summary>The notices that reading a measured curve can give, in the words of the shop.</summary>
/// <param name="where">Path of the curve in the job file.</param>
/// <param name="units">Units for values in messages.</param>
internal sealed class CurveFaults(string where, LengthUnit units)
{
    public string Where => where;

    /// <summary>The same for a part of the curve, such as <c>.plan</c>.</summary>
    public CurveFaults In(string part) => new(where + part, units);

    public Notice TooFewPoints(int count) => Error("curve-too-few-points", "",
        $"A curve needs at least two points; this one has {Count(count)}.",
        "Measure both ends and, on a bent part, a point about every hand's width between them.");

    public Notice NotFinite(string part) => Error("curve-not-finite", part,
        "A measure here is not a number, or far too large.", "Write every measure as a plain number or a length such as \"175 mm\".");

    public Notice Repeated(string part, int index, int earlier) => Error("curve-points-repeat", part,
        $"Point {Count(index + 1)} stands at the same place as point {Count(earlier + 1)}.", "Take one of the two out.");

    public Notice OffCentreline(string part, double across) => Error("curve-not-on-centreline", part,
        $"A mirrored curve starts on the centreline, but its first point is {Length(across)} across.",
        "Begin with the point where the curve crosses the centreline (across 0), or leave out \"mirror\" and give both halves.");

    public Notice LeftOfCentreline(string part, double across) => Error("curve-not-on-centreline", part,
        $"A mirrored curve goes out to the right, but this point is {Length(-across)} left of the centreline.",
        "Give the right half only, or leave out \"mirror\" and give both halves.");

    public Notice FoldsBack(string part, Vec3 place, bool planar) => Error("curve-folds-back", part,
        $"The curve turns back on itself at {Place(place, planar)}.",
        "Check the order of the points there, left to right, and that no measure is mistyped.");

    public Notice Cusp(string part, Vec3 place, bool planar) => Error("curve-cusp", part,
        $"The smooth curve comes to a sharp point near {Place(place, planar)}.",
        "Mark the point as \"corner\" if the metal has a corner there; if not, measure a few more points around it.");

    public Notice CrossesItself(Vec3 place) => Error("curve-crosses-itself", "",
        $"The curve crosses itself at {Place(place, true)}.",
        "Check the measures near there; a sheet cannot pass through itself.");

    public Notice Bulges(string part, double bulge, Vec3 place, bool planar) => new(
        "curve-bulges", Severity.Note, where + part,
        $"Between two points the smooth curve swings out by {Length(bulge)} near {Place(place, planar)}.",
        "If the real part does not, measure another point there or mark a \"corner\".");

    /// <summary>How far the fairest curve leaves the readings.</summary>
    public Notice Faired(string key, double within, double most, int index, Vec3 place, bool planar) => most < 1e-6 ? new(
        "curve-faired", Severity.Note, where + $".{key}",
        "There is nothing to make fairer here: the curve goes through every reading.", "For less of a wave take more readings: four at least between two corners, seven of a closed curve.") : new(
        "curve-faired", Severity.Note, where + $".{key}",
        $"The fairest curve within {Length(within)} of every reading leaves point {Count(index + 1)} by the most, {Length(most)}, at {Place(place, planar)}.",
        "Nothing to do if the readings are no better than that; else give a smaller \"within\".");

    public Notice NotPositive(string part, string what, double value) => Error("curve-step-size", part,
        $"The {what} must be more than zero, not {Length(value)}.", "Measure it again.");

    public Notice NoTurn(string part) => Error("curve-step-size", part,
        "An arc must turn by some angle; this one turns by 0°.", "Give the turn in degrees, positive to the right, or make it a line.");

    public Notice OverFullTurn(string part, double turn) => Error("curve-crosses-itself", part,
        $"The arc turns by {Number(turn * 180 / Math.PI)}°, which is more than once round, so it runs over itself.",
        "Give a turn of at most 360°.");

    public Notice EmptyRun() => Error("curve-too-few-points", ".run", "The run has no step.", "Give at least one line or arc.");

    public Notice PlanKind() => Error("curve-plan-kind", ".plan",
        "The plan view must be flat: points, run or chord.", "Give the height in \"side\", or give the whole curve as \"xyz\" points.");

    public Notice SideTooShort(int count) => Error("curve-side-range", ".side",
        $"The side view needs at least two points; it has {Count(count)}.", "Measure the height at two or more places fore and aft.");

    public Notice SideOutOfOrder(int index, double aft, double before) => Error("curve-side-range", $".side[{Count(index)}]",
        $"Each place of the side view must lie aft of the one before it; here {Length(aft)} follows {Length(before)}.",
        "Put the points in order from front to rear, each aft distance once.");

    /// <summary>Nothing is cut.</summary>
    /// <param name="scan">Scan.</param>
    /// <param name="cutIn">Unit of the file in which the plane would cut it; null if none.</param>
    public Notice SectionMisses(MeshSource scan, string? cutIn) => Error("section-empty", ".section",
        $"The plane does not cut {scan.File}: {Extent(scan.Mesh)}.", cutIn is null ? "Move the plane: it goes through its origin, and across and up lie in it."
            : $"The plane would cut it if its numbers were {(cutIn == "in" ? "inches" : "millimetres")}: then write \"meshUnits\": \"{cutIn}\". Else move the plane: it goes through its origin, and across and up lie in it.");

    public Notice SectionPick(int pick, ImmutableArray<SectionLine> lines) => Error("section-pick", ".section.pick",
        $"The section has {Pieces(lines)} so there is no number {Count(pick)}.", "Choose one of them, 1 for the longest.");

    public Notice SectionTooShort(double length, double step) => Error("section-too-short", ".section",
        $"The piece of the section is {Length(length)} long: too short for a curve of places {Length(step)} apart.",
        "Choose another piece with \"pick\", join it to others with a larger \"join\", or give a smaller \"noise\".");

    /// <summary>What was made of a section: how many pieces there were, and how far the curve leaves the scan.</summary>
    public Notice SectionTaken(SectionSpec spec, ImmutableArray<SectionLine> lines, FairCurve curve, ImmutableArray<Vec3> places, int spikes)
    {
        (double most, int at) = curve.Largest;
        string message = $"{spec.Scan.File}: of {Pieces(lines)} the curve follows number {Count(spec.Pick)}, from {Count(places.Length)} places; "
            + $"it leaves them by {Length(curve.Scatter)} in the mean and by {Length(most)} at most, at {Place(places[at], true)}"
            + (spikes > 0 ? $"; {Count(spikes)} that stood off like spikes were passed over." : ".");
        return most > 6 * spec.Noise || (Overstated * curve.Scatter < spec.Noise && most > FarOffScan * lines[spec.Pick - 1].Length)
            ? new Notice("section-leaves-scan", Severity.Warning, where + ".section", message, "If the scan is better than that, give a smaller \"noise\"; if the part has a corner or a tight bend there, make two curves of it.")
            : new Notice("section-taken", Severity.Note, where + ".section", message, "Nothing to do if that is right.");
    }

    /// <summary>Large pieces that the curve does not follow though they may go on from it.</summary>
    /// <param name="pieces">Numbers of them, from 1, and lengths.</param>
    /// <param name="gap">The widest of the gaps between them and what is nearest, mm.</param>
    /// <param name="taken">Number of the piece that it follows.</param>
    public Notice SectionLeavesOut(ImmutableArray<(int Number, double Length)> pieces, double gap, int taken)
    {
        string which = string.Join(" and ", pieces.Select(p => $"number {Count(p.Number)}, {Length(p.Length)} long"));
        double inches = gap / ShopLength.MillimetresPerInch, join = units == LengthUnit.Inch ? Math.Ceiling(100 * inches) / 100 : Math.Ceiling(gap);
        return new Notice("section-left-out", Severity.Warning, where + ".section",
            $"A large part of the section is left out: the curve follows number {Count(taken)} and not {which}. Between their ends are {Length(gap)}{(pieces.Length > 1 ? " at most" : "")}.",
            $"If they are one line and the scan has a hole there, write \"join\": {Number(join)}; if they are other things, nothing needs doing.");
    }

    // The noise is said this many times as large as what the curve leaves the scan by in the mean, and yet, somewhere, it leaves it by more than this part of its length: shape was taken for noise.
    private const double Overstated = 3, FarOffScan = 0.002;

    private string Pieces(ImmutableArray<SectionLine> lines)
    {
        const int most = 6;
        string lengths = string.Join(", ", lines.Take(most).Select(l => Length(l.Length))) + (lines.Length > most ? " …" : "");
        return lines.Length == 1 ? $"one piece, {lengths} long," : $"{Count(lines.Length)} pieces, {lengths} long,";
    }

    private string Extent(TriangleMesh mesh)
    {
        string Range(Func<Vec3, double> part) => $"{Length(mesh.Places.Min(part))} to {Length(mesh.Places.Max(part))}";
        return $"it reaches from x {Range(p => p.X)}, y {Range(p => p.Y)}, z {Range(p => p.Z)}";
    }

    /// <summary>A length as shown to the user.</summary>
    public string Length(double mm) => units == LengthUnit.Inch ? $"{Number(mm / 25.4)} in" : $"{Number(mm)} mm";

    private string Place(Vec3 p, bool planar)
    {
        // Profiles are worked on as (0, across, up).
        return planar ? $"across {Length(p.Y)}, up {Length(p.Z)}" : $"x {Length(p.X)}, y {Length(p.Y)}, z {Length(p.Z)}";
    }

    private Notice Error(string code, string part, string message, string mend) => new(code, Severity.Error, where + part, message, mend);

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);

    // "0.###" of a tiny negative value would print "-0".
    private static string Number(double value) => (Math.Round(value, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);
}
