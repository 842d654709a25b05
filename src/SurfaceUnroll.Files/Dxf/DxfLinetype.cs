using System.Collections.Immutable;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>A line type of the file.</summary>
/// <param name="Handle">Of its record.</param>
/// <param name="Name">As layers and entities call it.</param>
/// <param name="Description">Its look in characters.</param>
/// <param name="Dashes">mm: positive drawn, negative gap.</param>
internal sealed record DxfLinetype(int Handle, string Name, string Description, ImmutableArray<double> Dashes)
{
    private static readonly DxfLinetype DoubleChain = new(DxfHandle.DoubleChain, DxfLayer.DoubleChain, "Long-dashed double-dotted ____ _ _ ____ _ _", [8.4, -1.05, 0.7, -1.05, 0.7, -1.05]);

    private static ImmutableArray<DxfLinetype> Always { get; } =
    [
        new(DxfHandle.Continuous, DxfLayer.Continuous, "Solid", []),
        new(DxfHandle.Chain, DxfLayer.Chain, "Narrow chain ____ _ ____ _", [8, -1.5, 1, -1.5]),
        new(DxfHandle.Centre, DxfLayer.CentreLine, "Long-dashed dotted ________ _ ________ _", [16, -2, 1, -2]),
        new(DxfHandle.Dashed, DxfLayer.Dashed, "Dashed __ __ __", [2.2, -0.6]),
    ];

    /// <summary>Length of one repeat, mm.</summary>
    public double Length => Dashes.Sum(Math.Abs);

    /// <summary>The line types of a drawing, in the order of the table.</summary>
    /// <param name="net">It has finished edges.</param>
    public static IReadOnlyList<DxfLinetype> In(bool net) => [.. Always, .. net ? new[] { DoubleChain } : []];
}
