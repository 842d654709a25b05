namespace SurfaceUnroll.Curves;

/// <summary>What holds at an end of a cubic spline.</summary>
internal enum SplineEnd
{
    /// <summary>The span next to the end is a parabola. The curve there is then off by the third power of the spacing, where a cubic through the last
    /// points (not-a-knot) would be off by the fourth; but where those points lie far apart it runs on calmly, which that cubic does not.</summary>
    Parabola,

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
        if (n == 1 && start == SplineEnd.Parabola && end == SplineEnd.Parabola) return [chord[0], chord[0]];
        var rows = new Tridiagonal(n + 1);
        rows.Set(0, default, EndRow(start, chord[0]));
        for (int i = 1; i < n; i++) SetInterior(rows, i, steps[i - 1], steps[i], chord[i - 1], chord[i]);
        (double diagonal, double beside, double right) = EndRow(end, chord[n - 1]);
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

    // The slope at the end knot and at the one beside it, with the chord between them.
    private static (double Diagonal, double Beside, double Right) EndRow(SplineEnd end, double chord) => end switch
    {
        SplineEnd.Level => (1, 0, 0),
        SplineEnd.Odd => (2, 1, 3 * chord),
        _ => (1, 1, 2 * chord),
    };
}
