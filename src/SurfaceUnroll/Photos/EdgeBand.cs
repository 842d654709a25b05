using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>The strongest line through a band between two taps, found as the best of all ways from one end to the other (dynamic programming; M. Fischler, J. Tenenbaum &amp; H. Wolf, Detection of
/// roads and linear structures, 1981).</summary>
/// <remarks>The band is straight and has cells of some pixels; the way is made exact afterwards.</remarks>
internal sealed class EdgeBand
{
    // More cells lengthways than this tell nothing new of the way.
    private const int MostColumns = 260;

    // A way may climb by two cells a column, and pays for it: of the answer of a cell as strong as the strongest.
    private const int Steepest = 2;

    private const double Climb = 0.06;

    private readonly double[,] _answer;
    private readonly Vec2 _from;
    private readonly Vec2 _along;
    private readonly int _rows;
    private readonly int _columns;
    private readonly double _stepAlong;
    private readonly double _top;

    /// <summary>Fills the cells of a band.</summary>
    /// <param name="profile">What is looked for.</param>
    /// <param name="from">First tap, pixels.</param>
    /// <param name="to">Second.</param>
    /// <param name="halfWidth">Pixels to both sides.</param>
    public EdgeBand(EdgeProfile profile, Vec2 from, Vec2 to, double halfWidth)
    {
        double length = (to - from).Length;
        (_from, _along) = (from, (to - from).Unit);
        Step = Math.Max(1, length / MostColumns);
        _columns = Math.Max(2, (int)Math.Ceiling(length / Step) + 1);
        _stepAlong = length / (_columns - 1);
        _rows = Math.Max(2, (int)Math.Ceiling(halfWidth / Step));
        _answer = new double[_columns, 2 * _rows + 1];
        var sizes = new List<double>(_answer.Length);
        for (int c = 0; c < _columns; c++)
            for (int r = -_rows; r <= _rows; r++)
            {
                double answer = profile.At(Place(c, r), Normal);
                _answer[c, r + _rows] = answer;
                sizes.Add(Math.Abs(answer));
            }
        sizes.Sort();
        // Nine tenths of the cells are ground or evener than the edge, as long as the band is no narrower than ten cells.
        (Ground, _top) = (sizes[sizes.Count / 2], Math.Max(sizes[^Math.Max(1, Math.Min(sizes.Count, _columns / 2))], 1e-9));
    }

    /// <summary>Pixels of a cell.</summary>
    public double Step { get; }

    /// <summary>Middle one of all answers: what the ground shows of itself.</summary>
    public double Ground { get; }

    private Vec2 Normal => _along.Left;

    /// <summary>The best way.</summary>
    /// <param name="sign">1 or −1: which answers count.</param>
    /// <param name="slackFrom">Pixels that it may begin beside the first tap.</param>
    /// <param name="slackTo">Pixels that it may end beside the second.</param>
    /// <returns>Places, pixels, and the mean answer on them.</returns>
    public (ImmutableArray<Vec2> Way, double Strength) Best(double sign, double slackFrom, double slackTo)
    {
        int height = 2 * _rows + 1, first = Slack(slackFrom), last = Slack(slackTo);
        double[,] best = new double[_columns, height];
        int[,] before = new int[_columns, height];
        for (int r = 0; r < height; r++) best[0, r] = Math.Abs(r - _rows) <= first ? Worth(0, r, sign) : double.NegativeInfinity;
        for (int c = 1; c < _columns; c++)
            for (int r = 0; r < height; r++)
            {
                (double most, int from) = (double.NegativeInfinity, r);
                for (int k = Math.Max(0, r - Steepest); k <= Math.Min(height - 1, r + Steepest); k++)
                {
                    double worth = best[c - 1, k] - Climb * (k - r) * (k - r);
                    if (worth > most) (most, from) = (worth, k);
                }
                (best[c, r], before[c, r]) = (most + Worth(c, r, sign), from);
            }
        int at = _rows;
        for (int r = 0; r < height; r++)
            if (Math.Abs(r - _rows) <= last && best[_columns - 1, r] > best[_columns - 1, at]) at = r;
        var way = new Vec2[_columns];
        double sum = 0;
        for (int c = _columns - 1; c >= 0; c--)
        {
            way[c] = Place(c, at - _rows);
            sum += sign * _answer[c, at];
            at = before[c, at];
        }
        return ([.. way], sum / _columns);
    }

    private int Slack(double pixels) => Math.Min(_rows, (int)Math.Ceiling(pixels / Step));

    private double Worth(int c, int r, double sign) => Math.Clamp(sign * _answer[c, r] / _top, 0, 1);

    private Vec2 Place(int c, int r) => _from + (c * _stepAlong) * _along + (r * Step) * Normal;
}
