using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads a paper size as it is said: <c>A3</c>, <c>ansi d</c>, <c>roll 610</c>, <c>24 in x 36 in</c>.</summary>
public static class PaperText
{
    /// <summary>What can be said, for messages.</summary>
    public const string Words = "A0 to A10, B0 to B10, Letter, Legal, Tabloid, ANSI A to ANSI E, a roll (\"roll 610\") or two sides (\"600 x 900\")";

    private const string RollWord = "roll";

    private static readonly char[] Times = ['x', 'X', '×'];

    /// <summary>A paper in another size, as <see cref="Read"/> reads it, that has room for what stands on every sheet; or what is wrong and how to mend it.</summary>
    /// <param name="text">As written.</param>
    /// <param name="paper">Margins, overlap and the rest.</param>
    /// <param name="units">What plain numbers are in.</param>
    public static (PaperSpec? Paper, string Problem, string Mend) On(string text, PaperSpec paper, LengthUnit units)
    {
        (PaperSize? size, string problem, string mend) = Read(text, units);
        if (size is null) return (null, problem, mend);
        PaperSpec sized = paper with { Size = size };
        return PaperRoom.Fault(sized, mm => ShopLength.Print(mm, units)) is var (_, room, more) ? (null, room, more) : (sized, "", "");
    }

    /// <summary>A size, or what is wrong and how to mend it. Never throws.</summary>
    /// <param name="text">As written.</param>
    /// <param name="units">What plain numbers are in.</param>
    public static (PaperSize? Size, string Problem, string Mend) Read(string text, LengthUnit units)
    {
        ArgumentNullException.ThrowIfNull(text);
        string said = text.Trim();
        if (PaperSize.Named.FirstOrDefault(p => p.Name.Equals(said, StringComparison.OrdinalIgnoreCase)) is { } named) return (named, "", "");
        if (said.StartsWith(RollWord, StringComparison.OrdinalIgnoreCase))
        {
            LengthReading width = ShopLength.Parse(said[RollWord.Length..].Trim(), units);
            return width.IsLength && width.Millimetres > 0 ? (PaperSize.Roll(width.Millimetres), "", "") : (null, $"\"{text}\" does not say how wide the roll is.", "Write its width after it, such as \"roll 610\".");
        }
        if (said.Split(Times) is [var first, var second])
        {
            LengthReading a = ShopLength.Parse(first.Trim(), units), b = ShopLength.Parse(second.Trim(), units);
            if (a.IsLength && b.IsLength && a.Millimetres > 0 && b.Millimetres > 0) return (PaperSize.Own(a.Millimetres, b.Millimetres), "", "");
        }
        string? near = NearestWord.To(said, PaperSize.Named.Select(p => p.Name));
        return (null, $"\"{text}\" is no paper size that is known here.", $"{(near is null ? "" : string.Create(CultureInfo.InvariantCulture, $"Did you mean \"{near}\"? "))}It can be {Words}.");
    }
}
