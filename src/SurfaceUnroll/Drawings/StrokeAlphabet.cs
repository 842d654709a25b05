using System.Collections.Frozen;
using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Letters of single lines, for a tool that scribes them. Every sign fills the room that its printed sister takes, so a text keeps its width.</summary>
/// <remarks>Drawn for this program on a grid 4 wide: capitals stand on 2 and reach 8, small letters reach 6, tails hang down to 0. A sign that is not here is an open box.</remarks>
public static class StrokeAlphabet
{
    private const double Wide = 4, Foot = 2, Capital = 6;

    // White on either side of a sign, as a share of its room.
    private const double Beside = 0.12;

    private const string Box = "0208484202";

    // The lines of each sign, parted by blanks; a place is two digits, across and up.
    private static readonly FrozenDictionary<char, string> Signs = new Dictionary<char, string>
    {
        [' '] = "",
        ['!'] = "2824 2322",
        ['"'] = "1816 3836",
        ['#'] = "1218 3238 0444 0646",
        ['$'] = "473818070615354443321203 2921",
        ['%'] = "0248 0718271607 2334433223",
        ['&'] = "420607182837360403122244",
        ['\''] = "2826",
        ['('] = "39272331",
        [')'] = "19272311",
        ['*'] = "2824 0745 0547",
        ['+'] = "2327 0545",
        [','] = "232211",
        ['-'] = "0545",
        ['.'] = "2223",
        ['/'] = "0148",
        ['0'] = "120307183847433212 1337",
        ['1'] = "062822 0242",
        ['2'] = "07183847460242",
        ['3'] = "0718384746354443321203 1535",
        ['4'] = "32380444",
        ['5'] = "480805354443321203",
        ['6'] = "473818070312324344351504",
        ['7'] = "084812",
        ['8'] = "150607183847463544433212030415 1535",
        ['9'] = "031232434738180706153546",
        [':'] = "2223 2526",
        [';'] = "232211 2526",
        ['<'] = "470543",
        ['='] = "0444 0646",
        ['>'] = "074503",
        ['?'] = "07183847462524 2322",
        ['@'] = "433212030718384744242646",
        ['A'] = "022842 1535",
        ['B'] = "02083847463505 3544433202",
        ['C'] = "4738180703123243",
        ['D'] = "02082846442202",
        ['E'] = "48080242 0535",
        ['F'] = "480802 0535",
        ['G'] = "47381807031232434525",
        ['H'] = "0208 4248 0545",
        ['I'] = "2228",
        ['J'] = "4843321203",
        ['K'] = "0208 480542",
        ['L'] = "080242",
        ['M'] = "0208254842",
        ['N'] = "02084248",
        ['O'] = "120307183847433212",
        ['P'] = "02083847463505",
        ['Q'] = "120307183847433212 2442",
        ['R'] = "02083847463505 2542",
        ['S'] = "473818070615354443321203",
        ['T'] = "0848 2822",
        ['U'] = "080312324348",
        ['V'] = "082248",
        ['W'] = "0812263248",
        ['X'] = "0248 0842",
        ['Y'] = "082548 2522",
        ['Z'] = "08480242",
        ['['] = "39191131",
        ['\\'] = "0841",
        [']'] = "19393111",
        ['^'] = "062846",
        ['_'] = "0141",
        ['`'] = "1827",
        ['a'] = "4642 4536160503123243",
        ['b'] = "0802 0516364543321203",
        ['c'] = "4536160503123243",
        ['d'] = "4842 4536160503123243",
        ['e'] = "04444536160503123243",
        ['f'] = "38281712 0636",
        ['g'] = "4641301001 4536160503123243",
        ['h'] = "0802 0516364542",
        ['i'] = "2226 2728",
        ['j'] = "26211000 2728",
        ['k'] = "0802 460442",
        ['l'] = "282332",
        ['m'] = "0602 05162522 25364542",
        ['n'] = "0602 0516364542",
        ['o'] = "120305163645433212",
        ['p'] = "0600 0516364543321203",
        ['q'] = "4640 4536160503123243",
        ['r'] = "0602 05163645",
        ['s'] = "45361605143443321203",
        ['t'] = "282332 1636",
        ['u'] = "0603123243 4642",
        ['v'] = "062246",
        ['w'] = "0612253246",
        ['x'] = "0246 0642",
        ['y'] = "0622 4610",
        ['z'] = "06460242",
        ['{'] = "39282615242231",
        ['|'] = "2921",
        ['}'] = "19282635242211",
        ['~'] = "04153445",
        ['°'] = "1728372617",
        ['Ø'] = "120307183847433212 0149",
        ['×'] = "0347 0743",
        ['–'] = "0545",
        ['—'] = "0545",
        ['−'] = "0545",
        ['“'] = "1826 3846",
        ['”'] = "2816 4836",
        ['‘'] = "1826",
        ['’'] = "2816",
        ['…'] = "0203 2223 4243",
        ['→'] = "0545 274523",
    }.ToFrozenDictionary();

    // Signs of small figures.
    private static readonly FrozenDictionary<char, (char Over, char Under)> Fractions = new Dictionary<char, (char, char)>
    {
        ['¼'] = ('1', '4'),
        ['½'] = ('1', '2'),
        ['¾'] = ('3', '4'),
        ['⅛'] = ('1', '8'),
        ['⅜'] = ('3', '8'),
        ['⅝'] = ('5', '8'),
        ['⅞'] = ('7', '8'),
    }.ToFrozenDictionary();

    /// <summary>True if there is a sign for a character.</summary>
    public static bool Has(char c) => c == '²' || Signs.ContainsKey(c) || Fractions.ContainsKey(c);

    /// <summary>The lines of a text where it stands, with its role.</summary>
    public static IEnumerable<Stroke> Lines(Lettering text)
    {
        Vec2 along = Vec2.FromAngle(text.Angle), up = along.Left;
        double width = PageTextWidth.Of(text.Text, text.Height), at = text.Anchor switch { Anchor.Middle => -0.5 * width, Anchor.Right => -width, _ => 0 };
        foreach (char c in text.Text)
        {
            double room = PageTextWidth.Of(c.ToString(), text.Height), start = at + Beside * room, wide = (1 - 2 * Beside) * room;
            foreach (ImmutableArray<Vec2> line in Grid(c))
            {
                yield return new Stroke(text.Role, [.. line.Select(p => text.At + (start + wide * p.X / Wide) * along + text.Height * (p.Y - Foot) / Capital * up)]);
            }
            at += room;
        }
    }

    private static IEnumerable<ImmutableArray<Vec2>> Grid(char c)
    {
        if (c == '²') return Small('2', new Vec2(0.5, 5));
        if (Fractions.TryGetValue(c, out (char Over, char Under) parts)) return [.. Small(parts.Over, new Vec2(0, 5.2)), [new Vec2(0.6, 2), new Vec2(3.4, 8)], .. Small(parts.Under, new Vec2(2.2, 2))];
        return Sign(c);
    }

    // Somewhat less than half as large.
    private static IEnumerable<ImmutableArray<Vec2>> Small(char c, Vec2 corner) =>
        Sign(c).Select(line => line.Select(p => corner + 0.45 * (p - new Vec2(0, Foot))).ToImmutableArray());

    private static IEnumerable<ImmutableArray<Vec2>> Sign(char c) =>
        Signs.GetValueOrDefault(c, Box).Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Chunk(2).Select(place => new Vec2(place[0] - '0', place[1] - '0')).ToImmutableArray());
}
