using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns;

/// <summary>What a pattern says of the errors of its edges: how much to leave on, along each stretch, and a short tick where one stretch ends.</summary>
internal static class ErrorDrawing
{
    // Length of a tick, mm.
    private const double Tick = 3;

    // How deep the words may stand, in cap heights, and how far along their stretch.
    private static readonly ImmutableArray<double> Depths = [1.6, 3.2, 5, 8, 11], Shares = [0.5, 0.35, 0.65, 0.2, 0.8];

    /// <summary>Ticks where the width changes.</summary>
    public static IEnumerable<Stroke> Ticks(PanelDevelopment panel, CutOutline outline) =>
        from edge in Edges(panel)
        from step in edge.Leave.Skip(1)
        let place = At(edge, step.From)
        from part in outline.Inside([place.Flat, place.Flat - Tick * place.Outward])
        select new Stroke(Role.Mark, part);

    /// <summary>Choices for the words of each stretch.</summary>
    public static IEnumerable<IEnumerable<Lettering>> Words(PanelDevelopment panel, double height, LengthUnit units)
    {
        foreach (EdgeError edge in Edges(panel))
        {
            // It is in the cut line already.
            bool left = ErrorWords.IsLeftOn(panel, edge.Name);
            foreach (LeaveStep step in edge.Leave)
            {
                string text = step.Width == 0 ? "cut to the line" : left ? $"{ErrorWords.Width(step.Width, units)} left on" : $"leave {ErrorWords.Width(step.Width, units)}";
                yield return Depths.SelectMany(depth => Shares.Select(share =>
                {
                    BandPlace place = At(edge, step.From + share * (step.To - step.From));
                    double angle = DrawingPlaces.Upright(Math.Atan2(place.Outward.Left.Y, place.Outward.Left.X));
                    return new Lettering(Role.Note, text, place.Flat - depth * height * place.Outward - 0.5 * height * Vec2.FromAngle(angle).Left, height, angle, Anchor.Middle);
                }));
            }
        }
    }

    private static IEnumerable<EdgeError> Edges(PanelDevelopment panel) => (panel.Error?.Edges ?? []).Where(e => e.Leave.Any(s => s.Width > 0));

    private static BandPlace At(EdgeError edge, double at) => edge.Places.MinBy(p => Math.Abs(p.At - at));
}
