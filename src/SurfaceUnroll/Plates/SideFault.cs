using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Plates;

/// <summary>The side profile of a bent plate, or why it cannot be laid.</summary>
/// <param name="Side">Null exactly if there is a fault.</param>
/// <param name="Faults">All that were found.</param>
internal sealed record SideLaying(SideChain? Side, ImmutableArray<SideFault> Faults);

/// <summary>What keeps a side from being laid.</summary>
internal abstract record SideFault;

/// <summary>A bend takes more metal than the flats beside it have.</summary>
/// <param name="Point">Number of its point, from 1.</param>
internal sealed record CrampedBend(int Point) : SideFault;

/// <summary>A rolled arc of a run whose inside face would fold.</summary>
/// <param name="Step">Number of its step, from 0.</param>
/// <param name="Radius">On the measured face, mm.</param>
/// <param name="Least">The smallest that the sheet leaves an inside to, mm.</param>
internal sealed record TightArc(int Step, double Radius, double Least) : SideFault;

/// <summary>The sharpest place of a smooth side, whose inside face may fold there.</summary>
/// <param name="Place">Where it is sharpest: (aft, height), mm.</param>
/// <param name="MiddleRadius">Of the middle surface there, mm; a fault if less than half the thickness.</param>
internal sealed record TightRoll(Vec2 Place, double MiddleRadius) : SideFault;
