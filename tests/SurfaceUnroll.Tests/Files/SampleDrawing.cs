using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files;

/// <summary>A drawing with every role, made by hand so that the writers are tested apart from what decides on a drawing.</summary>
internal static class SampleDrawing
{
    public static Drawing OfHalfCylinder()
    {
        PanelDevelopment panel = Samples.HalfCylinder().Panels[0];
        IEnumerable<Stroke> elements = panel.Elements.Where(e => e.Number > 1 && e.Number < 13 && e.Number != 7)
            .Select(e => new Stroke(Role.Element, [e.Front, e.Rear]));
        return new Drawing(
            "Cover – Half cylinder",
            [
                new Stroke(Role.Cut, panel.Cut, Closed: true),
                .. elements,
                new Stroke(Role.Centre, [new Vec2(0, 0), new Vec2(0, -400)]),
                new Stroke(Role.Mark, [new Vec2(-5, -50), new Vec2(0, -45), new Vec2(5, -50)]),
                new Stroke(Role.Contour, [new Vec2(-90, -300), new Vec2(-60, -300), new Vec2(-75, -280)], Closed: true),
                new Stroke(Role.Contour, [new Vec2(-90, -350), new Vec2(-60, -340)]) { Dashed = true },
            ],
            [
                new Lettering(Role.Note, "R 150 \"a\" & <b> Ø 20°", new Vec2(-100, -200), 5),
                new Lettering(Role.Note, "upright", new Vec2(50, -200), 4, Math.PI / 2, Anchor.Middle),
                new Lettering(Role.Contour, "\u22122 %", new Vec2(-75, -300), 2),
                new Lettering(Role.Mark, "A", new Vec2(60, -300), 3, 0, Anchor.Right),
            ]);
    }
}
