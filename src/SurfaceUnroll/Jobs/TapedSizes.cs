namespace SurfaceUnroll.Jobs;

/// <summary>Sizes of a curve that were taken with a tape besides its readings, mm, to check those by; null where they were not taken.</summary>
/// <param name="Girth">Along the curve.</param>
/// <param name="Width">From its leftmost to its rightmost place, across.</param>
/// <param name="Height">From its lowest to its highest place.</param>
/// <param name="Chord">Straight from end to end.</param>
public sealed record TapedSizes(double? Girth, double? Width, double? Height, double? Chord);
