using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>Doubts about readings, told and never acted upon.</summary>
internal static class ReadingChecks
{
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

    private static IEnumerable<Notice> LeftAndRight(Vec2[] places, string where, double unit, LengthUnit units)
    {
        foreach (UnlikeSides unlike in SidesCheck.In(places, unit))
        {
            (int i, int j) = (unlike.Index, unlike.Other);
            string looks = unlike.Slips switch
            {
                (null, null) => "",
                ({ } slip, null) => $" At point {Count(i + 1)}, {slip.Words}.",
                (null, { } other) => $" At point {Count(j + 1)}, {other.Words}.",
                ({ } slip, { } other) => $" Either at point {Count(i + 1)} {slip.Words}, or at point {Count(j + 1)} {other.Words}.",
            };
            yield return unlike.SamePlace
                ? Doubt("reading-sides", where, i, $"Points {Count(i + 1)} and {Count(j + 1)} should be each other's mirror image, but differ by {Show(unlike.Off, units)}: {Pair(places[i], unit)} and {Pair(places[j], unit)}.{looks}", "Measure both again; neither was changed.")
                : Doubt("reading-sides", where, i, $"Point {Count(i + 1)}, {Pair(places[i], unit)}, stands {Show(unlike.Off, units)} off the mirror image of the other side, where point {Count(j + 1)}, {Pair(places[j], unit)}, is next to it.{looks}", "Measure there again on both sides; nothing was changed.");
        }
    }

    private static Notice Doubt(string code, string where, int index, string message, string mend) => new(code, Severity.Warning, $"{where}.points[{Count(index)}]", message, mend);

    private static string Pair(Vec2 p, double unit) => string.Create(CultureInfo.InvariantCulture, $"[{p.X / unit:0.####}, {p.Y / unit:0.####}]");

    private static string Show(double mm, LengthUnit units) => units == LengthUnit.Inch ? string.Create(CultureInfo.InvariantCulture, $"{mm / ShopLength.MillimetresPerInch:0.###} in") : string.Create(CultureInfo.InvariantCulture, $"{mm:0.#} mm");

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}
