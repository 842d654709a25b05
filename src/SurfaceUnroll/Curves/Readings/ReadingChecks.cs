using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>Doubts about readings, told and never acted upon.</summary>
internal static class ReadingChecks
{
    // Of readings of both sides, against the middle one of their differences; and of the size of the part.
    private const double Unlike = 6, LeastUnlike = 0.005;

    // A tape follows a curve to this part of it, and to a millimetre and a half at its ends (common practice, no source).
    private const double Tape = 0.005, TapeEnds = 1.5;

    /// <summary>Warnings about the readings of a profile.</summary>
    public static IEnumerable<Notice> Of(PointsSpec spec, string where, LengthUnit units)
    {
        double unit = units == LengthUnit.Inch ? ShopLength.MillimetresPerInch : 1;
        Vec2[] places = [.. spec.Points.Select(p => p.Place)];
        if (spec.Fit != Fit.Straight)
        {
            foreach (Suspect suspect in Rows(spec).SelectMany(row => SuspectSearch.In(row.Places, row.Mirrored, unit).Select(s => s with { Index = s.Index + row.Offset })))
            {
                string point = $"Point {Count(suspect.Index + 1)}";
                yield return suspect.Slip is { } slip
                    ? Doubt("reading-slip", where, suspect.Index, $"{point}: {slip.Words}. As it stands it breaks the line of its neighbours.", "Look it up or measure it again; it was not changed.")
                    : Doubt("reading-off", where, suspect.Index, $"{point} breaks the line of its neighbours, which is smooth without it.", "Measure it again, or mark it as \"corner\" if the part has one there.");
            }
        }
        if (spec.Symmetric && !spec.Mirror)
            foreach (Notice notice in LeftAndRight(places, where, unit, units)) yield return notice;
    }

    /// <summary>Warnings where the tape and the curve disagree.</summary>
    public static IEnumerable<Notice> Of(TapedSizes taped, SpaceCurve own, string where, LengthUnit units)
    {
        // Of the curve before it is placed: (0, across, up) of a profile.
        Vec3[] places = [.. own.Pieces.SelectMany(p => Enumerable.Range(0, 33).Select(i => p.At(i / 32.0).Point))];
        foreach ((string name, double? tape, double curve) in new[]
        {
            ("girth", taped.Girth, own.Length),
            ("width", taped.Width, places.Max(p => p.Y) - places.Min(p => p.Y)),
            ("height", taped.Height, places.Max(p => p.Z) - places.Min(p => p.Z)),
            ("chord", taped.Chord, (own.End.Point - own.Start.Point).Length),
        })
        {
            if (tape is not { } read || Math.Abs(read - curve) <= TapeEnds + Tape * curve) continue;
            SlipOfPen? slip = SlipOfPen.Behind(new Vec2(read, 0), units == LengthUnit.Inch ? ShopLength.MillimetresPerInch : 1).FirstOrDefault(s => Math.Abs(s.Place.X - curve) <= TapeEnds + Tape * curve);
            yield return new Notice("taped-unlike", Severity.Warning, $"{where}.taped.{name}",
                $"The {name} taped is {Show(read, units)}, that of the curve {Show(curve, units)}: {Show(Math.Abs(read - curve), units)} apart.{(slip is null ? "" : $" On the tape, {slip.Words}.")}",
                slip is null ? "Tape it again; if it stands, a reading of the curve is wrong, or there are too few." : "Look it up or tape it again; nothing was changed.");
        }
    }

    // Smooth runs between corners; of a mirrored curve without corners both halves.
    private static IEnumerable<(Vec2[] Places, bool Mirrored, int Offset)> Rows(PointsSpec spec)
    {
        Vec2[] places = [.. spec.Points.Select(p => p.Place)];
        int[] corners = [.. Enumerable.Range(1, Math.Max(0, places.Length - 2)).Where(i => spec.Points[i].Corner)];
        int[] breaks = [0, .. corners, places.Length - 1];
        for (int k = 0; k + 1 < breaks.Length; k++)
        {
            Vec2[] run = places[breaks[k]..(breaks[k + 1] + 1)];
            bool both = spec.Mirror && k == 0 && !spec.Points[0].Corner;
            if (both) yield return ([.. run.Skip(1).Reverse().Select(p => p with { X = -p.X }), .. run], true, 1 - run.Length);
            else yield return (run, false, breaks[k]);
        }
    }

    // Where readings were taken at the same places on both sides.
    private static IEnumerable<Notice> LeftAndRight(Vec2[] places, string where, double unit, LengthUnit units)
    {
        double middle = 0.5 * (places[0].X + places[^1].X), size = places.Max(p => p.X) - places.Min(p => p.X);
        Vec2 Mirrored(Vec2 p) => p with { X = 2 * middle - p.X };
        double[] unlike = [.. places.Select((p, i) => (Mirrored(p) - places[^(i + 1)]).Length)];
        double usual = unlike.Order().ElementAt(unlike.Length / 2);
        // Sides that were read at places of their own cannot be set against each other reading by reading.
        if (usual > 0.05 * size) yield break;
        double most = Math.Max(Unlike * usual, LeastUnlike * size);
        for (int i = 0; i < places.Length / 2; i++)
        {
            if (unlike[i] <= most) continue;
            int j = places.Length - 1 - i;
            SlipOfPen? slip = Slip(places[i], Mirrored(places[j])), other = Slip(places[j], Mirrored(places[i]));
            string looks = (slip, other) switch
            {
                (null, null) => "",
                (not null, null) => $" At point {Count(i + 1)}, {slip.Words}.",
                (null, not null) => $" At point {Count(j + 1)}, {other.Words}.",
                _ => $" Either at point {Count(i + 1)} {slip.Words}, or at point {Count(j + 1)} {other.Words}.",
            };
            yield return Doubt("reading-sides", where, i,
                $"Points {Count(i + 1)} and {Count(j + 1)} should be each other's mirror image, but differ by {Show(unlike[i], units)}: {Pair(places[i], unit)} and {Pair(places[j], unit)}.{looks}", "Measure both again; neither was changed.");
        }
        SlipOfPen? Slip(Vec2 read, Vec2 wanted) => SlipOfPen.Behind(read, unit).FirstOrDefault(s => (s.Place - wanted).Length <= Math.Max(usual, 0.2 * LeastUnlike * size));
    }

    private static Notice Doubt(string code, string where, int index, string message, string mend) => new(code, Severity.Warning, $"{where}.points[{Count(index)}]", message, mend);

    private static string Pair(Vec2 p, double unit) => string.Create(CultureInfo.InvariantCulture, $"[{p.X / unit:0.####}, {p.Y / unit:0.####}]");

    private static string Show(double mm, LengthUnit units) => units == LengthUnit.Inch ? string.Create(CultureInfo.InvariantCulture, $"{mm / ShopLength.MillimetresPerInch:0.###} in") : string.Create(CultureInfo.InvariantCulture, $"{mm:0.#} mm");

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}
