using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>A reading that does not go with its neighbours.</summary>
/// <param name="Index">In the row.</param>
/// <param name="Slip">What it may have been; null if no slip of the pen explains it.</param>
internal sealed record Suspect(int Index, SlipOfPen? Slip);

/// <summary>Finds readings that break an otherwise smooth row.</summary>
internal sealed class SuspectSearch
{
    // mm: a careful reading with rule and tape is good to this (common practice, no source), so no row is smoother.
    private const double Hand = 1.5;

    // Of the gap between its neighbours: what stands off by less makes no visible bump.
    private const double Least = 0.05;

    // Against what the readings that are left stand off at most, or a careful hand: a reading is accused only where it stands off by this many times as much. Found on clean rows, of
    // which the tests try many: none is accused.
    private const double Clear = 3;

    // A row with a slip of the pen in it is this much rougher than without; and where a slip of another reading would make it nearly as smooth, nobody can say which it was.
    private const double Smoother = 4, Ambiguous = 1.5;

    // A place in its stead goes with its neighbours, give or take.
    private const double Mended = 1.5;

    // Where a slip of the pen and leaving the reading out do alike, it was the slip.
    private const double Likelier = 1.3;

    // A slip that leads along the curve and not to it is none: of the way to the curve.
    private const double Along = 2, BothAlong = 3, FarAlong = 5;

    // Of fewer readings than six only a slip of a decimal point, a sign or both values is told, and of fewer than nine only one that takes its point off by half the gap. No more than one in five is doubted, nor more than a handful, and one that
    // no slip explains only against enough others. Of a table that long nothing was read by hand.
    private const int Fewest = 6, Some = 9, Share = 5, Handful = 5, FewestOthers = 5, Most = 200;
    private const double Gross = 0.5;

    // An end that is far off the way that the curve runs on, where a slip leads back to it: of two usual ways between readings. Its own way is this many times as long.
    private const double FarOff = 1, NearEnough = 0.2, LongStep = 2.5;

    private readonly int[] _readings;
    private readonly bool _mirrored, _few, _some;
    private readonly double _unit;
    private readonly int _decimals;

    private SuspectSearch(Vec2[] row, bool mirrored, double unit)
    {
        (_mirrored, _unit) = (mirrored, unit);
        _decimals = row.Max(p => Math.Max(SlipOfPen.DecimalsOf(p.X / unit), SlipOfPen.DecimalsOf(p.Y / unit)));
        _readings = [.. Enumerable.Range(0, row.Length).Where(i => !mirrored || 2 * i >= row.Length - 1)];
        _some = _readings.Length < (mirrored ? Fewest - 1 : Some);
        _few = _readings.Length < (mirrored ? Fewest - 1 : Fewest);
    }

    /// <summary>The suspects of a row; none where it is too short to tell.</summary>
    /// <param name="row">Places in order.</param>
    /// <param name="mirrored">It is its own mirror image; then only its right half is looked at.</param>
    /// <param name="unit">mm of the unit that it was written in.</param>
    public static ImmutableArray<Suspect> In(Vec2[] row, bool mirrored, double unit) => row.Length < Fewest - 1 || row.Length > 2 * Most || (!mirrored && row.Length > Most) ? [] : new SuspectSearch(row, mirrored, unit).Find(new LeftOut(row, mirrored));

    private ImmutableArray<Suspect> Find(LeftOut row)
    {
        var state = new State(row, [], []);
        double before = Worst(Roughness(state), -1);
        for (int count = 1; count <= Math.Clamp(_readings.Length / Share, 1, Handful); count++)
        {
            if (Step(state) is not { } next) return [];
            state = next;
            double?[] rough = Roughness(state);
            if (state.Suspects.All(s => Stands(row, state, s, rough, before))) return state.IsAmbiguous ? [] : [.. state.Suspects.OrderBy(s => s.Index)];
        }
        return [];
    }

    // A row with what was mended and left out so far.
    private sealed record State(LeftOut Row, ImmutableArray<Suspect> Suspects, HashSet<int> Without)
    {
        // A slip of another reading would do nearly as well.
        public bool IsAmbiguous { get; init; }
    }

    // The mended or left out reading that makes the row smoothest.
    private State? Step(State state)
    {
        double?[] rough = Roughness(state);
        (State? best, double least, bool slip) = (null, double.PositiveInfinity, false);
        var mends = new Dictionary<int, double>();
        foreach (int i in _readings)
        {
            if (state.Suspects.Any(s => s.Index == i) || !Doubtful(state, rough, i)) continue;
            if (!_few && state.Row.IsWellInside(i, state.Without))
            {
                State without = state with { Suspects = state.Suspects.Add(new Suspect(i, null)), Without = [.. state.Without, i] };
                if (Mean(without, rough, i) is var rest && rest < least * (slip ? 1 / Likelier : 1)) (best, least, slip) = (without, rest, false);
            }
            foreach (SlipOfPen mend in Slips(state, i))
            {
                State mended = state with { Row = state.Row.With(i, mend.Place), Suspects = state.Suspects.Add(new Suspect(i, mend)) };
                if (mended.Row.IsTwice(i)) continue;
                double rest = Mean(mended, rough, i);
                mends[i] = Math.Min(rest, mends.GetValueOrDefault(i, double.PositiveInfinity));
                if (rest < least * (slip || best is null ? 1 : Likelier)) (best, least, slip) = (mended, rest, true);
            }
        }
        return best is null ? null : best with { IsAmbiguous = slip && mends.Any(m => m.Key != best.Suspects[^1].Index && m.Value < Ambiguous * least) };
    }

    // It or a neighbour stands off visibly.
    private bool Doubtful(State state, double?[] rough, int index)
    {
        if (IsEnd(state, index)) return true;
        for (int i = Math.Max(0, index - 2); i <= Math.Min(rough.Length - 1, index + 2); i++)
            if (rough[i] > Least && state.Row.Across(i, state.Without) is { } gap && gap.From(state.Row.Place(i)) > Hand) return true;
        return false;
    }

    private IEnumerable<SlipOfPen> Slips(State state, int index)
    {
        Vec2 read = state.Row.Place(index);
        Gap? gap = state.Row.Across(index, state.Without);
        double off = gap?.From(read) ?? double.NaN;
        foreach (SlipOfPen slip in SlipOfPen.Behind(read, _unit))
        {
            double moved = (slip.Place - read).Length;
            if (slip.Decimals > Math.Max(1, _decimals)) continue;
            if (moved <= 2 * Hand) continue;
            if (gap is null)
            {
                if (!_few && slip is { Gross: true, Figures: > 1 } && IsEnd(state, index) && state.Row.Beyond(index, state.Without) is { } end && end.From(read) > FarOff * end.Width && state.Row.StepTo(index) > LongStep * state.Row.Step && end.From(slip.Place) < NearEnough * end.Width) yield return slip;
                continue;
            }
            if (gap.From(slip.Place) < off / Clear && moved <= (!slip.Gross ? Along : slip.Place.X == read.X || slip.Place.Y == read.Y ? FarAlong : BothAlong) * off && (!_few || slip.Gross)) yield return slip;
        }
    }

    // Of a mirrored row the first reading is no end.
    private bool IsEnd(State state, int index) => index == state.Row.Count - 1 || (index == 0 && !_mirrored);

    private bool Stands(LeftOut row, State state, Suspect suspect, double?[] rough, double before)
    {
        double others = Worst(rough, suspect.Index), after = Worst(rough, -1);
        if (rough.Count(r => r is not null) < (suspect.Slip is null ? FewestOthers : 1)) return false;
        if (state.Row.Across(suspect.Index, state.Without) is not { } gap) return suspect.Slip is not null;
        if (suspect.Slip is not null && before < Math.Max(Smoother * after, _some ? Gross : 0)) return false;
        double off = gap.From(row.Place(suspect.Index)), usual = Math.Max(Hand, others * gap.Width);
        if (off < Least * gap.Width) return false;
        return off > Clear * usual && (suspect.Slip is null || gap.From(suspect.Slip.Place) <= Mended * usual);
    }

    // Of every reading: how far it stands off, or a careful hand at least, as a part of the gap.
    private double?[] Roughness(State state)
    {
        var rough = new double?[state.Row.Count];
        foreach (int i in _readings) rough[i] = Of(state, i);
        return rough;
    }

    private static double? Of(State state, int i) =>
        !state.Without.Contains(i) && state.Row.Across(i, state.Without) is { Width: > 0 } gap ? Math.Max(gap.From(state.Row.Place(i)), Hand) / gap.Width : null;

    // Root of the mean square, where only readings near a changed one are others than before.
    private double Mean(State state, double?[] before, int changed)
    {
        (double sum, int count) = (0, 0);
        foreach (int i in _readings)
        {
            bool near = Math.Abs(i - changed) <= LeftOut.Reach + 1 || (_mirrored && Math.Abs(state.Row.Count - 1 - i - changed) <= LeftOut.Reach + 1);
            if ((near ? Of(state, i) : before[i]) is not { } share) continue;
            sum += share * share;
            count++;
        }
        return count == 0 ? double.PositiveInfinity : Math.Sqrt(sum / count);
    }

    private static double Worst(double?[] rough, int but) => rough.Where((r, i) => i != but && r is not null).Select(r => r!.Value).DefaultIfEmpty(0).Max();
}
