using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>Cautions for the work that a piece or a job asks for. Each matter is spoken of once: where a piece asks for more, a caution takes the place of the plainer one.</summary>
public static class ShopCautions
{
    private const string
        Edges = "Sheet edges and fresh cuts are razor sharp: wear gloves, and deburr first.",
        Gloves = "Sheet edges and fresh cuts are razor sharp: wear gloves. ",
        Machines = "Shears, rolls and brakes crush: keep hands clear, no loose sleeves.",
        Bending = "Brakes and rolls pinch and crush: keep fingers out from between sheet and tools, and stand clear of the sheet as it swings up. Bend in the order given; try the first bend on a scrap of the same sheet.",
        Holes = "Deburr every hole and edge on both sides before you bend or fit: burrs cut, and bends crack from them.",
        Tacking = "Clamp and tack mark to mark before you weld or rivet.",
        Grinding = "Grinding: face shield, hearing protection, guard on, nobody in line.",
        Welding = "Welding: strip zinc coatings first, their fume is poisonous. Ventilate, shield eyes and skin, keep a fire watch. Thin sheet stays hot for long.",
        GrindAndWeld = "Grind with eyes, face and ears covered and nobody in line with the sparks. Weld with the fume drawn off, eyes and skin covered against the arc, and watch for fire long after.",
        Rules = "Local codes and licensed practice decide what may be welded, and by whom.",
        // What is made may be a cover of a vehicle or of a bench: the words hold for both.
        Vehicle = "On a road vehicle: a changed body, lamps and openings too, may need approval before it goes on the road.";

    /// <summary>What is said of every piece.</summary>
    public static ImmutableArray<string> Always { get; } = [Edges, Machines, Grinding, Welding, Rules, Vehicle];

    /// <summary>All that is said of one piece, on its pages.</summary>
    /// <param name="panel">The piece.</param>
    /// <param name="joints">Its joints.</param>
    public static ImmutableArray<string> Of(PanelDevelopment panel, ImmutableArray<JointFit> joints) =>
    [
        .. panel.Bends.IsEmpty && panel.Openings.IsEmpty ? [Edges] : new[] { Gloves + Holes },
        panel.Bends.IsEmpty ? Machines : Bending,
        .. joints.IsEmpty ? [] : new[] { Tacking },
        Grinding, Welding, Rules, Vehicle,
    ];

    /// <summary>What one piece asks for beside what is said of every piece, for a page of its own.</summary>
    /// <param name="panel">The piece.</param>
    /// <param name="joints">Its joints.</param>
    public static ImmutableArray<string> Beside(PanelDevelopment panel, ImmutableArray<JointFit> joints) =>
    [
        .. panel.Bends.IsEmpty ? [] : new[] { Bending },
        .. panel.Bends.IsEmpty && panel.Openings.IsEmpty ? [] : new[] { Holes },
        .. joints.IsEmpty ? [] : new[] { Tacking },
    ];

    /// <summary>For a whole job on the screen, beside what is said of every job there.</summary>
    public static ImmutableArray<string> Of(Development development)
    {
        bool bends = development.Panels.Any(p => !p.Bends.IsEmpty), openings = development.Panels.Any(p => !p.Openings.IsEmpty), joints = !development.Joints.IsEmpty;
        return
        [
            .. bends ? new[] { Bending } : [],
            .. bends || openings ? new[] { Holes } : [],
            .. joints ? new[] { Tacking } : [],
            .. bends || joints ? new[] { GrindAndWeld, Rules } : [],
            .. openings ? new[] { Vehicle } : [],
        ];
    }
}
