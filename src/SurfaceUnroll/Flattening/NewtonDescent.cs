using SurfaceUnroll.Flattening.Sparse;

namespace SurfaceUnroll.Flattening;

/// <summary>Least forming energy by projected Newton steps.</summary>
/// <remarks>A step solves H·d = −g. The factor of an earlier H, which changes little from step to step, stands in for H's own while conjugate gradients with it still come to the
/// answer in a few rounds; a new factor is made when they do not.</remarks>
internal sealed class NewtonDescent
{
    // A step is taken as exact once its residual is down to this share, in the norm of the factor.
    private const double StepTolerance = 1e-2;

    // Rounds of conjugate gradients that cost about as much as a new factor.
    private const int WorthAFactor = 6;

    // Added to the diagonal, as a share of its mean: holds the three rigid motions, along which the gradient is zero.
    private const double RigidHold = 1e-9;

    /// <summary>Share of the energy below which the gain of a step makes it the last one, where shrinking costs what stretching does: the next gain is then far smaller.</summary>
    public const double Smooth = 1e-7;

    /// <summary>The same where it costs more, and steps come to the end more slowly.</summary>
    public const double Kinked = 1e-6;

    // Share of the last step's gain that shows the errors to square, and share of the energy below which such a step was the last one.
    private const double Squared = 0.01, Near = 2e-5;

    // Root mean square strain below which the sheet is flat.
    private const double NoStrain = 1e-11;

    private const int MostSteps = 200;

    private readonly FormingEnergy _energy;
    private readonly HeldEdges _held;
    private readonly BlockSystem _matrix;
    private readonly FrontalCholesky _factor;
    private readonly double _area, _lastGain;
    private readonly double[] _gradient, _step, _residual, _scaled, _direction, _product;
    private bool _factored;

    /// <summary>A descent on an energy.</summary>
    /// <param name="energy">The energy of the problem's mesh.</param>
    /// <param name="held">Edges that keep their length.</param>
    /// <param name="problem">The mesh with its matrix.</param>
    /// <param name="lastGain">Share of the energy below which the gain of a step makes it the last one.</param>
    public NewtonDescent(FormingEnergy energy, HeldEdges held, FlatteningProblem problem, double lastGain)
    {
        (_energy, _held, _matrix, _factor, _area, _lastGain) = (energy, held, problem.Matrix, problem.Factor, problem.Rest.TotalArea, lastGain);
        int size = 2 * _matrix.Count;
        _gradient = new double[size];
        (_step, _residual, _scaled, _direction, _product) = (new double[size], new double[size], new double[size], new double[size], new double[size]);
    }

    /// <summary>Moves a blank to the least energy.</summary>
    /// <param name="x">Places on the blank, two values a vertex, no triangle turned over; moved in place.</param>
    /// <param name="progress">Told the number of steps and the energy after each.</param>
    /// <param name="cancellation">Stops between steps.</param>
    /// <returns>Steps taken.</returns>
    public int Run(double[] x, Action<int, double>? progress, CancellationToken cancellation)
    {
        double energy = Evaluate(x);
        double[] trial = new double[x.Length];
        int steps = 0;
        double before = 0;
        while (steps < MostSteps && (!_held.IsEmpty || energy > NoStrain * NoStrain * _area))
        {
            cancellation.ThrowIfCancellationRequested();
            _energy.Assemble(x, _gradient);
            _held.AddTo(x, _gradient, _matrix);
            HoldRigidMotions();
            if (!_factored || !Solve(WorthAFactor))
            {
                Factor(cancellation);
                _factored = true;
                Solve(2 * WorthAFactor);
            }
            double slope = Dot(_gradient, _step);
            double reached = Search(x, trial, energy, slope);
            if (!(reached < energy)) break;
            trial.CopyTo(x, 0);
            steps++;
            double gain = energy - reached;
            energy = reached;
            progress?.Invoke(steps, energy);
            // Steps that gain a hundredth of what the one before gained have come near enough for their errors to square.
            bool squaring = gain < Squared * before;
            if (gain < (squaring ? Near : _lastGain) * Math.Abs(energy)) break;
            before = gain;
        }
        return steps;
    }

    private double Evaluate(double[] x) => _energy.Evaluate(x) + _held.Evaluate(x);

    // The longest of 1, 1/2, 1/4 … steps that lowers the energy enough (Armijo) and turns no triangle over.
    private double Search(double[] x, double[] trial, double energy, double slope)
    {
        for (double length = 1; length > 1e-12; length *= 0.5)
        {
            for (int i = 0; i < x.Length; i++) trial[i] = x[i] + length * _step[i];
            double reached = Evaluate(trial);
            if (reached <= energy + 1e-4 * length * slope) return reached;
        }
        return energy;
    }

    private void HoldRigidMotions()
    {
        double trace = 0;
        for (int v = 0; v < _matrix.Count; v++) trace += _matrix.Diagonal[3 * v] + _matrix.Diagonal[3 * v + 2];
        double hold = RigidHold * trace / (2 * _matrix.Count);
        for (int v = 0; v < _matrix.Count; v++)
        {
            _matrix.Diagonal[3 * v] += hold;
            _matrix.Diagonal[3 * v + 2] += hold;
        }
    }

    // Where triangles are so strained that rounding takes a pivot below zero, the diagonal grows until it does not.
    private void Factor(CancellationToken cancellation)
    {
        for (double growth = 1e-9; !_factor.Factor(cancellation); growth *= 100)
        {
            for (int v = 0; v < _matrix.Count; v++)
            {
                _matrix.Diagonal[3 * v] *= 1 + growth;
                _matrix.Diagonal[3 * v + 2] *= 1 + growth;
            }
        }
    }

    // Conjugate gradients for H·step = −gradient, preconditioned by the factor at hand. False if that takes more rounds.
    private bool Solve(int rounds)
    {
        Array.Clear(_step);
        for (int i = 0; i < _gradient.Length; i++) _residual[i] = -_gradient[i];
        _factor.Solve(_residual, _scaled);
        _scaled.CopyTo(_direction, 0);
        double norm = Dot(_residual, _scaled), first = norm;
        if (!(norm > 0)) return true;
        for (int k = 0; k < rounds; k++)
        {
            _matrix.Multiply(_direction, _product);
            double curve = Dot(_direction, _product);
            if (!(curve > 0)) return false;
            double length = norm / curve;
            for (int i = 0; i < _step.Length; i++)
            {
                _step[i] += length * _direction[i];
                _residual[i] -= length * _product[i];
            }
            // With the matrix's own factor the first round is the answer, and its residual rounding: no need to look at it through another solution.
            if (Dot(_residual, _residual) <= 1e-16 * Dot(_gradient, _gradient)) return true;
            _factor.Solve(_residual, _scaled);
            double next = Dot(_residual, _scaled);
            if (next <= StepTolerance * StepTolerance * first) return true;
            double turn = next / norm;
            norm = next;
            for (int i = 0; i < _step.Length; i++) _direction[i] = _scaled[i] + turn * _direction[i];
        }
        return false;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
