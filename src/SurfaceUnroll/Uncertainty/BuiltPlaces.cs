using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Uncertainty;

/// <summary>The lettered places of a piece, found again on the same piece with other readings: each at the same share of the same edge.</summary>
internal sealed class BuiltPlaces
{
    private readonly Dictionary<string, Spot> _spots = [];

    // An edge by its name and which of its runs it is, and shares of its length on the blank and on the part.
    private readonly record struct Spot(string Edge, int Run, double OnBlank, double OnPart);

    /// <summary>The places of a piece with its plan.</summary>
    public BuiltPlaces(PanelDevelopment panel)
    {
        foreach (TapeMark mark in panel.Plan?.Marks ?? [])
        {
            (EdgeChain chain, int run) = panel.Mesh.Chains.Where(c => c.Vertices.Length > 1).Select(c => (c, Run: panel.Mesh.Chains.Where(o => o.Name == c.Name).TakeWhile(o => o != c).Count()))
                .MinBy(c => Math.Round(c.c.Vertices.Min(v => (panel.Mesh.Flat[v] - mark.Flat).Length), 6));
            int at = Enumerable.Range(0, chain.Vertices.Length).MinBy(i => (panel.Mesh.Flat[chain.Vertices[i]] - mark.Flat).Length);
            double[] flat = PathLength.Running(chain.Vertices.Select(v => InSpace(panel.Mesh.Flat[v]))), formed = PathLength.Running(chain.Vertices.Select(v => panel.Mesh.Formed[v]));
            _spots[mark.Letter] = new Spot(chain.Name, run, flat[at] / flat[^1], formed[at] / formed[^1]);
        }
    }

    /// <summary>The letters that there are.</summary>
    public IEnumerable<string> Letters => _spots.Keys;

    /// <summary>What a tape should show, mm; NaN where the piece has no such edge.</summary>
    /// <param name="panel">The piece, or the same with other readings.</param>
    /// <param name="reading">What is measured.</param>
    public double Length(PanelDevelopment panel, BuiltReading reading)
    {
        if (reading.Kind == BuiltKind.Edge) return panel.FindEdge(reading.From)?.FlatLength ?? double.NaN;
        bool part = reading.Kind == BuiltKind.Part;
        return At(panel, reading.From, part) is { } from && At(panel, reading.To, part) is { } to ? (to - from).Length : double.NaN;
    }

    private Vec3? At(PanelDevelopment panel, string letter, bool part)
    {
        Spot spot = _spots[letter];
        if (panel.Mesh.Chains.Where(c => c.Name == spot.Edge).Skip(spot.Run).FirstOrDefault() is not { } chain) return null;
        Vec3[] path = [.. chain.Vertices.Select(v => part ? panel.Mesh.Formed[v] : InSpace(panel.Mesh.Flat[v]))];
        double[] running = PathLength.Running(path);
        double along = (part ? spot.OnPart : spot.OnBlank) * running[^1];
        int i = 1;
        while (i < path.Length - 1 && running[i] < along) i++;
        double step = running[i] - running[i - 1];
        return path[i - 1] + (step > 0 ? (along - running[i - 1]) / step : 0) * (path[i] - path[i - 1]);
    }

    private static Vec3 InSpace(Vec2 p) => new(p.X, p.Y, 0);
}
