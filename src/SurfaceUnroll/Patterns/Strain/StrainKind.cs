using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>What is done to the metal.</summary>
public enum StrainKind
{
    /// <summary>Metal is made longer.</summary>
    Stretch,

    /// <summary>Metal is made shorter.</summary>
    Shrink,
}

/// <summary>The part of a strain that is of one kind.</summary>
/// <remarks>The signed strain of larger size jumps where stretch and shrink are alike; each kind for itself is continuous.</remarks>
internal static class StrainKinds
{
    public const string Minus = "\u2212";

    /// <summary>Size of the strain of a kind, ≥ 0, as a fraction.</summary>
    public static double Size(this VertexStrain strain, StrainKind kind) => kind == StrainKind.Stretch ? strain.Stretch : strain.Shrink;

    /// <summary>The same at every vertex.</summary>
    public static ImmutableArray<double> Field(this StrainMap map, StrainKind kind) => [.. map.Vertices.Select(v => v.Size(kind))];

    /// <summary>Unit vector on the blank along which the strain of a kind acts; its sign means nothing.</summary>
    public static Vec2 Direction(this VertexStrain strain, StrainKind kind) =>
        kind == StrainKind.Stretch ? strain.MajorDirection : strain.MajorDirection.Left;

    /// <summary>A signed strain in percent, <c>+2 %</c> or <c>−0.5 %</c>.</summary>
    /// <param name="strain">As a fraction.</param>
    /// <param name="decimals">Most decimals of a percent, 0 to 2; trailing zeros are left out.</param>
    public static string Percent(double strain, int decimals = 2)
    {
        string size = Math.Round(100 * Math.Abs(strain), decimals, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture);
        return (size == "0" ? "" : strain < 0 ? Minus : "+") + size + " %";
    }

    /// <summary>The size of a strain of a kind with the sign of that kind.</summary>
    public static double Signed(this StrainKind kind, double size) => kind == StrainKind.Stretch ? size : -size;
}
