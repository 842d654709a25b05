namespace SurfaceUnroll.Curves;

/// <summary>What holds at an end of a cubic spline.</summary>
internal enum SplineEnd
{
    /// <summary>The two spans next to the end are one cubic; with too few points for that, a polynomial of lower degree.</summary>
    NotAKnot,

    /// <summary>First derivative 0: a function that goes on as its mirror image.</summary>
    Level,

    /// <summary>Second derivative 0: a function that goes on as its mirror image with the sign changed.</summary>
    Odd,
}

/// <summary>Slopes at the knots of the C2 cubic spline through given values (C. de Boor, A Practical Guide to Splines, ch. IV).</summary>
internal static class SplineSlopes
{
    /// <summary>Slopes at each knot of an open spline.</summary>
    /// <param name="steps">Knot distances, all &gt; 0; at least one.</param>
    /// <param name="values">One more than <paramref name="steps"/>.</param>
    /// <param name="start">Condition at the first knot.</param>
    /// <param name="end">Condition at the last knot.</param>
    public static double[] Open(double[] steps, double[] values, SplineEnd start, SplineEnd end)
    {
        int n = steps.Length;
        double[] chord = Chords(steps, values);
        if (n == 1 && start == SplineEnd.NotAKnot && end == SplineEnd.NotAKnot) return [chord[0], chord[0]];
        var rows = new Tridiagonal(n + 1);
        bool parabola = n == 1 || (n == 2 && start == SplineEnd.NotAKnot && end == SplineEnd.NotAKnot);
        rows.Set(0, default, EndRow(start, steps[0], n > 1 ? steps[1] : 0, chord[0], n > 1 ? chord[1] : 0, n == 1));
        for (int i = 1; i < n; i++) SetInterior(rows, i, steps[i - 1], steps[i], chord[i - 1], chord[i]);
        (double diagonal, double beside, double right) =
            EndRow(end, steps[n - 1], n > 1 ? steps[n - 2] : 0, chord[n - 1], n > 1 ? chord[n - 2] : 0, parabola);
        rows.Set(n, beside, (diagonal, 0, right));
        return rows.Solve();
    }

    /// <summary>Slopes at each knot of a closed spline, the last equal to the first.</summary>
    /// <param name="steps">Knot distances, all &gt; 0; at least three.</param>
    /// <param name="values">One more than <paramref name="steps"/>; the last equals the first.</param>
    public static double[] Periodic(double[] steps, double[] values)
    {
        // The corner entries are a rank-one change of a tridiagonal matrix (Sherman–Morrison; Press et al., "cyclic tridiagonal systems").
        int n = steps.Length;
        double[] chord = Chords(steps, values);
        Tridiagonal rows = new(n), bump = new(n);
        for (int i = 0; i < n; i++) SetInterior(rows, i, steps[(i + n - 1) % n], steps[i], chord[(i + n - 1) % n], chord[i]);
        double topRight = steps[0], bottomLeft = steps[n - 2], gamma = -rows.Diagonal[0];
        rows.Diagonal[0] -= gamma;
        rows.Diagonal[n - 1] -= topRight * bottomLeft / gamma;
        rows.CopyMatrixTo(bump);
        bump.Right[0] = gamma;
        bump.Right[n - 1] = bottomLeft;
        double[] y = rows.Solve(), z = bump.Solve();
        double factor = (y[0] + topRight * y[n - 1] / gamma) / (1 + z[0] + topRight * z[n - 1] / gamma);
        var slopes = new double[n + 1];
        for (int i = 0; i < n; i++) slopes[i] = y[i] - factor * z[i];
        slopes[n] = slopes[0];
        return slopes;
    }

    private static double[] Chords(double[] steps, double[] values) =>
        [.. steps.Select((h, i) => (values[i + 1] - values[i]) / h)];

    // Second derivatives agree at knot i.
    private static void SetInterior(Tridiagonal rows, int i, double h0, double h1, double chord0, double chord1) =>
        rows.Set(i, h1, (2 * (h0 + h1), h0, 3 * (h1 * chord0 + h0 * chord1)));

    // h0 and chord0 are of the span at the end, h1 and chord1 of the span next to it.
    private static (double Diagonal, double Beside, double Right) EndRow(
        SplineEnd end, double h0, double h1, double chord0, double chord1, bool parabola) => end switch
        {
            SplineEnd.Level => (1, 0, 0),
            SplineEnd.Odd => (2, 1, 3 * chord0),
            _ when parabola => (1, 1, 2 * chord0),
            _ => (h1, h0 + h1, ((h0 + 2 * (h0 + h1)) * h1 * chord0 + h0 * h0 * chord1) / (h0 + h1)),
        };
}
