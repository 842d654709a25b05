using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Tests.Photos;

/// <summary>What one photo was traced as.</summary>
/// <param name="Stated">mm.</param>
/// <param name="True">Largest distance of the traced curve from the edge of the scene, laid on it as well as it fits, mm.</param>
internal readonly record struct TrialError(double Stated, double True);

/// <summary>Photos with errors drawn at random from a model that was written down before any was counted: tilt up to 35° in any direction, roll up to 15°, bow of spread 2 %, a lens that looks a fifth of a percent of
/// the width astray, grain of 1 % of white, JPEG of quality 90; taps, tape and paper of the spreads of <see cref="HandErrors"/>, the hand's times a care of its own, as χ² of eight has it.</summary>
internal sealed class StudioTrial
{
    private readonly NormalDraws _draws;
    private readonly StudioCamera _camera;
    private readonly double _tap, _tape;

    /// <summary>One photo.</summary>
    /// <param name="seed">Of all its errors.</param>
    /// <param name="width">Pixels; the height is three quarters of it.</param>
    /// <param name="drawn">False: only what the camera sees is wanted, without a picture.</param>
    public StudioTrial(int seed, int width, bool drawn = true)
    {
        _draws = new NormalDraws(seed);
        var random = new Random(seed);
        int height = width * 3 / 4;
        var astray = new Vec2(0.002 * width * _draws.Next(), 0.002 * width * _draws.Next());
        _camera = StudioCamera.Over(Studio.Scene, width, height, random.NextDouble() * 35 * Math.PI / 180, random.NextDouble() * 2 * Math.PI, (random.NextDouble() - 0.5) * Math.PI / 6, HandErrors.Bow * _draws.Next(), astray);
        double care = _draws.Student(HandErrors.Seen);
        (_tap, _tape) = (care * HandErrors.Tap(0.5 * Math.Sqrt((double)width * width + (double)height * height)), care * HandErrors.Tape);
        Size = new Vec2(Studio.SheetWidth + HandErrors.Paper * _draws.Next(), Studio.SheetHeight + HandErrors.Paper * _draws.Next());
        Jpeg = !drawn ? [] : Studio.Jpeg(Studio.Pixels(_camera, seed, Size, 0.01), width, height, 90);
    }

    /// <summary>True size of the sheet, mm.</summary>
    public Vec2 Size { get; }

    public byte[] Jpeg { get; }

    public StudioCamera Camera => _camera;

    public SheetReference Sheet() => new(Studio.SheetWidth, Studio.SheetHeight,
        [.. new Vec2[] { new(0, 0), new(Size.X, 0), Size, new(0, Size.Y) }.Select(p => Tapped(p))], HandErrors.Paper);

    /// <summary>Eight marks round the scene whose places were measured.</summary>
    public MarkReference Marks() => new(
        [.. new Vec2[] { new(-12, -10), new(150, -14), new(312, -9), new(314, 150), new(310, 320), new(150, 324), new(-10, 318), new(-14, 150) }
            .Select((p, i) => new PhotoMark($"{i + 1}", Tapped(p), p + new Vec2(_tape * _draws.Next(), _tape * _draws.Next())))], [], HandErrors.Tape);

    /// <summary>Four marks at the corners of the scene, with four sides and both diagonals by tape.</summary>
    public MarkReference Taped()
    {
        Vec2[] p = [new(-12, -10), new(312, -9), new(310, 320), new(-10, 318)];
        return new([.. p.Select((q, i) => new PhotoMark($"{i + 1}", Tapped(q), null))],
            [.. from i in Enumerable.Range(0, 4) from k in Enumerable.Range(i + 1, 3 - i) select new TapedDistance(i, k, (p[i] - p[k]).Length + _tape * _draws.Next())], HandErrors.Tape);
    }

    public PhotoEdge Edge() => new([.. Enumerable.Range(0, 7).Select(i => new EdgeTap(Tapped(new Vec2(50 * i, Studio.Edge(50 * i))), false))], EdgeKind.Edge);

    /// <summary>Traces the photo with several references at once.</summary>
    public TrialError[] Errors(params PhotoReference[] references)
    {
        GreyPhoto photo = PhotoFile.Read(Jpeg).Photo ?? throw new InvalidOperationException("no photo");
        (PickedEdge? picked, _) = EdgePicking.Of(photo, Edge());
        return [.. references.Select(reference =>
        {
            PhotoScale scale = PhotoTracing.Scale(photo, reference).Scale ?? throw new InvalidOperationException("no scale");
            TracedCurve curve = PhotoTracing.Curve(photo, scale, picked ?? throw new InvalidOperationException("no edge"), new TraceFrame(false, true));
            return new TrialError(curve.Error, TrueError([.. curve.Points.Select(p => p.Place)]));
        })];
    }

    /// <summary>Largest distance from the edge of the scene, over all ways to lay the curve on it the one of least squares.</summary>
    public static double TrueError(ImmutableArray<Vec2> points)
    {
        ImmutableArray<CurvePiece> pieces = CubicSpline.Open([.. points.Select(p => new Vec3(0, p.X, p.Y))], CurveEnd.Free, CurveEnd.Free);
        Vec2[] at = [.. pieces.SelectMany(piece => Enumerable.Range(0, 8).Select(i => piece.At(i / 8.0).Point)).Append(pieces[^1].At(1).Point).Select(p => new Vec2(p.Y, p.Z))];
        // First by its ends, then by Gauss–Newton.
        Vec2 from = at[0], along = (at[^1] - from).Unit, left = new(0, Studio.Edge(0)), wanted = (new Vec2(300, Studio.Edge(300)) - left).Unit;
        at = [.. at.Select(p => left + along.Dot(p - from) * wanted + along.Cross(p - from) * wanted.Left)];
        for (int round = 0; round < 10; round++)
        {
            var normal = new NormalEquations(3);
            foreach (Vec2 p in at)
            {
                double slope = Studio.Slope(p.X), root = Math.Sqrt(1 + slope * slope);
                var n = new Vec2(-slope / root, 1 / root);
                normal.Add([n.X, n.Y, n.Dot((p - new Vec2(150, 260)).Left) / 150], -Off(p));
            }
            double[] move = normal.Solve()!;
            at = [.. at.Select(p => new Vec2(150, 260) + (p - new Vec2(150, 260)).Rotate(move[2] / 150) + new Vec2(move[0], move[1]))];
        }
        return at.Max(p => Math.Abs(Off(p)));
    }

    // Distance from the edge: the edge bends so little that its tangent stands for it over a millimetre, to 0.004 mm.
    private static double Off(Vec2 p)
    {
        double slope = Studio.Slope(p.X);
        return (p.Y - Studio.Edge(p.X)) / Math.Sqrt(1 + slope * slope);
    }

    private Vec2 Tapped(Vec2 p) => _camera.Sees(p) + new Vec2(_tap * _draws.Next(), _tap * _draws.Next());
}
