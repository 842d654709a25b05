using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Fitness;

/// <summary>Where to split a sheet so that the worst strain of its pieces is smallest.</summary>
/// <remarks>Least-largest partition of a row by dynamic programming: f(n, j) = min over i of max(f(n − 1, i), cost of i to j). The strain of a piece comes from a coarse grid of it, which is
/// enough to choose by; every piece that is kept is flattened afresh.</remarks>
public sealed class PieceSearch
{
    /// <summary>Most pieces that a panel may be split into.</summary>
    public const int MostPieces = 6;

    // Seams stand on some of about so many lines.
    private const int Candidates = 24;

    // Lines of the coarse grid that strains are judged on, along the seams and across them.
    private const int CoarseRows = 17, CoarseColumns = Candidates + 1;

    private readonly SheetGrid _coarse;
    private readonly bool _across;
    private readonly double _shrinkCost;
    private readonly int[] _lines;
    private readonly CancellationToken _cancellation;
    private readonly Dictionary<(int, int), (double Stretch, double Shrink)> _known = [];

    // Kept lines of the sheet for the lines of the coarse grid.
    private readonly int[] _kept;

    /// <summary>A search over a sheet.</summary>
    /// <param name="grid">The sheet.</param>
    /// <param name="along">Which way the seams run.</param>
    /// <param name="shrinkCost">What shrinking costs against stretching by as much, ≥ 1.</param>
    /// <param name="cancellation">Stops between flattenings.</param>
    public PieceSearch(SheetGrid grid, SeamDirection along, double shrinkCost, CancellationToken cancellation = default)
    {
        (_across, _shrinkCost, _cancellation) = (along == SeamDirection.Across, shrinkCost, cancellation);
        int[] rows = SheetGrid.Spread(grid.Rows, _across ? CoarseColumns : CoarseRows), columns = SheetGrid.Spread(grid.Columns, _across ? CoarseRows : CoarseColumns);
        _coarse = grid.Thinned(rows, columns, false);
        _kept = _across ? rows : columns;
        _lines = SheetGrid.Spread(_kept.Length, Candidates + 1);
    }

    /// <summary>The table of one piece to six.</summary>
    /// <param name="grid">The sheet given to the search.</param>
    public ImmutableArray<PieceChoice> Table(SheetGrid grid) =>
        [.. Enumerable.Range(1, Math.Min(MostPieces, _lines.Length - 1)).Select(n =>
        {
            int[] seams = Seams(n);
            (double stretch, double shrink) = (0, 0);
            for (int k = 0; k <= seams.Length; k++)
            {
                (double s, double c) = Strain(k == 0 ? 0 : seams[k - 1], k == seams.Length ? _lines.Length - 1 : seams[k]);
                (stretch, shrink) = (Math.Max(stretch, s), Math.Max(shrink, c));
            }
            return new PieceChoice(n, stretch, shrink, seams.Sum(s => SeamLength(grid, _kept[_lines[s]])));
        })];

    /// <summary>Columns, or rows, of the sheet at which to split it into so many pieces.</summary>
    public int[] Split(int pieces) => [.. Seams(Math.Min(pieces, _lines.Length - 1)).Select(s => _kept[_lines[s]])];

    /// <summary>Formed length of the seam along a column, or a row.</summary>
    public double SeamLength(SheetGrid grid, int line) => PathLength.Of(_across ? grid.Row(line) : grid.Column(line));

    // Which of the candidate lines.
    private int[] Seams(int pieces)
    {
        int last = _lines.Length - 1;
        if (Cost(0, last) <= SheetFitness.BendsOnlyStrain) return Even(pieces);
        var best = new (double Cost, int From)[pieces + 1, last + 1];
        for (int j = 1; j <= last; j++) best[1, j] = (Cost(0, j), 0);
        for (int n = 2; n <= pieces; n++)
        {
            for (int j = n; j <= last; j++)
            {
                // The left part's cost rises with i and the last piece's falls: the least of the larger stands where they cross.
                int lo = n - 1, hi = j - 1;
                while (lo < hi)
                {
                    int mid = (lo + hi) / 2;
                    if (best[n - 1, mid].Cost >= Cost(mid, j)) hi = mid; else lo = mid + 1;
                }
                (double cost, int from) = (double.PositiveInfinity, lo);
                for (int i = Math.Max(n - 1, lo - 1); i <= Math.Min(j - 1, lo + 1); i++)
                {
                    double c = Math.Max(best[n - 1, i].Cost, Cost(i, j));
                    if (c < cost) (cost, from) = (c, i);
                }
                best[n, j] = (cost, from);
            }
        }
        int[] seams = new int[pieces - 1];
        for (int n = pieces, j = last; n > 1; n--) seams[n - 2] = j = best[n, j].From;
        return seams;
    }

    // Where no piece is strained, the pieces are made equally large: by length over the middle of the sheet.
    private int[] Even(int pieces)
    {
        double[] running = PathLength.Running(_across ? _coarse.Column(_coarse.Columns / 2) : _coarse.Row(_coarse.Rows / 2));
        int[] seams = new int[pieces - 1];
        for (int k = 0; k < seams.Length; k++)
        {
            double wanted = running[^1] * (k + 1) / pieces;
            int first = k == 0 ? 1 : seams[k - 1] + 1, free = _lines.Length - 1 - seams.Length + k - first + 1;
            seams[k] = Enumerable.Range(first, free).MinBy(i => Math.Abs(running[_lines[i]] - wanted));
        }
        return seams;
    }

    private double Cost(int from, int to)
    {
        (double stretch, double shrink) = Strain(from, to);
        return Math.Max(stretch, shrink);
    }

    private (double Stretch, double Shrink) Strain(int from, int to)
    {
        if (_known.TryGetValue((from, to), out (double, double) known)) return known;
        int first = _lines[from], last = _lines[to];
        FlattenedMesh flat = GridFlattening.Flatten(
            _across ? _coarse.BetweenRows(first, last) : _coarse.BetweenColumns(first, last), _shrinkCost, [], _cancellation).Blank;
        return _known[(from, to)] = (flat.MaxStretch, flat.MaxShrink);
    }
}
