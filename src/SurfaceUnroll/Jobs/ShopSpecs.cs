namespace SurfaceUnroll.Jobs;

/// <summary>What the shop's machines can do, and at what pitch it works; null where the job does not say.</summary>
/// <param name="RollWidth">Longest line that the roll takes, mm.</param>
/// <param name="RollMinRadius">Smallest radius that it rolls to, mm.</param>
/// <param name="BrakeLength">Longest bend of the brake, mm.</param>
/// <param name="ShearThickness">Thickest mild steel that the shear cuts, mm.</param>
/// <param name="LinePitch">Distance of the numbered lines, mm.</param>
/// <param name="TackPitch">Distance of tacks, mm.</param>
public sealed record ShopSpec(double? RollWidth, double? RollMinRadius, double? BrakeLength, double? ShearThickness, double? LinePitch, double? TackPitch)
{
    /// <summary>Nothing is said.</summary>
    public static ShopSpec Unknown { get; } = new(null, null, null, null, null, null);
}

/// <summary>Sheets of one size.</summary>
/// <param name="Length">Longer side, along the grain unless <paramref name="GrainAcross"/>, mm.</param>
/// <param name="Width">Shorter side, mm.</param>
/// <param name="Count">How many there are; null: as many as it takes.</param>
/// <param name="GrainAcross">The grain runs along the shorter side.</param>
public sealed record StockSheet(double Length, double Width, int? Count, bool GrainAcross);

/// <summary>How pieces are laid out on sheets.</summary>
/// <param name="Gap">Least distance between pieces, and from a piece to the rim of the sheet, mm, ≥ 0.</param>
/// <param name="Turns">How a piece may be turned whose grain does not matter.</param>
/// <param name="GrainIsFree">Pieces are laid out as if no grain mattered.</param>
public sealed record NestSpec(double Gap, NestTurns Turns, bool GrainIsFree = false)
{
    /// <summary>Largest gap that makes sense, mm: room for the widest torch and its clamps.</summary>
    public const double LargestGap = 100;

    /// <summary>5 mm and quarter turns.</summary>
    public static NestSpec Default { get; } = new(5, NestTurns.Quarter);
}

/// <summary>How a piece may be turned on a sheet.</summary>
public enum NestTurns
{
    /// <summary>By quarter turns.</summary>
    Quarter,

    /// <summary>By any angle.</summary>
    Any,

    /// <summary>Not at all.</summary>
    None,
}
