using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>The curve of a drawing file, in its own axes.</summary>
internal static class DrawnCurve
{
    // The slowest of a few places of a piece, against the mean, tells a cusp that its drawing gave it.
    private const int Samples = 64;

    /// <summary>The pieces as they were drawn, checked.</summary>
    public static OwnCurve Of(DrawnSpec spec, CurveFaults faults)
    {
        if (spec.Pieces.IsEmpty) return new OwnCurve([], false, [faults.TooFewPoints(0)]);
        ImmutableArray<Notice> errors = [.. Faults(spec, faults)];
        if (errors.Length > 0) return new OwnCurve([], spec.Mirror, errors);
        return new OwnCurve(spec.Mirror ? OnCentreline(spec.Pieces) : spec.Pieces, spec.Mirror, []);
    }

    // The first end put exactly on the centreline, and the last if it all but lies there.
    private static ImmutableArray<CurvePiece> OnCentreline(ImmutableArray<CurvePiece> pieces)
    {
        double near = Tolerance.Centreline(pieces.Sum(p => p.Length(0, 1)));
        Vec3 Snapped(Vec3 p) => Math.Abs(p.Y) <= near ? p with { Y = 0 } : p;
        CurvePiece first = pieces[0];
        if (Snapped(first.At(0).Point) != first.At(0).Point) pieces = pieces.SetItem(0, ShiftedPiece.Between(first, Snapped(first.At(0).Point), first.At(1).Point));
        CurvePiece last = pieces[^1];
        if (Snapped(last.At(1).Point) != last.At(1).Point) pieces = pieces.SetItem(pieces.Length - 1, ShiftedPiece.Between(last, last.At(0).Point, Snapped(last.At(1).Point)));
        return pieces;
    }

    private static IEnumerable<Notice> Faults(DrawnSpec spec, CurveFaults faults)
    {
        if (spec.Pieces.Any(p => !MeasuredCurve.IsFinite(p.At(0).Point) || !MeasuredCurve.IsFinite(p.At(1).Point)))
        {
            yield return faults.NotFinite(".file");
            yield break;
        }
        foreach (CurvePiece piece in spec.Pieces)
        {
            double mean = piece.Length(0, 1);
            double slowest = Enumerable.Range(1, Samples - 1).Select(i => (double)i / Samples).MinBy(t => piece.At(t).D1.Length);
            if (piece.At(slowest).D1.Length < Tolerance.Cusp * mean) yield return faults.Cusp(".file", piece.At(slowest).Point, true);
        }
        for (int i = 1; i < spec.Pieces.Length; i++)
            if (spec.Pieces[i - 1].At(1).D1.AngleTo(spec.Pieces[i].At(0).D1) > Tolerance.Fold) yield return faults.FoldsBack(".file", spec.Pieces[i].At(0).Point, true);
        if (!spec.Mirror) yield break;
        double near = Tolerance.Centreline(spec.Pieces.Sum(p => p.Length(0, 1)));
        double left = spec.Pieces.Min(p => Enumerable.Range(0, Samples + 1).Min(i => p.At((double)i / Samples).Point.Y));
        if (Math.Abs(spec.Pieces[0].At(0).Point.Y) > near) yield return faults.OffCentreline(".file", spec.Pieces[0].At(0).Point.Y);
        else if (left < -near) yield return faults.LeftOfCentreline(".file", left);
    }
}
