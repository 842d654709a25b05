using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>Cautions for what a piece or a job asks beyond cutting and rolling.</summary>
public static class ShopCautions
{
    private const string
        Bending = "Brakes and rolls pinch and crush: keep fingers out from between sheet and tools, and out of the way of the sheet as it swings up. Bend in the order given; try the first bend on a scrap of the same sheet.",
        Holes = "Deburr every hole and edge on both sides before you bend or fit: burrs cut, and bends crack from them.",
        Joining = "Clamp and tack mark to mark before you weld. Grind with eyes, face and ears covered and nobody in line with the sparks; weld with an extractor, never on zinc, eyes and skin covered against the arc, and watch for fire for an hour after.",
        Rules = "Local rules and licensed practice decide what may be welded, and by whom.",
        Vehicle = "Lamps and openings are changes to a road vehicle: local rules decide.";

    /// <summary>For one piece.</summary>
    /// <param name="panel">The piece.</param>
    /// <param name="joints">Its joints.</param>
    public static ImmutableArray<string> Of(PanelDevelopment panel, ImmutableArray<JointFit> joints) =>
        Of(!panel.Bends.IsEmpty, !panel.Openings.IsEmpty, !joints.IsEmpty);

    /// <summary>For a whole job, each once.</summary>
    public static ImmutableArray<string> Of(Development development) =>
        Of(development.Panels.Any(p => !p.Bends.IsEmpty), development.Panels.Any(p => !p.Openings.IsEmpty), !development.Joints.IsEmpty);

    private static ImmutableArray<string> Of(bool bends, bool openings, bool joints) =>
    [
        .. bends ? new[] { Bending } : [],
        .. openings || bends ? new[] { Holes } : [],
        .. joints ? new[] { Joining, Rules } : [],
        .. openings ? new[] { Vehicle } : [],
    ];
}
