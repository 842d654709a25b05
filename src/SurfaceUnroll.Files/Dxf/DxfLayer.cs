using SurfaceUnroll.Drawings;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>A layer of the file.</summary>
/// <param name="Name">As cutting software lists it.</param>
/// <param name="Colour">Colour index of the DXF format.</param>
/// <param name="Linetype">Name of its line type.</param>
/// <param name="Weight">Line width in 1/100 mm, one of the widths that the format knows.</param>
internal sealed record DxfLayer(string Name, int Colour, string Linetype, int Weight)
{
    public const string Continuous = "CONTINUOUS", Chain = "CHAIN", CentreLine = "CENTRE", Dashed = "DASHED", DoubleChain = "PHANTOM";

    // Beside the layers that every file has these stand only in the file of a piece that has bends or allowances: a cutter's list of layers stays short.
    private static readonly DxfLayer Bend = new("BEND", 3, Continuous, 35), Net = new("NET", 4, DoubleChain, 35);

    /// <summary>The layers of a drawing, in the order of the table.</summary>
    public static IReadOnlyList<DxfLayer> In(Drawing drawing) =>
        [.. Always, .. Has(drawing, Role.Bend) ? new[] { Bend } : [], .. Has(drawing, Role.Net) ? new[] { Net } : []];

    /// <summary>True if something of a drawing has a role.</summary>
    public static bool Has(Drawing drawing, Role role) => drawing.Strokes.Any(s => s.Role == role) || drawing.Letterings.Any(t => t.Role == role);

    private static IReadOnlyList<DxfLayer> Always { get; } =
    [
        new("CUT", 7, Continuous, 70),
        new("ELEMENT", 5, Chain, 35),
        new("MARK", 1, Continuous, 35),
        new("NOTE", 8, Continuous, 25),
        new("CONTOUR", 6, Continuous, 18),
    ];

    /// <summary>The layer of a role. A centreline is laid out like an element line, so it shares that layer and has its own line type.</summary>
    public static string Of(Role role) => role switch
    {
        Role.Cut => "CUT",
        Role.Element or Role.Centre => "ELEMENT",
        Role.Mark => "MARK",
        Role.Contour => "CONTOUR",
        Role.Bend => Bend.Name,
        Role.Net => Net.Name,
        _ => "NOTE",
    };
}
