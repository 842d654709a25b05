using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>How strongly the light changes across a line, and where it does so most, to a fraction of a pixel.</summary>
/// <remarks>Slope, or bend, of the light smoothed by a Gaussian: J. Canny, A computational approach to edge detection (1986); T. Lindeberg, Edge detection and ridge detection with automatic
/// scale selection (1998). The answer of a straight blurred edge is a Gaussian itself, so its logarithm is a parabola and three values tell its top.</remarks>
internal sealed class EdgeProfile
{
    // Along the edge a pick takes the mean of so many pixels to both sides.
    private const int Along = 2;

    private readonly GreyPhoto _photo;
    private readonly double[] _kernel;
    private readonly int _reach;

    /// <summary>A profile of a kind.</summary>
    /// <param name="photo">Photo.</param>
    /// <param name="kind">Edge or line.</param>
    /// <param name="scale">Standard deviation of the Gaussian, pixels; of a line about half its width is best.</param>
    public EdgeProfile(GreyPhoto photo, EdgeKind kind, double scale)
    {
        (_photo, Scale) = (photo, scale);
        _reach = (int)Math.Ceiling(3 * scale);
        _kernel = new double[2 * _reach + 1];
        double sum = 0;
        for (int j = -_reach; j <= _reach; j++)
        {
            double u = j / scale, g = Math.Exp(-0.5 * u * u);
            _kernel[j + _reach] = kind == EdgeKind.Edge ? u * g : (u * u - 1) * g;
            sum += kind == EdgeKind.Edge ? u * u * g : 0;
        }
        if (kind == EdgeKind.Edge)
        {
            // So that a step of light answers with its own height.
            double step = Enumerable.Range(1, _reach).Sum(j => _kernel[j + _reach]);
            for (int j = 0; j < _kernel.Length; j++) _kernel[j] /= step;
        }
        else
        {
            // Light that does not bend answers nothing, and a line as wide as it suits best about with its depth.
            double mean = _kernel.Average(), depth = Enumerable.Range(-_reach, 2 * _reach + 1).Where(j => Math.Abs(j) <= scale).Sum(j => mean - _kernel[j + _reach]);
            for (int j = 0; j < _kernel.Length; j++) _kernel[j] = (_kernel[j] - mean) / depth;
        }
    }

    /// <summary>Pixels.</summary>
    public double Scale { get; }

    /// <summary>The place of the strongest answer on a line square to the edge.</summary>
    /// <param name="at">About where it is, pixels.</param>
    /// <param name="normal">Unit vector; an edge that gets lighter along it answers with &gt; 0.</param>
    /// <param name="within">Pixels to look to both sides.</param>
    /// <param name="sign">1 or −1: which answers count.</param>
    /// <returns>Offset along the normal and strength; null where the strongest is at the end of the search.</returns>
    public (double Offset, double Strength)? Top(Vec2 at, Vec2 normal, int within, double sign)
    {
        int reach = within + 1, n = 2 * (reach + _reach) + 1;
        Span<double> light = stackalloc double[n];
        Vec2 along = normal.Left;
        for (int i = 0; i < n; i++)
        {
            Vec2 p = at + (i - reach - _reach) * normal;
            double sum = 0;
            for (int k = -Along; k <= Along; k++) sum += _photo.At(p.X + k * along.X, p.Y + k * along.Y);
            light[i] = sum / (2 * Along + 1);
        }
        Span<double> answer = stackalloc double[2 * reach + 1];
        int top = 0;
        for (int i = 0; i < answer.Length; i++)
        {
            double sum = 0;
            for (int j = 0; j < _kernel.Length; j++) sum += _kernel[j] * light[i + j];
            answer[i] = sign * sum;
            if (answer[i] > answer[top]) top = i;
        }
        if (top == 0 || top == answer.Length - 1 || answer[top] <= 0) return null;
        (double before, double middle, double after) = (answer[top - 1], answer[top], answer[top + 1]);
        if (before > 0 && after > 0) (before, middle, after) = (Math.Log(before), Math.Log(middle), Math.Log(after));
        double bend = before - 2 * middle + after, shift = bend < 0 ? 0.5 * (before - after) / bend : 0;
        return (top - reach + Math.Clamp(shift, -0.5, 0.5), answer[top]);
    }

    /// <summary>The answer at one place, with the sign of its own.</summary>
    public double At(Vec2 at, Vec2 normal)
    {
        double sum = 0;
        for (int j = -_reach; j <= _reach; j++) sum += _kernel[j + _reach] * _photo.At(at.X + j * normal.X, at.Y + j * normal.Y);
        return sum;
    }
}
