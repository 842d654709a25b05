using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Jobs;

/// <summary>Where the area of a cut blank comes from.</summary>
internal static class Areas
{
    /// <summary>The account of a panel whose cut line is drawn.</summary>
    public static AreaAccount Of(PanelDevelopment panel)
    {
        double blank = Polygons.SignedArea(panel.Cut) - panel.Openings.Sum(o => -Polygons.SignedArea(o.Cut)) - panel.InnerCuts.Sum(c => -Polygons.SignedArea(c));
        double gained = panel.FlatArea - panel.FormedArea;
        bool plate = panel.Spec.Flat is not null || panel.Spec.Bent is not null;
        return new AreaAccount(panel.FormedArea, panel.Openings.Sum(o => o.FormedArea), plate ? gained : 0, plate ? 0 : gained, blank - panel.FlatArea, blank);
    }
}
