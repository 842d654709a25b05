using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Fitness;

/// <summary>Gives the relief cuts of a whole sheet to its pieces.</summary>
internal static class PieceSlits
{
    /// <summary>The cuts of one piece, their places measured along its own edges.</summary>
    /// <param name="slits">Cuts of the whole sheet.</param>
    /// <param name="whole">The whole sheet.</param>
    /// <param name="part">The piece.</param>
    /// <param name="of">Which piece it is.</param>
    /// <param name="along">Which way the seams run.</param>
    public static ImmutableArray<SlitPlace> Of(ImmutableArray<SlitPlace> slits, SheetGrid whole, SheetGrid part, PieceOfPanel of, SeamDirection along)
    {
        (string first, string last) = along == SeamDirection.Across ? ("front", "rear") : ("left", "right");
        var own = ImmutableArray.CreateBuilder<SlitPlace>();
        foreach (SlitPlace slit in slits)
        {
            if (slit.Edge == first || slit.Edge == last)
            {
                // The whole edge belongs to the first or the last piece.
                if (of.Number == (slit.Edge == first ? 1 : of.Count)) own.Add(slit);
                continue;
            }
            double start = StartOf(whole, part, slit.Edge), length = SlitSearch.Measure(part, slit.Edge).Length;
            // A cut at a seam stays with the piece before it, so that it is refused and not lost.
            if (slit.At > start && slit.At <= start + length) own.Add(slit with { At = slit.At - start });
        }
        return own.ToImmutable();
    }

    // How far along an edge of the whole sheet a piece begins.
    private static double StartOf(SheetGrid whole, SheetGrid part, string edge)
    {
        var (path, corner) = edge switch
        {
            "front" => (whole.Row(0), part.At(0, 0)),
            "rear" => (whole.Row(whole.Rows - 1), part.At(part.Rows - 1, 0)),
            "left" => (whole.Column(0), part.At(0, 0)),
            _ => (whole.Column(whole.Columns - 1), part.At(0, part.Columns - 1)),
        };
        Vec3[] places = [.. path];
        double[] walked = PathLength.Running(places);
        int at = Array.IndexOf(places, corner);
        return walked[at < 0 ? ^1 : at];
    }
}
