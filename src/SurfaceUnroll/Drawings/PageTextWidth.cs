namespace SurfaceUnroll.Drawings;

/// <summary>Width of text on paper, for laying out without opening a font.</summary>
public static class PageTextWidth
{
    // Advance widths of Inter Regular 3.019, the face that the pages are printed in, from space to tilde, in thousandths of the cap height.
    private static readonly int[] Advances =
    [
        387, 383, 555, 867, 877, 1117, 879, 305, 498, 498, 688, 906, 385, 633, 379, 490, // space to /
        859, 639, 832, 875, 883, 836, 857, 785, 848, 857, 379, 385, 906, 906, 906, 697, // 0 to ?
        1287, 930, 895, 1000, 988, 822, 807, 1021, 1018, 363, 746, 896, 773, 1223, 1035, 1047, // @ to O
        873, 1047, 879, 877, 883, 1020, 930, 1305, 883, 914, 859, 498, 490, 498, 645, 621, // P to _
        684, 775, 854, 768, 854, 801, 496, 838, 812, 326, 326, 748, 326, 1195, 805, 820, // ` to o
        838, 838, 512, 719, 500, 799, 766, 1117, 742, 766, 744, 498, 449, 498, 906, // p to ~
    ];

    // Wide enough for every accented Latin letter of the face; its widest signs of all are left out of account.
    private const int OtherAdvance = 1130;

    /// <summary>Width of a line of text without kerning, mm; characters beyond ASCII count as wide ones.</summary>
    /// <param name="text">One line.</param>
    /// <param name="height">Cap height, mm.</param>
    public static double Of(string text, double height) => 1e-3 * height * text.Sum(Advance);

    /// <summary>The text if it fits, or as much of its beginning as does, with an ellipsis.</summary>
    /// <param name="text">One line.</param>
    /// <param name="height">Cap height, mm.</param>
    /// <param name="room">mm.</param>
    public static string Fit(string text, double height, double room)
    {
        if (Of(text, height) <= room) return text;
        int kept = text.Length - 1;
        while (kept > 0 && Of(text[..kept].TrimEnd() + "…", height) > room) kept--;
        return text[..kept].TrimEnd() + "…";
    }

    private static int Advance(char c) => c is >= ' ' and <= '~' ? Advances[c - ' '] : OtherAdvance;
}
