using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Allowances;

/// <summary>Where one run of an outline ends and the next begins, the metal on the left of both.</summary>
/// <param name="At">The corner, mm.</param>
/// <param name="Before">Unit vector to the right of the run before it.</param>
/// <param name="After">Unit vector to the right of the run after it.</param>
/// <param name="First">Allowance of the run before.</param>
/// <param name="Second">Allowance of the run after.</param>
internal readonly record struct AllowanceCorner(Vec2 At, Vec2 Before, Vec2 After, RunAllowance First, RunAllowance Second)
{
    /// <summary>Turns below this, radians, are those of a smooth line.</summary>
    public const double Smooth = 0.15;

    // A mitre runs out no farther than this many widths.
    private const double LongestMitre = 3;

    // A corner that turns by less than this, radians, is not mitred beside a run without allowance: the taper would be longer than 1.7 widths.
    private const double LeastTaper = Math.PI / 6;

    /// <summary>A sharper turn, radians, ends a lip: no flange can be bent round it.</summary>
    public const double Parting = 0.35;

    /// <summary>Radians, positive to the left: an outer corner of the metal.</summary>
    public double Turn => AllowanceBands.Turn(Before, After);

    // Lips part at a corner, so that each can be bent.
    private bool PartsLips => First.IsLip && Second.IsLip && Math.Abs(Turn) > Parting;

    /// <summary>What fills the corner between two allowances left on, or two taken off at an inner corner.</summary>
    public Polygon? Filling()
    {
        (double w1, double w2) = (First.Width, Second.Width);
        // Only between two allowances on one side, and only on the side on which the corner opens, is there anything to fill.
        if (w1 * w2 <= 0 || Turn * w1 <= 1e-9 || PartsLips) return null;
        CornerStyle style = Math.Abs(Turn) <= Smooth ? CornerStyle.Mitre : Style;
        return style switch
        {
            CornerStyle.Square => null,
            CornerStyle.Round => Sector(Math.Sign(w1) * Math.Min(Math.Abs(w1), Math.Abs(w2))),
            _ => Mitre(),
        };
    }

    // A little way into the wider of two bands, and along the very end of one that is no wider than the arc: without a crack beside it.
    private Polygon? Sector(double radius)
    {
        const double overlap = 1e-3;
        (Vec2 at, Vec2 before, double turn) = (At, Before, Turn);
        int steps = (int)Math.Ceiling(Math.Abs(turn) / Math.Min(0.3, Math.Sqrt(8 * 0.004 / Math.Abs(radius))));
        double past = Math.Sign(turn) * overlap;
        Vec2 from = First.Width == radius ? before : before.Rotate(-past), to = Second.Width == radius ? After : After.Rotate(past);
        return Polygons.Simple([at, at + radius * from, .. Enumerable.Range(1, steps - 1).Select(k => at + radius * before.Rotate(turn * k / steps)), at + radius * to]);
    }

    private Polygon? Mitre()
    {
        Vec2 p = At + First.Width * Before, q = At + Second.Width * After;
        if (Meeting(p, Before.Left, q, After.Left) is not { } meeting) return null;
        // Of very different widths the lines, run on, may meet behind their own ends: there the corner is cut straight across.
        if ((meeting - p).Dot(Before.Left) < 0 || (q - meeting).Dot(After.Left) < 0) return Polygons.Simple([At, p, q]);
        double reach = (meeting - At).Length, most = LongestMitre * Math.Max(Math.Abs(First.Width), Math.Abs(Second.Width));
        // Too long a tip is cut off.
        return Polygons.Simple(reach <= most ? [At, p, meeting, q] : [At, p, p + most / reach * (meeting - p), q + most / reach * (meeting - q), q]);
    }

    /// <summary>What the line of a gap, run on straight, takes beyond the end of its own run.</summary>
    public IEnumerable<Polygon> RunOn()
    {
        if (Turn <= 0) yield break;
        if (First.Width < 0 && Beyond(First.Width, Before, Before.Left, After.Left) is { } first) yield return first;
        if (Second.Width < 0 && Beyond(Second.Width, After, -After.Left, Before.Left) is { } second) yield return second;
    }

    // The band itself, run on well past the other line: the metal that it takes there may end in a curve.
    private Polygon? Beyond(double width, Vec2 right, Vec2 along, Vec2 other)
    {
        Vec2 p = At + width * right;
        if (Meeting(p, along, At, other) is not { } meeting || (meeting - p).Length > LongestMitre * Math.Abs(width) || (meeting - p).Dot(along) < 0) return null;
        Vec2 on = ((meeting - p).Length + Math.Abs(width)) * along;
        return Polygons.Simple([At, p, p + on, At + on]);
    }

    /// <summary>What the allowance before loses at its end.</summary>
    public Polygon? FirstLoses => MitresLips ? CutBack(First.Width, Before, -Before.Left) : First.Width > 0 ? Taper(First, Before, -After.Left) : null;

    /// <summary>What the allowance after loses at its start.</summary>
    public Polygon? SecondLoses => MitresLips ? CutBack(Second.Width, After, After.Left) : Second.Width > 0 ? Taper(Second, After, Before.Left) : null;

    /// <summary>What is cut out so that two lips can be bent.</summary>
    /// <param name="thickness">Of the sheet, mm.</param>
    public Polygon? Relief(double thickness) => !PartsLips ? null : Turn > 0 ? BendRelief(thickness) : Parted(thickness);

    private bool MitresLips => PartsLips && Turn > 0 && Style == CornerStyle.Mitre;

    // What would stand out past the line of a run without allowance. Nearly in line with its neighbour a mitred allowance would lose far too much, and square to it nothing.
    private Polygon? Taper(RunAllowance given, Vec2 end, Vec2 line)
    {
        if (First.Width * Second.Width != 0 || given.Corners != CornerStyle.Mitre || Turn < LeastTaper || Turn > 0.5 * Math.PI - 1e-6) return null;
        // A wedge wider than the band, whose far line may bulge.
        double reach = 2 * given.Width;
        return Polygons.Simple([At, At + reach * end, At + reach / Math.Sin(Turn) * line]);
    }

    // Each of two lips loses half of the corner's angle: turned in flat they would meet on its bisector.
    private Polygon? CutBack(double width, Vec2 outward, Vec2 back)
    {
        double angle = Math.Min(0.5 * Turn, Math.PI / 3), reach = 2 * width;
        return Polygons.Simple([At, At + reach * outward, At + reach * outward + reach * Math.Tan(angle) * back]);
    }

    // Where two bends would run through each other, up to their inner tangent lines, there is no metal; it opens outward by about the thickness.
    private Polygon? BendRelief(double thickness)
    {
        Vec2 p = At - First.Setback * Before, q = At - Second.Setback * After;
        double sine = Math.Sin(Turn);
        if (First.Setback <= 0 || Second.Setback <= 0 || sine < 0.1 || Meeting(p, Before.Left, q, After.Left) is not { } inner) return null;
        return Polygons.Simple([At + Math.Max(1, thickness) * (Before + After).Unit, At - Second.Setback / sine * Before.Left, inner, At + First.Setback / sine * After.Left]);
    }

    // Two lips at an inner corner are parted along its bisector, from where their bends meet outward.
    private Polygon Parted(double thickness)
    {
        double half = Math.Max(1, thickness), slant = Math.Max(0.2, Math.Cos(0.5 * Turn)), reach = 1.05 * Math.Max(First.Width, Second.Width) / slant;
        Vec2 outward = (Before + After).Unit, side = outward.Left, root = At - Math.Max(First.Setback, Second.Setback) / slant * outward;
        return Polygons.Of([root - half * side, At - half * side + reach * outward, At + half * side + reach * outward, root + half * side]);
    }

    // A lip's first, since what stands up must clear its neighbour.
    private CornerStyle Style => First.IsLip != Second.IsLip ? (First.IsLip ? First.Corners : Second.Corners)
        : First.Corners == Second.Corners ? First.Corners : CornerStyle.Square;

    // Where two lines meet; null if they run alike.
    private static Vec2? Meeting(Vec2 p, Vec2 along, Vec2 q, Vec2 other)
    {
        double cross = along.Cross(other);
        return Math.Abs(cross) < 1e-9 ? null : p + (q - p).Cross(other) / cross * along;
    }
}
