using System.Collections.Immutable;
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
}

/// <summary>What came of tracing: a curve, or the reasons why there is none.</summary>
/// <param name="Curve">Null with errors among the findings.</param>
/// <param name="Findings">Errors, or what should be known of the curve.</param>
public sealed record PhotoTrace(TracedCurve? Curve, ImmutableArray<Notice> Findings);

/// <summary>Measures edges on photos: a reference of known size in the plane of the edge takes the perspective and the bow of the lens out.</summary>
public static class PhotoTracing
{
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
        return scale is null || picked is null ? new PhotoTrace(null, [.. findings.Where(f => scale is not null || f.Severity == Severity.Error), .. faults]) : new PhotoTrace(Curve(photo, scale, picked, frame), findings);
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
