using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests;

/// <summary>Developments known in closed form, for tests of what comes after developing.</summary>
internal static class Samples
{
    /// <summary>A half cylinder, its axis along x: radius and length in mm, laid flat as a rectangle πr wide.</summary>
    public static Development HalfCylinder(double radius = 150, double length = 400, LengthUnit units = LengthUnit.Millimetre)
    {
        const int steps = 120;
        var elements = ImmutableArray.CreateBuilder<ElementLine>();
        for (int i = 0; i <= steps; i++)
        {
            double angle = Math.PI * i / steps;
            var normal = new Vec3(0, -Math.Cos(angle), Math.Sin(angle));
            double s = radius * angle, x = s - Math.PI * radius / 2;
            elements.Add(new ElementLine(
                i % 10 == 0 ? i / 10 + 1 : 0, radius * normal, radius * normal + new Vec3(length, 0, 0),
                new Vec2(x, 0), new Vec2(x, -length), s, s, normal, 0, radius, radius, true));
        }
        ImmutableArray<ElementLine> lines = elements.ToImmutable();
        ImmutableArray<Vec2> front = [.. lines.Select(e => e.Front)], rear = [.. lines.Select(e => e.Rear)];
        ImmutableArray<BlankEdge> edges =
        [
            new("front", Math.PI * radius, Math.PI * radius, front),
            new("right", length, length, [front[^1], rear[^1]]),
            new("rear", Math.PI * radius, Math.PI * radius, rear),
            new("left", length, length, [front[0], rear[0]]),
        ];
        var faces = ImmutableArray.CreateBuilder<(int, int, int)>();
        for (int i = 0; i < steps; i++)
        {
            int f = 2 * i, r = f + 1;
            faces.Add((f, r, r + 2));
            faces.Add((f, r + 2, f + 2));
        }
        var mesh = new SheetMesh(
            [.. lines.SelectMany(e => new[] { e.FormedFront, e.FormedRear })],
            [.. lines.SelectMany(e => new[] { e.Front, e.Rear })],
            faces.ToImmutable());
        var spec = new PanelSpec("Cover", ["front", "rear"], ElementMatching.BendOnly);
        var panel = new PanelDevelopment(
            spec, Verdict.BendsOnly, default, new TwistSummary(0.3, 0.1), default,
            Math.PI * radius * length, Math.PI * radius * length, edges, lines,
            [.. rear, .. front.Reverse()], mesh);
        var job = new Job("Half cylinder", units, new SheetStock("mild steel", 0.9), MeasuredFace.Middle, [], [spec], PaperSpec.Default);
        return new Development(job, [panel], []);
    }
    /// <summary>The same with every blank turned on the sheet, so that none of its lines runs along the paper. Angle in radians.</summary>
    public static Development Turned(Development development, double angle)
    {
        PanelDevelopment Turn(PanelDevelopment panel) => panel with
        {
            Edges = [.. panel.Edges.Select(e => e with { Flat = [.. e.Flat.Select(p => p.Rotate(angle))] })],
            Elements = [.. panel.Elements.Select(e => e with { Front = e.Front.Rotate(angle), Rear = e.Rear.Rotate(angle) })],
            Cut = [.. panel.Cut.Select(p => p.Rotate(angle))],
            Mesh = panel.Mesh with { Flat = [.. panel.Mesh.Flat.Select(p => p.Rotate(angle))] },
        };
        return development with { Panels = [.. development.Panels.Select(Turn)] };
    }
}
