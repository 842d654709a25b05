using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>A hemisphere in gores of 30°, against the gore layout of the drafting books (E. M. Longfield, <i>Sheet Metal Drafting</i>; from memory): the meridian is laid off at true
/// length, and at equal parts of it the length of the parallel there, 1/12 of its girth, square to it.</summary>
/// <remarks>How good that layout is. Let λ be half the gore, π/12, and u the angle along the middle meridian from the pole. A great circle square to that meridian at u meets the edge of
/// the gore at the angle v from it, with sin v = sin λ sin θ and tan θ = tan u / cos λ; so v = λ sin u (1 + λ² cos² u / 3 + …). Laid flat with v true, the gore keeps its widths and
/// its middle, and lengths at v are out by 1 − cos v. The book has λ sin u: too narrow by λ² cos² u / 3, at most 2.3 % near the pole. In the blank of least energy the strain
/// lengthwise balances over each width, and what goes with it crosswise (half of it, of the other sign) balances too; what is left of it is of the order of the strain in the middle, λ²/6.</remarks>
public class GoreTests
{
    private const double Radius = 200, Lambda = Math.PI / 12;

    private const int Rows = 41, Columns = 17;

    private static readonly FlattenedGrid Gore = GridFlattening.Flatten(
        new SheetGrid(Rows, Columns, [.. Enumerable.Range(0, Rows).SelectMany(r => Enumerable.Range(0, Columns).Select(c => Place(r, c)))], true), 1, []);

    // From the pole to the equator, left to right seen from outside.
    private static Vec3 Place(int row, int column)
    {
        double theta = 0.5 * Math.PI * row / (Rows - 1), longitude = Lambda * (2.0 * column / (Columns - 1) - 1);
        return new Vec3(Radius * Math.Sin(theta) * Math.Cos(longitude), Radius * Math.Sin(theta) * Math.Sin(longitude), Radius * Math.Cos(theta));
    }

    // Width of the blank square to its middle line at a row of that line.
    private static double Width(int row)
    {
        Vec2 at = Gore.At(row, Columns / 2), down = (Gore.At(Rows - 1, Columns / 2) - Gore.At(0, Columns / 2)).Unit;
        return Math.Abs(Across(0)) + Math.Abs(Across(Columns - 1));

        double Across(int column)
        {
            for (int r = 1; r < Rows; r++)
            {
                Vec2 a = Gore.At(r - 1, column) - at, b = Gore.At(r, column) - at;
                double ya = a.Dot(down), yb = b.Dot(down);
                if (yb >= 0) return Vec2.Lerp(a, b, -ya / (yb - ya)).Cross(down);
            }
            // Past the equator the blank ends in its own curved edge: go on along the last step.
            Vec2 p = Gore.At(Rows - 2, column) - at, q = Gore.At(Rows - 1, column) - at;
            return Vec2.Lerp(p, q, -p.Dot(down) / (q - p).Dot(down)).Cross(down);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(10)]
    public void Width_at_each_tenth_of_the_meridian_is_the_books_within_its_accuracy(int tenth)
    {
        double u = 0.05 * Math.PI * tenth, book = 2 * Radius * Math.Sin(u) * Lambda, width = Width(4 * tenth);
        Assert.InRange(width / book - 1, -Lambda * Lambda / 6, Lambda * Lambda * (Math.Cos(u) * Math.Cos(u) / 3 + 1.0 / 6));
        double great = book * (1 + Lambda * Lambda * Math.Cos(u) * Math.Cos(u) / 3);
        Assert.InRange(width / great - 1, -Lambda * Lambda / 6, Lambda * Lambda / 6);
    }

    [Fact]
    public void Middle_of_the_gore_is_the_meridian_less_what_the_metal_is_stretched_there()
    {
        double length = Enumerable.Range(1, Rows - 1).Sum(r => (Gore.At(r, Columns / 2) - Gore.At(r - 1, Columns / 2)).Length);
        // The middle is stretched by λ² sin² u / 6 where the sheet is balanced: a twelfth of λ² over the quarter circle, and no more than a sixth.
        Assert.InRange(length / (0.5 * Math.PI * Radius), 1 - Lambda * Lambda / 6, 1);
        // Off the middle the edge is shrunk by the two thirds of λ²/2 that are left, 1 − cos λ = 3.4 % in all.
        Assert.InRange(Gore.Blank.MaxShrink, Lambda * Lambda / 6, Lambda * Lambda / 2);
    }
}
