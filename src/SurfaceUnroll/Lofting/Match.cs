namespace SurfaceUnroll.Lofting;

/// <summary>A pair of coordinates, one on each directrix, that an element line joins.</summary>
/// <param name="Front">Coordinate on the front directrix, 0 to 1.</param>
/// <param name="Rear">Coordinate on the rear directrix, 0 to 1.</param>
internal readonly record struct Match(double Front, double Rear)
{
    /// <summary>Progress along the matching, 0 to 2: it grows from line to line, whichever side advances.</summary>
    public double Progress => Front + Rear;

    /// <summary>How far the front is ahead.</summary>
    public double Lead => Front - Rear;

    /// <summary>The match of a given progress and lead.</summary>
    public static Match Of(double progress, double lead) => new(0.5 * (progress + lead), 0.5 * (progress - lead));

    /// <summary>The match a fraction <paramref name="t"/> of the way from <paramref name="a"/> to <paramref name="b"/>.</summary>
    public static Match Lerp(Match a, Match b, double t) => new(a.Front + t * (b.Front - a.Front), a.Rear + t * (b.Rear - a.Rear));
}
