namespace SurfaceUnroll.Units;

/// <summary>A length read from text, or why it could not be read.</summary>
/// <param name="Millimetres">mm; 0 where <paramref name="Problem"/> is set.</param>
/// <param name="Problem">What is wrong, or null.</param>
/// <param name="Mend">How to mend it; set together with <paramref name="Problem"/>.</param>
/// <remarks><c>default</c> is a length of 0.</remarks>
public readonly record struct LengthReading(double Millimetres, string? Problem, string? Mend)
{
    /// <summary>True if <see cref="Millimetres"/> holds.</summary>
    public bool IsLength => Problem is null;
}
