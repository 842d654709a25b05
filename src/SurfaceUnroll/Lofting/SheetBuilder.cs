using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>Sets element lines along a matching, as close as the bend asks, and makes strips of them.</summary>
/// <param name="front">Front directrix.</param>
/// <param name="rear">Rear directrix.</param>
internal sealed class SheetBuilder(Directrix front, Directrix rear)
{
    // Largest turn of an edge across half a strip, radians: a chord is then shorter than its arc by turn²/24 ≈ 1e-6 of it, which makes
    // the polylines of the mesh and the report, drawn through the middles too, as long as the edges to that.
    private const double EdgeTurn = 0.005;

    // Largest turn of the element lines across a strip, radians; the integration leaves out its fifth power, 3e-9 of a strip's own width.
    private const double RulingTurn = 0.02;

    // Largest gap between an edge and its chord over half a strip, mm: the report's edges must stand for the true ones within 0.01 mm.
    private const double Sagitta = 0.004;

    // Shortest strip, in progress: a kink in the matching that was not met exactly is closed in on down to this.
    private const double ShortestStrip = 2e-4;

    // A matching may bend within a strip by this share of the strip before the strip is halved.
    private const double LeadBend = 0.1;

    /// <summary>The sheet over a matching.</summary>
    public ImmutableArray<Strip> Build(IMatching matching)
    {
        var strips = ImmutableArray.CreateBuilder<Strip>();
        for (int i = 0; i + 1 < matching.Anchors.Length; i++)
            Divide(matching, matching.Anchors[i], matching.Anchors[i + 1], strips);
        return strips.ToImmutable();
    }

    private void Divide(IMatching matching, Match left, Match right, ImmutableArray<Strip>.Builder strips)
    {
        // The turn of a corner alone, with no metal on either side, is a sharp bend along one line and takes no strip.
        if (front.StandsStill(left.Front, right.Front) && rear.StandsStill(left.Rear, right.Rear)) return;
        Match middle = matching.Between(left, right);
        if (IsFineEnough(left, middle, right))
        {
            strips.Add(MakeStrip(left, middle, right));
            return;
        }
        Divide(matching, left, middle, strips);
        Divide(matching, middle, right, strips);
    }

    private bool IsFineEnough(Match left, Match middle, Match right)
    {
        if (right.Progress - left.Progress <= ShortestStrip) return true;
        double bend = Math.Abs(middle.Lead - 0.5 * (left.Lead + right.Lead));
        if (bend > LeadBend * (right.Progress - left.Progress)) return false;
        DirectrixSample a0 = front.At(left.Front), a1 = front.At(right.Front), b0 = rear.At(left.Rear), b1 = rear.At(right.Rear);
        Vec3 r0 = b0.Point - a0.Point, r1 = b1.Point - a1.Point;
        return EdgeFits(a0, a1, front.StandsStill(left.Front, right.Front))
            && EdgeFits(b0, b1, rear.StandsStill(left.Rear, right.Rear))
            && r0.AngleTo(r1) <= RulingTurn;
    }

    private static bool EdgeFits(DirectrixSample a, DirectrixSample b, bool still)
    {
        if (still) return true;
        double halfTurn = 0.5 * a.Tangent.AngleTo(b.Tangent);
        return halfTurn <= EdgeTurn && halfTurn * 0.5 * (b.Point - a.Point).Length / 8 <= Sagitta;
    }

    private Strip MakeStrip(Match left, Match middle, Match right)
    {
        bool frontStill = front.StandsStill(left.Front, right.Front), rearStill = rear.StandsStill(left.Rear, right.Rear);
        Freedom freedom = Freedom.None;
        if (frontStill && left.Front == right.Front && (left.Front <= 0 || left.Front >= 1)) freedom = Freedom.Front;
        if (rearStill && left.Rear == right.Rear && (left.Rear <= 0 || left.Rear >= 1)) freedom = Freedom.Rear;
        return new Strip(At(left, freedom), At(middle, freedom), At(right, freedom), frontStill, rearStill);
    }

    private Station At(Match match, Freedom freedom)
    {
        DirectrixSample a = front.At(match.Front), b = rear.At(match.Rear);
        Vec3 ta = a.Tangent.Unit, tb = b.Tangent.Unit, r = b.Point - a.Point;
        Vec3 na = r.Cross(ta), nb = r.Cross(tb);
        // A tangent along the ruling, or a line of no length where the curves meet, leaves that end's normal to the other.
        double floor = Torsality.Meet(a.Point, b.Point) ? double.PositiveInfinity : 1e-9 * r.Length;
        bool frontCounts = freedom != Freedom.Front && na.Length > floor, rearCounts = freedom != Freedom.Rear && nb.Length > floor;
        Vec3 normal = (frontCounts, rearCounts) switch
        {
            (true, true) => (na.Unit + nb.Unit).Unit,
            (true, false) => na.Unit,
            (false, true) => nb.Unit,
            _ => Vec3.Zero,
        };
        double twist = frontCounts && rearCounts ? na.AngleTo(nb) : 0;
        return new Station(a.Point, b.Point, ta, tb, normal, twist);
    }

    // Which end of a fan may take any tangent: the very end of a curve.
    private enum Freedom
    {
        None,
        Front,
        Rear,
    }
}
