using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Patterns;

/// <summary>A formed sheet and its blank, line for line, in the frame of the drawing: outside face up, the front edge at the top,
/// its middle at the origin and the line from there to the middle of the rear edge straight down.</summary>
/// <param name="Sheet">Formed middle surface.</param>
/// <param name="Flat">The same strips on the blank, mm.</param>
public sealed record Blank(RuledSheet Sheet, ImmutableArray<FlatStrip> Flat)
{
    /// <summary>Lays a sheet flat and turns it upright.</summary>
    public static Blank Of(RuledSheet sheet)
    {
        ImmutableArray<FlatStrip> laid = StripDevelopment.LayFlat(sheet);
        Vec2 front = MiddleOf(laid, s => s.Front), rear = MiddleOf(laid, s => s.Rear);
        Func<Vec2, Vec2> upright = Upright(front, rear);
        return new Blank(sheet, [.. laid.Select(s => new FlatStrip(Turned(s.Left), Turned(s.Middle), Turned(s.Right)))]);

        FlatLine Turned(FlatLine line) => new(upright(line.Front), upright(line.Rear));
    }

    /// <summary>To the frame of the drawing.</summary>
    /// <param name="front">Comes to the origin: the middle of the front edge.</param>
    /// <param name="rear">Comes straight below it: the middle of the rear edge.</param>
    internal static Func<Vec2, Vec2> Upright(Vec2 front, Vec2 rear)
    {
        Vec2 down = rear - front;
        double turn = down.Length > 0 ? -Math.PI / 2 - Math.Atan2(down.Y, down.X) : 0;
        return p => (p - front).Rotate(turn);
    }

    /// <summary>Formed element lines from left to right.</summary>
    public IEnumerable<Station> FormedLines => Sheet.Strips.Select(s => s.Left).Append(Sheet.Strips[^1].Right);

    /// <summary>Element lines on the blank from left to right; as many as <see cref="FormedLines"/>.</summary>
    public IEnumerable<FlatLine> FlatLines => Flat.Select(s => s.Left).Append(Flat[^1].Right);

    /// <summary>Formed element lines and the rulings half way between them, from left to right.</summary>
    public IEnumerable<Station> FormedRulings => Rulings(Sheet);

    /// <summary>Element lines of a sheet and the rulings half way between them, from left to right.</summary>
    internal static IEnumerable<Station> Rulings(RuledSheet sheet) => sheet.Strips.SelectMany(s => new[] { s.Left, s.Middle }).Append(sheet.Strips[^1].Right);

    /// <summary>The same rulings on the blank.</summary>
    public IEnumerable<FlatLine> FlatRulings => Flat.SelectMany(s => new[] { s.Left, s.Middle }).Append(Flat[^1].Right);

    /// <summary>Net area of the blank, mm²: of the polygon through the lines and the middles between them, and Richardson's third of what the middles added.</summary>
    public double FlatArea
    {
        get
        {
            double coarse = Flat.Sum(s => Quad(s.Left, s.Right));
            double fine = Flat.Sum(s => Quad(s.Left, s.Middle) + Quad(s.Middle, s.Right));
            return fine + (fine - coarse) / 3;
        }
    }

    /// <summary>Net area of the formed middle surface, mm², by the same rule.</summary>
    public double FormedArea
    {
        get
        {
            double coarse = Sheet.Strips.Sum(s => Quad(s.Left, s.Right));
            double fine = Sheet.Strips.Sum(s => Quad(s.Left, s.Middle) + Quad(s.Middle, s.Right));
            return fine + (fine - coarse) / 3;
        }
    }

    // The place half way along an edge, by the parabola through the three places of the strip that holds it.
    private static Vec2 MiddleOf(ImmutableArray<FlatStrip> laid, Func<FlatLine, Vec2> edge)
    {
        (double ToMiddle, double ToRight)[] lengths = [.. laid.Select(s => EdgeIntegral.Length(edge(s.Left), edge(s.Middle), edge(s.Right)))];
        double rest = 0.5 * lengths.Sum(length => length.ToRight);
        int i = 0;
        while (i < laid.Length - 1 && rest > lengths[i].ToRight) rest -= lengths[i++].ToRight;
        (double toMiddle, double toRight) = lengths[i];
        (Vec2 left, Vec2 middle, Vec2 right) = (edge(laid[i].Left), edge(laid[i].Middle), edge(laid[i].Right));
        if (toMiddle <= 0 || toRight <= toMiddle) return left;
        Vec2 slope = (1 / toMiddle) * (middle - left), next = (1 / (toRight - toMiddle)) * (right - middle);
        return left + rest * slope + (rest * (rest - toMiddle) / toRight) * (next - slope);
    }

    private static double Quad(FlatLine left, FlatLine right) => 0.5 * (right.Front - left.Rear).Cross(left.Front - right.Rear);

    // Half the cross product of the diagonals: the area of a plane quadrilateral, and of a twisted one to second order of its twist.
    private static double Quad(Station left, Station right) => 0.5 * (right.Front - left.Rear).Cross(left.Front - right.Rear).Length;
}
