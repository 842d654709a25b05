using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.Photos;

/// <summary>Reads what a sheet in a photo is: <c>A4</c>, <c>letter</c>, or its own bottom and left side, <c>296.5 x 210</c>.</summary>
public static class ReferenceText
{
    /// <summary>The sheet under its four corners, or what is wrong and how to mend it.</summary>
    /// <param name="text">As written.</param>
    /// <param name="corners">Lower left, lower right, upper right, upper left, pixels.</param>
    /// <param name="units">What plain numbers are in.</param>
    /// <param name="spread">Standard error of two measured sides, mm; paper by name has its own.</param>
    public static (SheetReference? Sheet, string Problem, string Mend) Sheet(string text, ImmutableArray<Vec2> corners, LengthUnit units, double spread)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Split('x', 'X', '×') is [var bottom, var left] && ShopLength.Parse(bottom.Trim(), units) is { IsLength: true } a && ShopLength.Parse(left.Trim(), units) is { IsLength: true } b)
        {
            return a.Millimetres is > 10 and < 1e4 && b.Millimetres is > 10 and < 1e4
                ? (new SheetReference(a.Millimetres, b.Millimetres, corners, spread), "", "")
                : (null, $"\"{text}\" is no size of a sheet to measure by.", "Give its bottom and its left side, each more than 10 mm and less than 10 m.");
        }
        (PaperSize? size, string problem, string mend) = PaperText.Read(text, units);
        if (size is null) return (null, problem, mend);
        if (size.IsRoll) return (null, "A roll has no length to measure by.", "Cut a sheet and give both sides: \"600 x 900\".");
        // Lying or upright is what the photo shows: a tilt shortens one side by a fifth, and sheets are longer than wide by more.
        double across = Side(corners, 0) + Side(corners, 2), up = Side(corners, 1) + Side(corners, 3);
        (double shorter, double longer) = (size.Width, size.Height);
        return (across > up ? new SheetReference(longer, shorter, corners, HandErrors.Paper) : new SheetReference(shorter, longer, corners, HandErrors.Paper), "", "");
    }

    private static double Side(ImmutableArray<Vec2> corners, int i) => (corners[(i + 1) % 4] - corners[i]).Length;
}
