using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>A curve that was traced on a photo.</summary>
/// <param name="Points">(across, up), mm, from left to right.</param>
/// <param name="Error">mm: in 95 of 100 photos no place of the curve is farther off, once it is laid on the true one.</param>
/// <param name="Scale">What the reference told.</param>
/// <param name="Edge">Places in the photo.</param>
/// <param name="Line">The curve in the photo, pixels, as far as there is to be drawn.</param>
public sealed record TracedCurve(ImmutableArray<ProfilePoint> Points, double Error, PhotoScale Scale, PickedEdge Edge, ImmutableArray<Vec2> Line)
{
    /// <summary>mm, along the points.</summary>
    public double Length => Points.Zip(Points.Skip(1), (a, b) => (b.Place - a.Place).Length).Sum();

    /// <summary>mm, straight from end to end: what a tape checks.</summary>
    public double Chord => (Points[^1].Place - Points[0].Place).Length;
}

/// <summary>What came of tracing: a curve, or the reasons why there is none.</summary>
/// <param name="Curve">Null with errors among the findings.</param>
/// <param name="Findings">Errors, or what should be known of the curve.</param>
public sealed record PhotoTrace(TracedCurve? Curve, ImmutableArray<Notice> Findings);

/// <summary>Measures edges on photos: a reference of known size in the plane of the edge takes the perspective and the bow of the lens out.</summary>
public static class PhotoTracing
{
    // Stated errors past these are no measurement: a tenth of the curve, and twice the standard error that a job takes, mm.
    private const double MostShare = 0.1, MostError = 100;

    /// <summary>What a reference tells of a photo.</summary>
    /// <returns>Null with errors.</returns>
    public static (PhotoScale? Scale, ImmutableArray<Notice> Findings) Scale(GreyPhoto photo, PhotoReference reference)
    {
        ImmutableArray<Notice> faults = ReferenceChecks.Of(reference, photo);
        if (!faults.IsEmpty) return (null, faults);
        (PhotoScale? scale, Notice? fault) = reference is SheetReference sheet ? SheetScale.Of(sheet, photo) : MarkScale.Of((MarkReference)reference, photo);
        return fault is null ? (scale, scale!.Findings) : (null, [fault]);
    }

    /// <summary>Traces an edge.</summary>
    /// <param name="photo">Photo, 16 pixels wide and high or more.</param>
    /// <param name="reference">Of known size, in the plane of the edge.</param>
    /// <param name="edge">What was tapped of it.</param>
    /// <param name="frame">Axes of the curve.</param>
    public static PhotoTrace Trace(GreyPhoto photo, PhotoReference reference, PhotoEdge edge, TraceFrame frame)
    {
        (PhotoScale? scale, ImmutableArray<Notice> findings) = Scale(photo, reference);
        (PickedEdge? picked, ImmutableArray<Notice> faults) = EdgePicking.Of(photo, edge);
        if (scale is null || picked is null) return new PhotoTrace(null, [.. findings.Where(f => scale is not null || f.Severity == Severity.Error), .. faults]);
        TracedCurve curve = Curve(photo, scale, picked, frame);
        return Unsure(curve, reference) is { } fault ? new PhotoTrace(null, [.. findings, fault]) : new PhotoTrace(curve, findings);
    }

    // What a curve is good for no more.
    private static Notice? Unsure(TracedCurve curve, PhotoReference reference)
    {
        double most = Math.Min(MostShare * curve.Length, MostError);
        if (curve.Error <= most) return null;
        string sure = curve.Error < curve.Length ? $"The curve would be sure to {MarkNames.Mm(curve.Error)} only, over {curve.Length.ToString("0", CultureInfo.InvariantCulture)} mm of its length" : "The curve would be sure to less than its own length";
        return reference is SheetReference
            ? new Notice("photo-error-large", Severity.Error, "corners", $"{sure}: nothing to cut by.", "See that the four taps are the corners of one sheet, that its sides stand out from the ground, and that it has the size that was told.")
            : new Notice("photo-error-large", Severity.Error, "marks", $"{sure}: nothing to cut by.", "Check the taps, names and measures of the marks; put eight of them round the edge, no three in a row.");
    }

    /// <summary>The curve of picks under a camera.</summary>
    public static TracedCurve Curve(GreyPhoto photo, PhotoScale scale, PickedEdge edge, TraceFrame frame)
    {
        var curve = PhotoCurve.Of(edge, scale.Camera, HandErrors.Tap(photo.HalfDiagonal));
        double error = DeviationBound.Of(curve.Line, curve.Noise, scale);
        return new TracedCurve(Framed(curve.Points, frame), error, scale, edge, [.. curve.Line.Select(scale.Camera.ToPhoto)]);
    }

    private static ImmutableArray<ProfilePoint> Framed(ImmutableArray<ProfilePoint> points, TraceFrame frame)
    {
        if (points[^1].Place.X < points[0].Place.X) points = [.. points.Reverse()];
        Vec2 first = points[0].Place, across = frame.Level ? (points[^1].Place - first).Unit : new Vec2(1, 0);
        Vec2 Turned(Vec2 p) => new(across.Dot(p), across.Cross(p));
        Vec2 zero = frame.Centred ? new Vec2(0.5 * (Turned(first).X + Turned(points[^1].Place).X), Turned(first).Y) : Turned(first) - first;
        return [.. points.Select(p => p with { Place = Turned(p.Place) - zero })];
    }
}
