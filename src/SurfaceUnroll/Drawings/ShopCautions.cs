using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>Cautions for what a piece or a job asks beyond cutting and rolling.</summary>
public static class ShopCautions
{
    private const string
        Bending = "Brakes and rolls pinch and crush: keep fingers out from between sheet and tools, and stand clear of the sheet as it swings up. Bend in the order given; try the first bend on a scrap of the same sheet.",
        Holes = "Deburr every hole and edge on both sides before you bend or fit: burrs cut, and bends crack from them.",
        Tacking = "Clamp and tack mark to mark before you weld or rivet.",
        Welding = "Grind with eyes, face and ears covered and nobody in line with the sparks. Weld with the fume drawn off and never on zinc, eyes and skin covered against the arc, and watch for fire long after.",
        Rules = "Local rules and licensed practice decide what may be welded, and by whom.",
        Vehicle = "Lamps and openings are changes to a road vehicle: local rules decide.";

    /// <summary>For one piece, on its first page, where grinding, welding and rules are spoken of already.</summary>
    /// <param name="panel">The piece.</param>
    /// <param name="joints">Its joints.</param>
    public static ImmutableArray<string> Of(PanelDevelopment panel, ImmutableArray<JointFit> joints) =>
    [
        .. panel.Bends.IsEmpty ? [] : new[] { Bending },
        .. panel.Bends.IsEmpty && panel.Openings.IsEmpty ? [] : new[] { Holes },
        .. joints.IsEmpty ? [] : new[] { Tacking },
        .. panel.Openings.IsEmpty ? [] : new[] { Vehicle },
    ];

    /// <summary>For a whole job, each once.</summary>
    public static ImmutableArray<string> Of(Development development)
    {
        bool bends = development.Panels.Any(p => !p.Bends.IsEmpty), openings = development.Panels.Any(p => !p.Openings.IsEmpty), joints = !development.Joints.IsEmpty;
        return
        [
            .. bends ? new[] { Bending } : [],
            .. bends || openings ? new[] { Holes } : [],
            .. joints ? new[] { Tacking } : [],
            .. bends || joints ? new[] { Welding, Rules } : [],
            .. openings ? new[] { Vehicle } : [],
        ];
    }
}
