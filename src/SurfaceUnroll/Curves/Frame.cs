using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Curves;

/// <summary>Where a curve's own axes stand in another frame: a point p goes to Origin + p.X·X + p.Y·Y + p.Z·Z.</summary>
/// <param name="Origin">mm.</param>
/// <param name="X">Image of the unit vector along x; the three images are square to each other and of unit length.</param>
/// <param name="Y">Image of the unit vector along y.</param>
/// <param name="Z">Image of the unit vector along z.</param>
/// <remarks>May be a reflection. <c>default</c> sends everything to the origin and is not a frame.</remarks>
public readonly record struct Frame(Vec3 Origin, Vec3 X, Vec3 Y, Vec3 Z)
{
    /// <summary>Leaves everything where it is.</summary>
    public static Frame Identity { get; } = new(Vec3.Zero, new(1, 0, 0), new(0, 1, 0), new(0, 0, 1));

    /// <summary>Mirrors left and right, exactly: y changes its sign and nothing else changes.</summary>
    public static Frame MirrorLeftRight { get; } = new(Vec3.Zero, new(1, 0, 0), new(0, -1, 0), new(0, 0, 1));

    /// <summary>Lays a profile (0, across, up) flat, up pointing aft: (up, across, 0), exactly.</summary>
    public static Frame LaidFlat { get; } = new(Vec3.Zero, new(0, 0, -1), new(0, 1, 0), new(1, 0, 0));

    /// <summary>The frame of a placement: origin + Rz(turn)·Ry(lean)·Rx(roll)·p. Multiples of 90° are exact.</summary>
    public static Frame Of(Placement placement)
    {
        (double sr, double cr) = QuarterTurns.SinCos(placement.Roll);
        (double sl, double cl) = QuarterTurns.SinCos(placement.Lean);
        (double st, double ct) = QuarterTurns.SinCos(placement.Turn);
        Vec3 Lean(Vec3 p) => new(cl * p.X + sl * p.Z, p.Y, cl * p.Z - sl * p.X);
        Vec3 Turn(Vec3 p) => new(ct * p.X - st * p.Y, st * p.X + ct * p.Y, p.Z);
        return new Frame(
            placement.Origin,
            Turn(Lean(new Vec3(1, 0, 0))),
            Turn(Lean(new Vec3(0, cr, sr))),
            Turn(Lean(new Vec3(0, -sr, cr))));
    }

    /// <summary>Image of a direction.</summary>
    public Vec3 Direction(Vec3 v) => v.X * X + v.Y * Y + v.Z * Z;

    /// <summary>Image of a point, mm.</summary>
    public Vec3 Point(Vec3 p) => Origin + Direction(p);

    /// <summary>First <paramref name="inner"/>, then this one.</summary>
    public Frame After(Frame inner) => new(Point(inner.Origin), Direction(inner.X), Direction(inner.Y), Direction(inner.Z));

    /// <summary>Takes every image back to where it came from.</summary>
    public Frame Inverse => new(new Vec3(-Origin.Dot(X), -Origin.Dot(Y), -Origin.Dot(Z)), new Vec3(X.X, Y.X, Z.X), new Vec3(X.Y, Y.Y, Z.Y), new Vec3(X.Z, Y.Z, Z.Z));

    /// <summary>Image of a place with its derivatives.</summary>
    public CurveSample Sample(CurveSample s) => new(Point(s.Point), Direction(s.D1), Direction(s.D2));
}
