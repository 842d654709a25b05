using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>The camera of a photo from marks: the taps, the measures and the bow that a lens may have, weighed in one least squares on pixels
/// (R. Hartley &amp; A. Zisserman, Multiple View Geometry, 2nd ed., algorithms 4.1 to 4.3).</summary>
internal sealed class MarkScale
{
    // Of six marks four settle the perspective and two tell the bow.
    private const int TellBow = 6;

    private readonly MarkReference _marks;
    private readonly GreyPhoto _photo;
    private readonly double _tap;

    private MarkScale(MarkReference marks, GreyPhoto photo) => (_marks, _photo, _tap) = (marks, photo, HandErrors.Tap(photo.HalfDiagonal));

    /// <summary>The camera; null with the reason where there is none.</summary>
    /// <param name="marks">Free of the faults of <see cref="ReferenceChecks"/>.</param>
    /// <param name="photo">Its size counts.</param>
    public static (PhotoScale? Scale, Notice? Fault) Of(MarkReference marks, GreyPhoto photo)
    {
        var own = new MarkScale(marks, photo);
        Vec2[]? places = marks.IsTaped ? TapedPlaces.Of(marks) : [.. marks.Marks.Select(m => m.Place!.Value)];
        if (places is null)
            return (null, new Notice("photo-distances-apart", Severity.Error, "marks", "The distances do not make a figure: some mark cannot be reached from the others.", "Measure every mark from at least two others, and see that no triangle has a side longer than the other two together."));
        if (IsMirrored(marks, places))
            return (null, new Notice("photo-marks-mirrored", Severity.Error, "marks", "The marks of the photo are the mirror image of the measured ones.", "Across counts to the right and up upwards, as you look at the photo. Or two marks have changed names."));
        bool[] all = [.. marks.Marks.Select(_ => true)];
        if (own.Fit(places, all, null) is not { } fit)
            return (null, new Notice("photo-marks-in-line", Severity.Error, "marks", "Three of four marks lie on one line, or nearly so.", "Put marks to both sides of the edge, no three on one line."));
        return (own.Told(fit, places), null);
    }

    private sealed record MarkFit(PlaneCamera Camera, Vec2[] Places, LeastSquaresFit Errors);

    private MarkFit? Fit(Vec2[] places, bool[] counted, int? without)
    {
        int n = places.Length;
        ImmutableArray<Vec2> used = [.. places.Where((_, i) => counted[i])];
        Box box = Box.Around(used);
        double size = 0.5 * Math.Max(box.Width, box.Height);
        var camera = new PlaneCamera(default, 0, box.Centre, size, new Vec2(0.5 * _photo.Width, 0.5 * _photo.Height), _photo.HalfDiagonal);
        if (Homography.Linear([.. used.Select(p => (1 / size) * (p - camera.Origin))], [.. _marks.Marks.Where((_, i) => counted[i]).Select(m => camera.WithoutBow(m.Tap))]) is not { } start) return null;
        camera = camera with { Seen = start };
        if (used.Any(p => !start.Sees((1 / size) * (p - camera.Origin)))) return null;
        double[] shares = [.. _marks.Marks.Select((m, i) => counted[i] ? Spread(camera, m.Tap) : 0)];

        Vec2[] Places(double[] v) => _marks.IsTaped ? [.. places.Select((_, i) => i == 0 ? places[0] : i == 1 ? places[1] + new Vec2(size * v[PlaneCamera.Count], 0) : places[i] + size * new Vec2(v[PlaneCamera.Count + 2 * i - 3], v[PlaneCamera.Count + 2 * i - 2]))] : places;
        double[] Residuals(double[] v)
        {
            PlaneCamera own = camera.With(v);
            Vec2[] at = Places(v);
            var all = new List<double>(PlaneCamera.LensResiduals(v));
            for (int i = 0; i < n; i++)
            {
                if (!counted[i]) continue;
                Vec2 miss = own.ToPhoto(at[i]) - _marks.Marks[i].Tap;
                all.Add(miss.X / shares[i]);
                all.Add(miss.Y / shares[i]);
            }
            if (_marks.IsTaped)
                for (int d = 0; d < _marks.Distances.Length; d++)
                    if (d != without) all.Add(((at[_marks.Distances[d].From] - at[_marks.Distances[d].To]).Length - _marks.Distances[d].Length) / _marks.Spread);
            return [.. all];
        }
        double[] first = [.. camera.Numbers, .. new double[_marks.IsTaped ? 2 * n - 3 : 0]];
        return LeastSquares.Solve(Residuals, first) is { } solved && Math.Abs(solved.Values[8]) < PlaneCamera.StrongestBow
            ? new MarkFit(camera.With(solved.Values), Places(solved.Values), solved)
            : null;
    }

    // Of the tap and, where a place was measured, of its two coordinates, pixels.
    private double Spread(PlaneCamera camera, Vec2 tap)
    {
        if (_marks.IsTaped) return _tap;
        (double least, double most) = camera.PixelsPerMillimetre(tap);
        return Math.Sqrt(_tap * _tap + 0.5 * (least * least + most * most) * _marks.Spread * _marks.Spread);
    }

    private PhotoScale Told(MarkFit fit, Vec2[] places)
    {
        // What was taken for granted and what the residuals show, each for as many residuals as it is worth.
        int freedom = HandErrors.Seen + fit.Errors.Free;
        double spread = Math.Sqrt((HandErrors.Seen + fit.Errors.Sum) / freedom);
        var residuals = _marks.Marks.Select((m, i) => new ReferenceResidual(m.Name, fit.Camera.ToPlane(m.Tap) - fit.Places[i])).ToImmutableArray();
        if (_marks.IsTaped)
            residuals = [.. residuals, .. _marks.Distances.Select(d => new ReferenceResidual($"{_marks.Marks[d.From].Name}–{_marks.Marks[d.To].Name}", new Vec2(d.Length - (fit.Places[d.From] - fit.Places[d.To]).Length, 0)))];
        Notice? bad = _marks.IsTaped ? BadDistance(fit, places) : BadMark(fit, places);
        return new PhotoScale(fit.Camera, PhotoScale.Errors(fit.Errors, spread), freedom, residuals, places.Length >= TellBow, bad is null ? [] : [bad]);
    }

    // The mark without which all others agree so much better that chance hardly explains it.
    private Notice? BadMark(MarkFit all, Vec2[] places)
    {
        int n = places.Length;
        Vec2[] off = new Vec2[n];
        double best = 0;
        int worst = -1;
        for (int i = 0; i < n && n > 4; i++)
        {
            bool[] others = [.. places.Select((_, k) => k != i)];
            if (Fit(places, others, null) is not { } without) continue;
            off[i] = without.Camera.ToPlane(_marks.Marks[i].Tap) - places[i];
            double score = Gain(all.Errors, without.Errors, 2, n);
            if (score > best) (best, worst) = (score, i);
        }
        if (best < 1) return null;
        // One mark more than four names none: each may be left out, and the others then agree.
        return n == 5
            ? new Notice("photo-marks-apart", Severity.Warning, "marks", $"The five marks do not agree: {Millimetres(all.Camera, all.Places)} apart at most. One of them is wrong, but five cannot tell which.", "Measure them again, or add a sixth.")
            : new Notice("photo-mark-bad", Severity.Warning, $"marks.{_marks.Marks[worst].Name}",
                $"Mark {_marks.Marks[worst].Name} lies {Mm(off[worst].Length)} from where the others put it ({Mm(Math.Abs(off[worst].X))} to the {(off[worst].X < 0 ? "left" : "right")}, {Mm(Math.Abs(off[worst].Y))} {(off[worst].Y < 0 ? "down" : "up")}).",
                "Tap it again, measure it again, or leave it out.");
    }

    private Notice? BadDistance(MarkFit all, Vec2[] places)
    {
        int n = places.Length, spare = _marks.Distances.Length - (2 * n - 3) + Math.Max(0, 2 * (n - 4));
        bool[] counted = [.. places.Select(_ => true)];
        (double best, int worst, double off) = (0, -1, 0);
        for (int d = 0; d < _marks.Distances.Length && spare > 0; d++)
        {
            if (Fit(places, counted, d) is not { } without) continue;
            double score = Gain(all.Errors, without.Errors, 1, _marks.Distances.Length);
            TapedDistance taped = _marks.Distances[d];
            if (score > best) (best, worst, off) = (score, d, taped.Length - (without.Places[taped.From] - without.Places[taped.To]).Length);
        }
        if (best < 1) return null;
        (string from, string to) = (_marks.Marks[_marks.Distances[worst].From].Name, _marks.Marks[_marks.Distances[worst].To].Name);
        return spare == 1
            ? new Notice("photo-distances-unlike", Severity.Warning, "marks", $"The distances do not fit each other: from {from} to {to}, say, the others make it {Mm(Math.Abs(off))} {(off > 0 ? "less" : "more")}. Which is wrong cannot be told from so few.", "Measure them again, or measure one distance more.")
            : new Notice("photo-mark-bad", Severity.Warning, "marks", $"The distance from {from} to {to} is {Mm(Math.Abs(off))} {(off > 0 ? "more" : "less")} than the others make it.", "Measure it again, or leave it out.");
    }

    // How much better the others agree, over what one in a thousand sets of so many good marks would show by chance (Fisher's F; its quantile for two has the closed form d/2 (p^(-2/d) - 1),
    // and for one is no more than twice that).
    private static double Gain(LeastSquaresFit all, LeastSquaresFit without, int fewer, int candidates)
    {
        double d = HandErrors.Seen + Math.Max(without.Free, 0), least = (HandErrors.Seen + without.Sum) / d;
        double limit = (fewer == 1 ? d : 0.5 * d) * (Math.Pow(0.001 / candidates, -2 / d) - 1);
        return (all.Sum - without.Sum) / fewer / least / limit;
    }

    private string Millimetres(PlaneCamera camera, Vec2[] places) => Mm(_marks.Marks.Select((m, i) => (camera.ToPlane(m.Tap) - places[i]).Length).Max());

    private static string Mm(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0} mm");

    // Triangles of marks turn one way on the flat and the other in the photo, where pixels count down.
    private static bool IsMirrored(MarkReference marks, Vec2[] places)
    {
        if (marks.IsTaped) return false;
        double sum = 0;
        for (int i = 0; i < places.Length; i++)
            for (int j = 0; j < i; j++)
                for (int k = 0; k < j; k++)
                {
                    double flat = (places[j] - places[i]).Cross(places[k] - places[i]), seen = (marks.Marks[j].Tap - marks.Marks[i].Tap).Cross(marks.Marks[k].Tap - marks.Marks[i].Tap);
                    sum += Math.Sign(flat) * -seen;
                }
        return sum < 0;
    }
}
