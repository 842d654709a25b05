using System.Collections.Immutable;

namespace SurfaceUnroll.Lofting;

/// <summary>Element lines along which the sheet only bends, wherever such lines exist; elsewhere the lines of least twist.</summary>
/// <remarks>1. The lattice picks the branch. 2. Each line of the lattice's path slides along the track of equal progress to the torsal
/// line beside it. 3. Where the path crosses a joint of either curve, or leaves an end, the torsal line at that very place is added, so that
/// fans and straight runs begin and end where they should. 4. Lines between two found ones are searched inside the box that
/// those two span, so the matching stays monotone.</remarks>
internal sealed class TorsalMatching : IMatching
{
    /// <summary>Lattice steps along a whole curve. Halving the step beyond this changed no branch on any demo or published shape.</summary>
    public const int DefaultLattice = 120;

    // Lines kept from the lattice's path, per curve; the rest follow from these by Between.
    private const int KeptSteps = 40;

    private readonly TorsalSearch search;

    public TorsalMatching(Directrix front, Directrix rear, double end, int lattice = DefaultLattice)
    {
        search = new TorsalSearch(front, rear);
        ImmutableArray<Match> path = LatticePath.Find(front, rear, front.Samples(0, end, lattice), rear.Samples(0, end, lattice));
        List<Match> lines = Slide(path, 2.0 / lattice);
        AddJoints(lines, front.Joints, swapped: false);
        AddJoints(lines, rear.Joints, swapped: true);
        Anchors = [.. lines];
    }

    /// <summary>Through lines that are known to be torsal, or to bound a fan.</summary>
    /// <param name="front">Front directrix.</param>
    /// <param name="rear">Rear directrix.</param>
    /// <param name="known">From the first line to the last, none crossing another.</param>
    public TorsalMatching(Directrix front, Directrix rear, ImmutableArray<Match> known)
    {
        search = new TorsalSearch(front, rear);
        List<Match> lines = [.. known];
        AddJoints(lines, front.Joints, swapped: false);
        AddJoints(lines, rear.Joints, swapped: true);
        Anchors = [.. lines];
    }

    /// <inheritdoc/>
    public ImmutableArray<Match> Anchors { get; }

    /// <inheritdoc/>
    public Match Between(Match left, Match right)
    {
        double progress = 0.5 * (left.Progress + right.Progress), half = 0.5 * (right.Progress - left.Progress);
        double lo = Math.Max(left.Lead, right.Lead) - half, hi = Math.Min(left.Lead, right.Lead) + half;
        if (hi <= lo) return Match.Lerp(left, right, 0.5);
        Match from = Clamp(Match.Of(progress, lo), left, right), to = Clamp(Match.Of(progress, hi), left, right);
        return search.Root(from, to) ?? search.Least(from, to) ?? Match.Lerp(left, right, 0.5);
    }

    private List<Match> Slide(ImmutableArray<Match> path, double reach)
    {
        var lines = new List<Match> { path[0] };
        bool lastIsRoot = true;
        foreach (Match node in path.Skip(1))
        {
            bool isEnd = node == path[^1];
            if (!isEnd && node.Progress - lines[^1].Progress < 1.0 / KeptSteps) continue;
            Match? root = isEnd ? node : SlideToRoot(node, path[^1], reach);
            Match line = root ?? node;
            // A line that would cross its neighbour gives way: any to the last, the least-twist one to the torsal one.
            while (lines.Count > 1 && Crosses(lines[^1], line) && (isEnd || (root is not null && !lastIsRoot))) lines.RemoveAt(lines.Count - 1);
            if (Crosses(lines[^1], line)) continue;
            lines.Add(line);
            lastIsRoot = root is not null;
        }
        return lines;
    }

    // Along the track of equal progress, within the rectangle from the first line to the last.
    private Match? SlideToRoot(Match node, Match last, double reach)
    {
        double lo = Math.Max(node.Lead - reach, Math.Max(-node.Progress, node.Progress - 2 * last.Rear));
        double hi = Math.Min(node.Lead + reach, Math.Min(node.Progress, 2 * last.Front - node.Progress));
        if (hi <= lo) return null;
        Match from = Match.Of(node.Progress, lo), to = Match.Of(node.Progress, hi);
        return search.Root(from, to) ?? search.Least(from, to);
    }

    // Adds the line at each joint of one curve. `swapped` exchanges the roles of front and rear.
    private void AddJoints(List<Match> lines, ImmutableArray<double> joints, bool swapped)
    {
        foreach (double joint in joints)
        {
            for (int k = 0; k + 1 < lines.Count; k++)
            {
                (double a, double b) = (Along(lines[k]), Along(lines[k + 1]));
                if (a > joint) break;
                if (b < joint || a == b) continue;
                Match from = On(joint, Across(lines[k])), to = On(joint, Across(lines[k + 1]));
                // A path that only touches the joint needs a line there just where it leaves a fan that no torsal line has ended yet.
                bool touches = a == joint || b == joint;
                if (touches && search.IsTorsal(a == joint ? from : to)) continue;
                Match? root = search.Root(from, to);
                if (root is null && touches) continue;
                Match line = root ?? (Math.Abs(search.Twist(from)) <= Math.Abs(search.Twist(to)) ? from : to);
                if (line == lines[k] || line == lines[k + 1]) continue;
                lines.Insert(++k, line);
            }
        }

        double Along(Match m) => swapped ? m.Rear : m.Front;
        double Across(Match m) => swapped ? m.Front : m.Rear;
        Match On(double along, double across) => swapped ? new Match(across, along) : new Match(along, across);
    }

    private static bool Crosses(Match before, Match line) => line.Front < before.Front || line.Rear < before.Rear;

    private static Match Clamp(Match m, Match lo, Match hi) =>
        new(Math.Clamp(m.Front, lo.Front, hi.Front), Math.Clamp(m.Rear, lo.Rear, hi.Rear));
}
