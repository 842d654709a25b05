using System.Collections.Immutable;

namespace SurfaceUnroll.Forming;

/// <summary>Which table a gauge number is looked up in: one number means other thicknesses for other metals.</summary>
public enum GaugeSystem
{
    /// <summary>Bare sheet steel, the manufacturers' standard gauge.</summary>
    SheetSteel,

    /// <summary>Galvanized sheet: bare sheet and its coating.</summary>
    Galvanized,

    /// <summary>Aluminium, the B&amp;S wire gauge.</summary>
    Aluminium,
}

/// <summary>Thickness of sheet by gauge number.</summary>
public static class Gauges
{
    private const double Inch = 25.4;

    // In: gauge, bare, galvanized. Even numbers from 10 to 24 are from published tables, the others from memory.
    private static readonly ImmutableArray<(int Gauge, double Bare, double Galvanized)> Steel =
    [
        (8, .1644, .1681), (9, .1495, .1532), (10, .1345, .1382), (11, .1196, .1233), (12, .1046, .1084), (13, .0897, .0934), (14, .0747, .0785),
        (15, .0673, .0710), (16, .0598, .0635), (17, .0538, .0575), (18, .0478, .0516), (19, .0418, .0456), (20, .0359, .0396), (21, .0329, .0366),
        (22, .0299, .0336), (23, .0269, .0306), (24, .0239, .0276), (25, .0209, .0247), (26, .0179, .0217), (27, .0164, .0202), (28, .0149, .0187),
    ];

    /// <summary>Name of a gauge table in the words of the shop.</summary>
    public static string Name(GaugeSystem system) => system switch
    {
        GaugeSystem.SheetSteel => "sheet steel",
        GaugeSystem.Galvanized => "galvanized",
        _ => "aluminium",
    };

    /// <summary>Lowest and highest number that the table holds; every whole number between them is in it.</summary>
    public static (int First, int Last) Range(GaugeSystem system) => system == GaugeSystem.Aluminium ? (1, 36) : (Steel[0].Gauge, Steel[^1].Gauge);

    /// <summary>Thickness by gauge, mm: the inches that tables print, to .0001. Null for a number that the table does not hold.</summary>
    public static double? Thickness(GaugeSystem system, int gauge)
    {
        (int first, int last) = Range(system);
        if (gauge < first || gauge > last) return null;
        return Inch * (system switch
        {
            GaugeSystem.SheetSteel => Steel[gauge - first].Bare,
            GaugeSystem.Galvanized => Steel[gauge - first].Galvanized,
            // The B&S wire gauge: .005 in at 36, 92 times as much 39 numbers lower.
            _ => Math.Round(.005 * Math.Pow(92, (36 - gauge) / 39.0), 4),
        });
    }

    /// <summary>Where the thickness of a number comes from.</summary>
    public static string Source(GaugeSystem system, int gauge) => system switch
    {
        GaugeSystem.Aluminium => "B&S gauge, .005 · 92^((36 − n)/39) in",
        _ when gauge is < 10 or > 24 || int.IsOddInteger(gauge) => "from memory",
        GaugeSystem.SheetSteel => "manufacturers' standard gauge",
        _ => "published table of galvanized sheet",
    };
}
