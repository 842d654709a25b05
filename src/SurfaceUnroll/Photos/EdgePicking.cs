using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>Picks an edge along its taps.</summary>
public static class EdgePicking
{
    /// <summary>Most taps of one edge.</summary>
    public const int MostTaps = 200;

    // An arch that rises by a quarter of its span between two taps is still found.
    private const double Bulge = 0.28;

    // A lens and the other side of a corner blur the light of this many pixels beside it.
    private const double CornerBlur = 5;

    /// <summary>The edge as the photo shows it; null with faults.</summary>
    public static (PickedEdge? Edge, ImmutableArray<Notice> Faults) Of(GreyPhoto photo, PhotoEdge edge)
    {
        ImmutableArray<Vec2> taps = [.. edge.Taps.Select(t => t.At)];
        ImmutableArray<Notice> faults = Faults(photo, taps);
        if (!faults.IsEmpty) return (null, faults);
        int[] breaks = [0, .. Enumerable.Range(1, Math.Max(0, taps.Length - 2)).Where(i => edge.Taps[i].Corner), taps.Length - 1];
        ImmutableArray<Vec2> corners = [.. breaks[1..^1].Select(i => taps[i])];
        if (edge.Kind is not { } kind) return (new PickedEdge([.. breaks.Zip(breaks.Skip(1), (a, b) => taps[a..(b + 1)])], corners, false), []);

        double slack = HandErrors.Reach(photo.HalfDiagonal);
        ImmutableArray<FollowedEdge> parts = EdgeFollower.Follow(photo, kind, taps, Bulge, slack);
        faults = [.. parts.Select((p, i) => (p, i)).Where(x => x.p.IsFaint).Select(x => new Notice("photo-edge-faint", Severity.Error, "edge",
            string.Create(CultureInfo.InvariantCulture, $"Between taps {x.i + 1} and {x.i + 2} no {(kind == EdgeKind.Line ? "dark line" : "edge")} stands out from its ground."),
            "Put taps closer together there and nearer to it; take the photo with light that shows it; or let the taps themselves be the curve."))];
        if (!faults.IsEmpty) return (null, faults);
        ImmutableArray<ImmutableArray<Vec2>> stretches = [.. breaks.Zip(breaks.Skip(1), (a, b) => Stretch(parts[a..b], a == 0 ? null : taps[a], b == taps.Length - 1 ? null : taps[b]))];
        return stretches.All(s => s.Length >= 2)
            ? (new PickedEdge(stretches, corners, true), [])
            : (null, [new Notice("photo-edge-short", Severity.Error, "edge", "Two corners are too near each other for the edge between them to be followed.", "Take a larger photo, or let the taps themselves be the curve.")]);
    }

    private static ImmutableArray<Notice> Faults(GreyPhoto photo, ImmutableArray<Vec2> taps)
    {
        if (taps.Length is < 2 or > MostTaps)
            return [new Notice("photo-edge-taps", Severity.Error, "edge", string.Create(CultureInfo.InvariantCulture, $"An edge takes 2 to {MostTaps} taps; there are {taps.Length}."), "Tap both ends, and the edge between them wherever it bends.")];
        Notice[] outside = [.. ReferenceChecks.Outside(taps, [.. taps.Select((_, i) => string.Create(CultureInfo.InvariantCulture, $"tap {i + 1}"))], photo, "edge")];
        if (outside.Length > 0) return [.. outside];
        return [.. Enumerable.Range(1, taps.Length - 1).Where(i => (taps[i] - taps[i - 1]).Length < 6).Select(i => new Notice("photo-taps-repeat", Severity.Error, "edge",
            string.Create(CultureInfo.InvariantCulture, $"Taps {i} and {i + 1} are at one place."), "Leave one of them out."))];
    }

    // Picks of several parts in one row, without those that a corner has blurred or that go back.
    private static ImmutableArray<Vec2> Stretch(ImmutableArray<FollowedEdge> parts, Vec2? cornerBefore, Vec2? cornerAfter)
    {
        var row = new List<Vec2>();
        foreach (Vec2 pick in parts.SelectMany(p => p.Picks))
        {
            if (cornerBefore is { } a && (pick - a).Length < CornerBlur || cornerAfter is { } b && (pick - b).Length < CornerBlur) continue;
            if (row.Count > 0 && (pick - row[^1]).Length < 1) continue;
            if (row.Count > 3 && (pick - row[^1]).Dot(row[^1] - row[^4]) <= 0) continue;
            row.Add(pick);
        }
        return [.. row];
    }
}
