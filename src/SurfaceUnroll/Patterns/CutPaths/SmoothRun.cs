using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>A stretch of a cut line without a corner in it.</summary>
/// <param name="Points">Places along it, mm; of a loop without any corner the first again at the end.</param>
/// <param name="Directions">Direction of the smooth line at each place, a unit vector.</param>
/// <param name="Nodes">Indices of the places at which arcs may meet, the first and the last among them.</param>
/// <param name="Loop">It closes on itself without a corner; otherwise its ends are corners, where the direction may break.</param>
internal sealed record SmoothRun(ImmutableArray<Vec2> Points, ImmutableArray<Vec2> Directions, ImmutableArray<int> Nodes, bool Loop);
