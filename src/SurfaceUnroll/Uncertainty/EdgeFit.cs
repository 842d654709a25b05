using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Uncertainty;

/// <summary>Which edge of a finished piece lies elsewhere than it should, by least squares over the lengths that were taken off it.</summary>
/// <remarks>Each edge is let stand out by an amount of its own at either end, evenly between. A length between two places changes as they move along it, on the formed part as the sheet there carries them; at a
/// corner a place goes with both edges. Edges are tried one by one: the one that explains most is believed if it explains more than chance would (χ² of two amounts at 95 %) and more than
/// any other by as much as one amount would. If what is left is more than chance leaves, a second one is looked for.</remarks>
internal sealed class EdgeFit
{
    // What is left must be no more than chance leaves: of n lengths beyond the amounts n, and twice its standard deviation √(2n) more.
    private const double Deviations = 2;

    // An edge that is off by more, mm, is another piece: what keeps amounts that no reading tells at nothing.
    private const double Most = 20;

    private const int MostEdges = 2;

    // A place this near to an edge stands on it, mm.
    private const double Near = 0.5;

    // A corner sharper or blunter than this (sine) moves along the mean of both edges.
    private const double Blunt = 0.2;

    private readonly PanelDevelopment _panel;

    private readonly ImmutableArray<BuiltDifference> _differences;

    private readonly BlankEdge[] _edges;

    private readonly ImmutableArray<BandPlace>[] _rows;

    private readonly Dictionary<string, TapeMark> _marks;

    /// <summary>A fit to the differences of one piece.</summary>
    public EdgeFit(PanelDevelopment panel, ImmutableArray<BuiltDifference> differences)
    {
        (_panel, _differences) = (panel, differences);
        var places = new EdgePlaces(panel);
        _rows = [.. places.Rows];
        _edges = [.. places.Edges];
        _marks = (panel.Plan?.Marks ?? []).ToDictionary(m => m.Letter);
    }

    /// <summary>The edges that explain what is beyond the errors, all of them, or either of two by itself; none where the readings do not tell.</summary>
    public (ImmutableArray<EdgeCorrection> Edges, bool Either) Find()
    {
        (ImmutableArray<EdgeCorrection> edges, bool either) = Explained();
        // Nobody cuts so far off the line: a length was written down wrongly.
        return edges.Any(e => Math.Max(Math.Abs(e.AtFirst), Math.Abs(e.AtLast)) > Most) ? ([], false) : (edges, either);
    }

    private (ImmutableArray<EdgeCorrection> Edges, bool Either) Explained()
    {
        var taken = new List<int>();
        // One length more than amounts at the least, or anything could be explained.
        while (taken.Count < MostEdges && 2 * (taken.Count + 1) < _differences.Length)
        {
            double before = Solve(taken).Misfit;
            if (taken.Count > 0 && IsChance(before, taken.Count)) break;
            (int Edge, double Misfit)[] tries = [.. Enumerable.Range(0, _edges.Length).Where(e => !taken.Contains(e)).Select(e => (e, Solve([.. taken, e]).Misfit)).OrderBy(t => t.Misfit)];
            if (tries.Length == 0 || before - tries[0].Misfit < ChiSquare.TwoSeldom) break;
            int[] alike = [.. tries.Where(t => t.Misfit - tries[0].Misfit < ChiSquare.OneSeldom).Select(t => t.Edge)];
            // A blank that is too long is so at its front or at its rear: laid on the other, both are one.
            if (alike.Length == 2 && taken.Count == 0 && IsChance(tries[1].Misfit, 1)) return ([.. alike.SelectMany(e => Corrections([e]))], true);
            if (alike.Length > 1) return ([], false);
            taken.Add(tries[0].Edge);
        }
        return IsChance(Solve(taken).Misfit, taken.Count) ? ([.. Corrections(taken)], false) : ([], false);
    }

    private bool IsChance(double misfit, int edges) => _differences.Length - 2 * edges is var left && misfit <= left + Deviations * Math.Sqrt(2 * left);

    private IEnumerable<EdgeCorrection> Corrections(List<int> edges)
    {
        (double[] amounts, double[] errors, _) = Solve(edges);
        return edges.Select((edge, k) => new EdgeCorrection(
            _edges[edge].Name, amounts[2 * k], amounts[2 * k + 1], errors[2 * k], errors[2 * k + 1], Nearest(_edges[edge].Flat[0]), Nearest(_edges[edge].Flat[^1])));
    }

    // Least squares for the two amounts of each of some edges: they, their standard errors, and what is left of χ².
    private (double[] Amounts, double[] Errors, double Misfit) Solve(List<int> edges)
    {
        double[][] columns = [.. edges.SelectMany(e => new[] { Column(e, true), Column(e, false) })];
        int n = columns.Length;
        double[,] matrix = new double[n, n];
        double[] right = new double[n];
        for (int r = 0; r < n; r++)
        {
            for (int c = 0; c < n; c++)
                for (int i = 0; i < _differences.Length; i++) matrix[r, c] += columns[r][i] * columns[c][i] / Square(_differences[i].Error);
            for (int i = 0; i < _differences.Length; i++) right[r] += columns[r][i] * _differences[i].Off / Square(_differences[i].Error);
            matrix[r, r] += 1 / Square(Most);
        }
        DenseCholesky factor = DenseCholesky.Of(matrix)!; // What the diagonal was raised by keeps it regular.
        double[] amounts = factor.Solve(right);
        double[,] inverse = factor.InverseFactor();
        double[] errors = [.. Enumerable.Range(0, n).Select(k => Math.Sqrt(Enumerable.Range(0, n).Sum(i => Square(inverse[k, i]))))];
        double misfit = _differences.Select((d, i) => Square((d.Off - columns.Select((column, k) => column[i] * amounts[k]).Sum()) / d.Error)).Sum();
        return (amounts, errors, misfit);
    }

    private static double Square(double x) => x * x;

    // How each length changes for each millimetre that one end of an edge stands out.
    private double[] Column(int edge, bool first) => [.. _differences.Select(d => d.Reading.Kind switch
    {
        BuiltKind.Edge => AlongEdge(d.Reading.From, edge, first),
        BuiltKind.Part => OnPart(_marks[d.Reading.From], _marks[d.Reading.To], edge, first),
        _ => (_marks[d.Reading.To].Flat - _marks[d.Reading.From].Flat).Unit.Dot(Motion(_marks[d.Reading.To].Flat, edge, first) - Motion(_marks[d.Reading.From].Flat, edge, first)),
    })];

    private double OnPart(TapeMark from, TapeMark to, int edge, bool first) =>
        (to.Formed - from.Formed).Unit.Dot(Carried(to, Motion(to.Flat, edge, first)) - Carried(from, Motion(from.Flat, edge, first)));

    // Length of one edge, as another, or itself, moves: of its places moved a little.
    private double AlongEdge(string name, int edge, bool first)
    {
        const double little = 1e-3;
        ImmutableArray<Vec2> line = _edges.First(e => e.Name == name).Flat;
        return (PathLength.Of(line.Select(p => InSpace(p + little * Motion(p, edge, first)))) - PathLength.Of(line.Select(InSpace))) / little;
    }

    // Of a place on the rim of the blank: with its edge, or at a corner with both.
    private Vec2 Motion(Vec2 place, int edge, bool first)
    {
        (Vec2 Outward, double Move)[] on = [.. Enumerable.Range(0, _edges.Length).Where(e => DrawingPlaces.Distance(place, _edges[e].Flat) < Near).Select(e =>
        {
            BandPlace at = _rows[e].MinBy(p => (p.Flat - place).Length);
            double share = at.At / _rows[e][^1].At;
            return (at.Outward, e != edge ? 0 : first ? 1 - share : share);
        })];
        if (on.All(e => e.Move == 0)) return Vec2.Zero;
        if (on.Length == 1) return on[0].Move * on[0].Outward;
        (Vec2 a, Vec2 b) = (on[0].Outward, on[1].Outward);
        double sine = a.Cross(b);
        if (Math.Abs(sine) < Blunt) return 0.5 * (on[0].Move + on[1].Move) * (a + b).Unit;
        // The place that stands out by both at once.
        return 1 / sine * new Vec2(on[0].Move * b.Y - on[1].Move * a.Y, on[1].Move * a.X - on[0].Move * b.X);
    }

    // A motion on the blank as the formed sheet carries it: by the largest triangle at the place.
    private Vec3 Carried(TapeMark mark, Vec2 motion)
    {
        if (motion == Vec2.Zero) return Vec3.Zero;
        SheetMesh mesh = _panel.Mesh;
        (double area, Vec3 carried) = (0, Vec3.Zero);
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            if (mesh.Flat[a] != mark.Flat && mesh.Flat[b] != mark.Flat && mesh.Flat[c] != mark.Flat) continue;
            (Vec2 u, Vec2 v) = (mesh.Flat[b] - mesh.Flat[a], mesh.Flat[c] - mesh.Flat[a]);
            double cross = u.Cross(v);
            if (Math.Abs(cross) <= area) continue;
            area = Math.Abs(cross);
            carried = motion.Cross(v) / cross * (mesh.Formed[b] - mesh.Formed[a]) + u.Cross(motion) / cross * (mesh.Formed[c] - mesh.Formed[a]);
        }
        return carried;
    }

    private string Nearest(Vec2 end) => _marks.Values.OrderBy(m => (m.Flat - end).Length).Select(m => m.Letter).FirstOrDefault() ?? "";

    private static Vec3 InSpace(Vec2 p) => new(p.X, p.Y, 0);
}
