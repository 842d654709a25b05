using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;

namespace SurfaceUnroll.Bench.Stops.Checking;

/// <summary>Colours of stretch and shrink, the same on all pieces of a job and as on the printed map.</summary>
/// <param name="Step">Strain from band to band, as a fraction.</param>
/// <param name="Stretch">Bands of stretch.</param>
/// <param name="Shrink">Bands of shrink.</param>
public sealed record StrainColouring(double Step, int Stretch, int Shrink)
{
    private int Most => Math.Max(1, Math.Max(Stretch, Shrink));

    /// <summary>For all pieces of a job.</summary>
    public static StrainColouring Of(ImmutableArray<PanelDevelopment> panels)
    {
        VertexStrain[] all = [.. panels.Where(p => p.DrawnMap is not null).SelectMany(p => p.DrawnMap!.Vertices)];
        double stretch = all.Length == 0 ? 0 : all.Max(v => v.Stretch), shrink = all.Length == 0 ? 0 : all.Max(v => v.Shrink), step = StrainLevels.Step(stretch, shrink);
        return new StrainColouring(step, (int)Math.Floor(stretch / step + 1e-9), (int)Math.Floor(shrink / step + 1e-9));
    }

    /// <summary>Colour of each vertex of a piece.</summary>
    public ImmutableArray<(byte R, byte G, byte B)> Vertices(PanelDevelopment panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        if (panel.DrawnMap is not { } map) return [.. Enumerable.Repeat(Bytes(StrainColours.Neutral), panel.Mesh.Formed.Length)];
        return [.. map.Vertices.Select(v => Bytes(v.Stretch >= v.Shrink ? Colour(StrainKind.Stretch, v.Stretch) : Colour(StrainKind.Shrink, v.Shrink)))];
    }

    /// <summary>The bands from the largest shrink to the largest stretch: words and colour, as #rrggbb.</summary>
    public IEnumerable<(string Words, string Colour)> Bands()
    {
        for (int k = Shrink; k >= 1; k--) yield return ($"shrink {Percent(k)}", Hex(StrainColours.Of(StrainKind.Shrink, k, Most)));
        yield return ("little of either", Hex(StrainColours.Neutral));
        for (int k = 1; k <= Stretch; k++) yield return ($"stretch {Percent(k)}", Hex(StrainColours.Of(StrainKind.Stretch, k, Most)));
    }

    private PageColour Colour(StrainKind kind, double size) => StrainColours.Of(kind, (int)Math.Floor(size / Step + 1e-9), Most);

    private string Percent(int bands) => (100 * bands * Step).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    private static (byte, byte, byte) Bytes(PageColour c) => (c.Red, c.Green, c.Blue);

    private static string Hex(PageColour c) => string.Create(CultureInfo.InvariantCulture, $"#{c.Red:x2}{c.Green:x2}{c.Blue:x2}");
}
