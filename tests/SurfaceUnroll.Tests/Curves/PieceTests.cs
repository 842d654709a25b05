using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Curves;

/// <summary>What holds for pieces of every kind.</summary>
public class PieceTests
{
    private static readonly Placement Askew = At(new Vec3(100, -20, 5), roll: 11, lean: 25, turn: -40);

    private static readonly Dictionary<string, CurveSpec> Specs = new()
    {
        ["run"] = Run(Line(55), Arc(120, 170), Line(20), Arc(60, -80)) with { At = Askew },
        ["chord"] = new ChordSpec(300, 90, Askew),
        ["smooth points"] = Points(Fit.Smooth, false, (-90, 0), (-70, 60), (-10, 85), (40, 70), (95, 10)) with { At = Askew },
        ["mirrored points"] = Points(Fit.Smooth, true, (0, 295), (62, 272), (95, 210), (120, 0)) with { At = Askew },
        ["points in space"] = Space(Fit.Smooth, new(0, 0, 0), new(60, 10, 20), new(90, 60, 20), new(70, 90, -30)) with { At = Askew },
        ["plan and side"] = new PlanSideSpec(
            Points(Fit.Smooth, true, (0, 295), (62, 272), (95, 210), (120, 0)),
            [new(20, 10), new(120, 30), new(200, 20), new(280, 60)], Fit.Smooth, Askew),
    };

    public static TheoryData<string> Kinds => [.. Specs.Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Derivatives_agree_with_differences(string kind)
    {
        foreach (CurvePiece piece in Curve(Specs[kind]).Pieces)
        {
            for (double t = 0.1; t < 1; t += 0.2)
            {
                // Central differences: error ~ h² of the next derivatives (some hundreds of mm) plus rounding/h.
                const double h = 1e-4;
                CurveSample s = piece.At(t), before = piece.At(t - h), after = piece.At(t + h);
                Near((after.Point - before.Point) / (2 * h), s.D1, 1e-4);
                Near((after.D1 - before.D1) / (2 * h), s.D2, 1e-4);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Pieces_join_end_to_end(string kind)
    {
        ImmutableArray<CurvePiece> pieces = Curve(Specs[kind]).Pieces;
        for (int i = 1; i < pieces.Length; i++) Near(pieces[i - 1].At(1).Point, pieces[i].At(0).Point, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Reversed_curve_is_the_same_places_the_other_way(string kind)
    {
        SpaceCurve curve = Curve(Specs[kind]), back = curve.Reversed();
        Near(curve.Length, back.Length, 1e-12);
        for (double fraction = 0; fraction <= 1; fraction += 0.125)
        {
            CurveSample there = curve.AtLength(fraction * curve.Length), here = back.AtLength((1 - fraction) * curve.Length);
            Near(there.Point, here.Point, 1e-8);
        }
        CurveSample end = back.Pieces[0].At(0.25), same = curve.Pieces[^1].At(0.75);
        Near(-same.D1, end.D1, 1e-10);
        Near(same.D2, end.D2, 1e-9);
        Near(curve.Start.Point, back.Reversed().Start.Point, 1e-10);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Length_is_the_limit_of_chords(string kind)
    {
        SpaceCurve curve = Curve(Specs[kind]);
        // Chords fall short by L·(κ·ds)²/24: less than 1e-6 with 1000 of them on a piece.
        double chords = curve.Pieces.Sum(p => Enumerable.Range(0, 1000).Sum(i => (p.At((i + 1) / 1000.0).Point - p.At(i / 1000.0).Point).Length));
        Near(chords, curve.Length, 2e-6);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Crossings_lie_on_the_plane_and_every_change_of_side_is_found(string kind)
    {
        Vec3 axis = new Vec3(0.3, 0.8, -0.5).Unit;
        foreach (CurvePiece piece in Curve(Specs[kind]).Pieces)
        {
            double offset = piece.At(0.37).Point.Dot(axis);
            ImmutableArray<double> found = piece.Crossings(axis, offset);
            Assert.Contains(found, t => Math.Abs(t - 0.37) < 1e-9);
            Assert.All(found, t => Assert.Equal(offset, piece.At(t).Point.Dot(axis), 1e-9));
            double[] sides = [.. Enumerable.Range(0, 101).Select(i => piece.At(0.00497 + 0.0099 * i).Point.Dot(axis) - offset)];
            Assert.True(found.Length >= sides.Zip(sides.Skip(1)).Count(p => p.First * p.Second < 0));
        }
    }

    [Fact]
    public void Cubic_roots_are_found_where_they_crowd()
    {
        // (t − 0.5)(t − 0.5001)(t − 0.9)
        ImmutableArray<double> roots = CubicRoots.InUnitInterval(-0.5 * 0.5001 * 0.9, 0.5 * 0.5001 + 0.9 * 1.0001, -1.9001, 1);
        Assert.Equal(3, roots.Length);
        Assert.Equal(0.5001, roots[1], 1e-10);
        Assert.Equal(0.25, Assert.Single(CubicRoots.InUnitInterval(-1, 4, 0, 0)), 1e-15);
        Assert.Equal([0.5], CubicRoots.InUnitInterval(-0.125, 0.75, -1.5, 1).Select(t => Math.Round(t, 4)));
        Assert.Empty(CubicRoots.InUnitInterval(1, 0, 0, 0));
    }
}
