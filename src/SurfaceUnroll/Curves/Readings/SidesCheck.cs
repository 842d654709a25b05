using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>Readings of both sides of a part that is meant to be its own mirror image and are not each other's.</summary>
/// <param name="Index">The reading that is off by the most.</param>
/// <param name="Other">The one of the other side that stands nearest to its mirror image.</param>
/// <param name="SamePlace">Both were read at nearly the same place, so that they can be set against each other.</param>
/// <param name="Off">Between them where they stand at the same place; else from the curve through the mirror images of the other side, mm.</param>
internal sealed record UnlikeSides(int Index, int Other, bool SamePlace, double Off)
{
    /// <summary>What the first may have been, and what the other.</summary>
    public (SlipOfPen? Of, SlipOfPen? OfOther) Slips { get; init; }
}

/// <summary>Sets the readings of each side against the smooth curve through the mirror images of all others, so that both sides may have been read at places of their own.</summary>
internal sealed class SidesCheck
{
    // Against the middle one of all distances; and of the size of the part.
    private const double Unlike = 6, LeastUnlike = 0.01;

    // Between two readings the curve is known only so well: of how far each of them stands off the curve through the others, over a gap that is twice as wide.
    private const double Known = 1.25;

    // A part of which most readings are this far off, as a part of its size, is no mirror image at all.
    private const double NoMirror = 0.05;

    // Of the way to the next reading: no farther apart, and two readings are of one place.
    private const double Near = 0.3;

    // Of the size: as far across, or as far up, as an image, and a reading was taken at the same mark. They are unlike where the curve leads from one to the other on
    // neither side: part of their distance that is square to it.
    private const double SameMark = 0.002, Square = 0.25;

    private const int Samples = 24;

    private readonly Vec2[] _places, _images;
    private readonly double _unit, _size;

    private SidesCheck(Vec2[] places, double unit)
    {
        double middle = 0.5 * (places[0].X + places[^1].X);
        (_places, _unit) = (places, unit);
        _images = [.. places.Select(p => p with { X = 2 * middle - p.X }).Reverse()];
        _size = places.Max(p => p.X) - places.Min(p => p.X);
    }

    /// <summary>What is unlike, from the left end to the middle; one for each place.</summary>
    /// <param name="places">Readings from left to right.</param>
    /// <param name="unit">mm of the unit that they were written in.</param>
    public static IEnumerable<UnlikeSides> In(Vec2[] places, double unit) => places.Length < 4 || places.Zip(places.Skip(1)).Any(p => p.First == p.Second) ? [] : new SidesCheck(places, unit).Find();

    private IEnumerable<UnlikeSides> Find()
    {
        (double Off, double Allowed)[] found = [.. _places.Select((p, i) => IsMiddle(i) ? (0, 0) : Off(p, _images.Length - 1 - i) is { Off: < double.PositiveInfinity } off ? off : (0, 0))];
        double usual = found.Select(f => f.Off).Order().ElementAt(found.Length / 2);
        if (usual > NoMirror * _size) yield break;
        for (int i = 0; i < found.Length; i++)
            if (AtOneMark(i) is { } square) found[i] = (square, 0);
        double least = Math.Max(Unlike * usual, LeastUnlike * _size);
        int[] unlike = [.. Enumerable.Range(0, found.Length).Where(i => found[i].Off > least + found[i].Allowed)];
        // One wrong reading bends the curve that its neighbours of the other side are set against.
        while (unlike.Length > 0)
        {
            int worst = unlike.MaxBy(i => found[i].Off);
            int other = Enumerable.Range(0, _places.Length).Where(i => i != worst).MinBy(i => (Image(i) - _places[worst]).Length);
            double apart = (Image(other) - _places[worst]).Length, step = StepAt(worst);
            bool same = apart <= Near * step || AtOneMark(worst) is not null;
            (int left, int right) = same && other < worst ? (other, worst) : (worst, other);
            double close = Math.Max(Math.Max(usual, 0.2 * least), found[worst].Allowed);
            yield return new UnlikeSides(left, right, same, same ? apart : found[worst].Off) { Slips = (Slip(left, close), same ? Slip(right, close) : null) };
            unlike = [.. unlike.Where(i => Math.Min((_places[i] - _places[worst]).Length, (_places[i] - Image(worst)).Length) > 2 * step)];
        }
    }

    // It is nearer to its own image than to its neighbours: it has no fellow on the other side.
    private bool IsMiddle(int i) => (Image(i) - _places[i]).Length < StepAt(i);

    // How far off the curve a reading and the image next to it, taken at the same mark, are apart; null where none was.
    private double? AtOneMark(int index)
    {
        int k = Enumerable.Range(0, _images.Length).Where(k => k != _images.Length - 1 - index).MinBy(k => (_images[k] - _places[index]).Length);
        if (k == 0 || k == _images.Length - 1) return null;
        Vec2 apart = _places[index] - _images[k];
        if (Math.Min(Math.Abs(apart.X), Math.Abs(apart.Y)) > SameMark * _size || SquareTo(_images[k - 1], _images[k]) < Square * apart.Length || SquareTo(_images[k], _images[k + 1]) < Square * apart.Length) return null;
        return SquareTo(_images[k - 1], _images[k + 1]);

        double SquareTo(Vec2 from, Vec2 to) => Math.Abs(apart.X * (to - from).Y - apart.Y * (to - from).X) / (to - from).Length;
    }

    private Vec2 Image(int index) => _images[^(index + 1)];

    // To the farther of its neighbours.
    private double StepAt(int i) => Math.Max(i > 0 ? (_places[i] - _places[i - 1]).Length : 0, i + 1 < _places.Length ? (_places[i + 1] - _places[i]).Length : 0);

    private SlipOfPen? Slip(int index, double close) => SlipOfPen.Behind(_places[index], _unit).FirstOrDefault(s => Off(s.Place, _images.Length - 1 - index).Off <= close);

    // From the curve through the images but one, and how well that is known there; infinite where a place lies beyond the end of it.
    private (double Off, double Allowed) Off(Vec2 place, int but)
    {
        int[] rest = [.. Enumerable.Range(0, _images.Length).Where(i => i != but)];
        Vec3[] images = [.. rest.Select(i => new Vec3(0, _images[i].X, _images[i].Y))];
        if (images.Zip(images.Skip(1)).Any(p => p.First == p.Second)) return (double.PositiveInfinity, 0);
        var curve = CubicSpline.Open(images, CurveEnd.Free, CurveEnd.Free);
        (double least, int at, double along) = (double.PositiveInfinity, 0, 0);
        for (int k = 0; k < curve.Length; k++)
        {
            for (int i = 0; i <= Samples; i++)
            {
                Vec3 p = curve[k].At((double)i / Samples).Point;
                double away = (p - new Vec3(0, place.X, place.Y)).Length;
                if (away < least) (least, at, along) = (away, k, (double)i / Samples);
            }
        }
        if ((at == 0 && along == 0) || (at == curve.Length - 1 && along == 1)) return (double.PositiveInfinity, 0);
        double known = Known * 4 * along * (1 - along) * Math.Max(LeftOutAt(images, at), LeftOutAt(images, at + 1));
        return (least, known);
    }

    // How far an image stands off the curve through two others on either side.
    private static double LeftOutAt(Vec3[] images, int index)
    {
        if (index == 0 || index == images.Length - 1) return 0;
        int from = Math.Max(0, index - 2), to = Math.Min(images.Length - 1, index + 2);
        Vec3[] around = [.. images[from..index], .. images[(index + 1)..(to + 1)]];
        if (around.Length < 3) return double.PositiveInfinity;
        CurvePiece span = CubicSpline.Open(around, CurveEnd.Free, CurveEnd.Free)[index - from - 1];
        return Enumerable.Range(0, Samples + 1).Min(i => (span.At((double)i / Samples).Point - images[index]).Length);
    }
}
