namespace SurfaceUnroll.Photos;

/// <summary>What the curve is in the photo.</summary>
public enum EdgeKind
{
    /// <summary>Where light and dark meet: the edge of a part before its ground.</summary>
    Edge,

    /// <summary>The middle of a dark line on something lighter, drawn or scribed.</summary>
    Line,
}
