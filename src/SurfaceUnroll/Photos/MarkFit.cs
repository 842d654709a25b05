using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>A camera that was fitted to marks.</summary>
/// <param name="Camera">Camera.</param>
/// <param name="Places">Of all marks, mm: as measured, or as taps and distances together make them.</param>
/// <param name="Errors">Of the fit.</param>
internal sealed record MarkFit(PlaneCamera Camera, Vec2[] Places, LeastSquaresFit Errors);
