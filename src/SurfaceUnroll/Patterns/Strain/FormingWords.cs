using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>What the shop does with a sheet that cannot only bend, in words.</summary>
public static class FormingWords
{
    private const int Most = 6;

    // An area of less than this part of the blank is a ripple, unless it is the worst of its kind.
    private const double Ripple = 0.002;

    // From this part of the rim an area runs all round it; from this part of the blank's size on it runs along it.
    private const double AllRound = 0.7, Along = 0.6;

    /// <summary>What to look out for when stretching and shrinking.</summary>
    public static ImmutableArray<string> Cautions { get; } =
    [
        "File and deburr the edges first: cracks start at nicks, and a fresh edge cuts. Gloves and eye protection.",
        "Hearing protection at the hammer. Keep fingers, sleeves and gloves clear of wheels and jaws.",
        "Go over an area several times lightly rather than once hard, and try it against a template in between.",
        "Worked metal hardens and thins: anneal it if it turns springy, and leave off where the map says nothing.",
    ];

    /// <summary>Up to six sentences, the worst areas first, each kind with its worst before others.</summary>
    /// <param name="mesh">Its flat places are used: outside face up, forward up.</param>
    /// <param name="map">Strain at its vertices.</param>
    /// <param name="spots">Worst places, named by their numbers where they lie in an area; may be empty.</param>
    /// <param name="units">Of the job.</param>
    public static ImmutableArray<string> Of(SheetMesh mesh, StrainMap map, ImmutableArray<StrainSpot> spots, LengthUnit units)
    {
        ImmutableArray<FormingArea> areas = FormingArea.Of(mesh, map);
        if (areas.IsEmpty) return ["Nothing has to be stretched or shrunk by as much as 0.1 %: bend the sheet only."];
        Box blank = Box.Around(mesh.Flat);
        double total = new MeshLinks(mesh).Areas.Sum(), rim = new MeshLinks(mesh).Rim.Sum(side => (mesh.Flat[side.To] - mesh.Flat[side.From]).Length);
        FormingArea?[] worst = [areas.FirstOrDefault(a => a.Kind == StrainKind.Stretch), areas.FirstOrDefault(a => a.Kind == StrainKind.Shrink)];
        return
        [
            .. areas.Where(a => worst.Contains(a)).Concat(areas.Where(a => !worst.Contains(a) && a.Area > Ripple * total)).Take(Most)
                .Select(a => Sentence(a, blank, total, rim, units, Numbers(a, mesh, spots))),
        ];
    }

    private static string Sentence(FormingArea area, Box blank, double total, double rim, LengthUnit units, string numbers)
    {
        bool allRound = area.RimShare >= AllRound && area.Area < 0.8 * total;
        string size = allRound
            ? $"a band about {Print(area.Area / rim, units)} deep"
            : $"about {Print(area.Box.Width, units)} across and {Print(area.Box.Height, units)} lengthwise";
        string way = area.AlongRim ? ", along the rim" : area.Direction is { } d ? $", {Way(d)} only" : "";
        string place = (allRound ? "all round the rim" : PlaceOf(area, blank, total)) + numbers, percent = StrainKinds.Percent(area.Worst, 1).TrimStart('+');
        return area.Kind == StrainKind.Stretch
            ? $"Stretch {place}, {size}, by up to {percent}{way}: wheel, or hammer over dolly or bag."
            : $"Shrink {place}, {size}, by up to {percent}{way}: shrinker, or tucks hammered down.";
    }

    private static string Numbers(FormingArea area, SheetMesh mesh, ImmutableArray<StrainSpot> spots)
    {
        HashSet<Vec2> places = [.. area.Vertices.Select(v => mesh.Flat[v])];
        string[] numbers =
        [
            .. spots.Where(s => s.Kind == area.Kind && places.Contains(s.Flat)).Select(s => s.Number.ToString(CultureInfo.InvariantCulture)),
        ];
        return numbers.Length == 0 ? "" : $" (no. {string.Join(", ", numbers)})";
    }

    private static string Way(Vec2 direction)
    {
        // 60° and 30° from crosswise.
        double up = Math.Abs(direction.Y);
        return up > 0.866 ? "lengthwise" : up < 0.5 ? "crosswise" : "slantwise";
    }

    private static string PlaceOf(FormingArea area, Box blank, double total)
    {
        if (area.Area > 0.8 * total) return "nearly all of the sheet";
        bool wide = area.Box.Width > Along * blank.Width, tall = area.Box.Height > Along * blank.Height, rim = area.RimShare > 0;
        string? row = Third(area.Middle.Y, blank.Min.Y, blank.Max.Y, "rear", "front"), column = Third(area.Middle.X, blank.Min.X, blank.Max.X, "left", "right");
        if (wide && !tall) return row is null ? "from side to side through the middle" : rim ? $"along the {row} edge" : $"across the {row}";
        if (tall && !wide) return column is null ? "from front to rear through the middle" : $"from front to rear on the {column} side";
        return (row, column) switch
        {
            (null, null) => wide && rim ? "along parts of the rim and the middle" : "the middle",
            (null, _) => $"the middle of the {column} side",
            (_, null) => $"the middle of the {row}",
            _ => $"the {column} {row} corner",
        };
    }

    private static string? Third(double at, double low, double high, string first, string last)
    {
        double share = (at - low) / (high - low);
        return share < 1.0 / 3 ? first : share > 2.0 / 3 ? last : null;
    }

    // To the nearest 5 mm or quarter inch: an area has no sharp rim.
    private static string Print(double mm, LengthUnit units)
    {
        double step = units == LengthUnit.Inch ? 0.25 * ShopLength.MillimetresPerInch : 5;
        return ShopLength.Print(step * Math.Max(1, Math.Round(mm / step)), units, 0);
    }
}
