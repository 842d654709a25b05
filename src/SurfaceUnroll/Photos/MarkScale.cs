using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>The camera of a photo from marks: the taps, the measures and the bow that a lens may have, weighed in one least squares on pixels
/// (R. Hartley &amp; A. Zisserman, Multiple View Geometry, 2nd ed., algorithms 4.1 to 4.3).</summary>
internal sealed class MarkScale
{
    // Of six marks four settle the perspective and two tell the bow.
    private const int TellBow = 6;

    // So that one of twenty draws goes half as far again.
    private const double Suspected = 0.75;

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
        Vec2[]? places = Places(marks);
        if (places is null)
            return (null, new Notice("photo-distances-apart", Severity.Error, "marks", "The distances do not make a figure: some mark cannot be reached from the others.", "Measure every mark from at least two others."));
        if (IsMirrored(marks, places))
            return (null, new Notice("photo-marks-mirrored", Severity.Error, "marks", "The marks of the photo are the mirror image of the measured ones.", $"Across counts to the right and up upwards, as you look at the photo. Or {MarkFaults.ChangedNames(marks, photo) ?? "two marks"} have changed names."));
        bool[] all = [.. marks.Marks.Select(_ => true)];
        if (own.Fit(places, all, null) is not { } fit) return (null, MarkFaults.Of(marks, places, photo, null));
        PhotoScale scale = own.Told(fit, places);
        // Marks that contradict each other are told by that, unless two changed names explain all; others by the camera that would have to have seen them.
        return (scale.Findings.IsEmpty ? MarkFaults.Of(marks, places, photo, scale) : MarkFaults.Changed(marks, photo)) switch
        {
            null => (scale, null),
            { Severity: Severity.Error } fault => (null, fault),
            var warning => (scale with { Findings = [warning] }, null),
        };
    }

    /// <summary>True if a usual lens sees the marks so, as well as hands tap and measure.</summary>
    public static bool Explains(MarkReference marks, GreyPhoto photo)
    {
        Vec2[]? places = Places(marks);
        var own = new MarkScale(marks, photo);
        if (places is null || IsMirrored(marks, places) || own.Fit(places, [.. places.Select(_ => true)], null) is not { } fit || MarkAgreement.IsApart(fit.Errors)) return false;
        // A camera that is beside itself has marks near its horizon, where all is granted to them.
        double far = HandErrors.Reach(photo.HalfDiagonal) + 4 * marks.Spread * Extent([.. marks.Taps]) / Extent(places);
        return marks.Marks.Select((m, i) => (fit.Camera.ToPhoto(fit.Places[i]) - m.Tap).Length).Max() <= far
            && PlausibleView.Explains(own.Told(fit, places), PlausibleView.UsualLens, 1, MarkFaults.Slack);
    }

    private static double Extent(Vec2[] places) => places.Max(p => places.Max(q => (p - q).Length));

    private static Vec2[]? Places(MarkReference marks) => marks.IsTaped ? TapedPlaces.Of(marks) : [.. marks.Marks.Select(m => m.Place!.Value)];

    private MarkFit? Fit(Vec2[] places, bool[] counted, int? without)
    {
        int n = places.Length;
        ImmutableArray<Vec2> used = [.. places.Where((_, i) => counted[i])];
        // Of all, so that cameras without one or another have their numbers in common.
        Box box = Box.Around([.. places]);
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
        (Notice? finding, ImmutableArray<PlaneCamera> others) = new MarkAgreement(_marks, fit, places, (counted, without) => Fit(places, counted, without)).Judged();
        // What was taken for granted and what the residuals show, each for as many residuals as it is worth; but where the marks contradict each other and none is suspected, what was taken for granted is refuted.
        int freedom = HandErrors.Seen + fit.Errors.Free;
        double spread = Math.Sqrt(finding is not null && others.IsEmpty ? fit.Errors.Sum / fit.Errors.Free : (HandErrors.Seen + fit.Errors.Sum) / freedom);
        double[] numbers = fit.Camera.Numbers;
        // The true camera is about as far off as the one without the wrong mark.
        ImmutableArray<ImmutableArray<double>> errors = [.. PhotoScale.Errors(fit.Errors, spread).Select((row, i) => row.AddRange(others.Select(o => Suspected * (o.Numbers[i] - numbers[i]))))];
        var residuals = _marks.Marks.Select((m, i) => new ReferenceResidual(m.Name, fit.Camera.ToPlane(m.Tap) - fit.Places[i])).ToImmutableArray();
        if (_marks.IsTaped)
            residuals = [.. residuals, .. _marks.Distances.Select(d => new ReferenceResidual(MarkNames.Between(_marks, d), new Vec2(d.Length - (fit.Places[d.From] - fit.Places[d.To]).Length, 0), OneWay: true))];
        return new PhotoScale(fit.Camera, errors, freedom, residuals, places.Length >= TellBow, finding is null ? [] : [finding]);
    }

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
