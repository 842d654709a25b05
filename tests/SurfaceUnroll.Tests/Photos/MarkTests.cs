using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Tests.Photos;

public class MarkTests
{
    private static readonly StudioCamera Camera = StudioCamera.Over(Studio.Scene, 800, 600, 0.4, 2, 0.1, 0.02, default);

    private static readonly GreyPhoto Blank = new(800, 600, [.. new ushort[800 * 600]]);

    private static readonly Vec2[] Ring = [new(0, 0), new(150, 5), new(300, 0), new(305, 150), new(300, 310), new(150, 305), new(0, 310)];

    private static MarkReference Placed(params Vec2[] places) => new([.. places.Select((p, i) => new PhotoMark($"{(char)('A' + i)}", Camera.Sees(p), p))], [], HandErrors.Tape);

    private static MarkReference Taped(Vec2[] places, params (int From, int To, double Wrong)[] wrong) => new(
        [.. places.Select((p, i) => new PhotoMark($"{(char)('A' + i)}", Camera.Sees(p), null))],
        [.. from i in Enumerable.Range(0, places.Length) from k in Enumerable.Range(i + 1, places.Length - i - 1)
            select new TapedDistance(i, k, (places[i] - places[k]).Length + wrong.Where(w => (w.From, w.To) == (i, k)).Sum(w => w.Wrong))], HandErrors.Tape);

    private static (PhotoScale? Scale, ImmutableArray<Notice> Findings) Scale(PhotoReference reference) => PhotoTracing.Scale(Blank, reference);

    [Fact]
    public void Seven_marks_give_camera_and_bow()
    {
        (PhotoScale? scale, ImmutableArray<Notice> findings) = Scale(Placed(Ring));
        Assert.Empty(findings);
        Assert.True(scale!.BowIsKnown);
        // What is taken for granted of lenses, a bow of nought give or take 2 %, draws the bow towards it by less than the marks leave it in doubt.
        double doubt = Math.Sqrt(scale.ErrorFactor[8].Sum(v => v * v));
        Assert.InRange(doubt, 0.001, 0.6 * HandErrors.Bow);
        Assert.Equal(0.02, scale.Camera.Bow, doubt);
        Assert.All(scale.Residuals, r => Assert.True(r.Off.Length < HandErrors.Tape, $"{r.Name} {r.Off}"));
    }

    [Fact]
    public void Four_marks_leave_the_bow_unknown_and_fit_without_residuals()
    {
        PhotoScale scale = Scale(Placed(Ring[0], Ring[2], Ring[4], Ring[6])).Scale!;
        Assert.False(scale.BowIsKnown);
        Assert.Equal(0, scale.Camera.Bow, 1e-6);
        Assert.Equal(0, scale.Scatter, 1e-6);
    }

    [Fact]
    public void Four_sides_and_two_diagonals_stand_for_places()
    {
        Vec2[] corners = [Ring[0], Ring[2], Ring[4], Ring[6]];
        PlaneCamera by = Scale(Placed(corners)).Scale!.Camera, taped = Scale(Taped(corners)).Scale!.Camera;
        // The first mark is the origin and the second lies across from it, as it does in the ring.
        foreach (Vec2 p in (Vec2[])[new(20, 30), new(150, 150), new(280, 260)]) Assert.True((by.ToPhoto(p) - taped.ToPhoto(p)).Length < 0.01);
    }

    [Fact]
    public void A_bad_mark_is_named_with_how_far_it_is_off()
    {
        MarkReference good = Placed(Ring);
        (_, ImmutableArray<Notice> findings) = Scale(good with { Marks = good.Marks.SetItem(3, good.Marks[3] with { Place = Ring[3] + new Vec2(-6, 2) }) });
        Notice bad = Assert.Single(findings);
        Assert.Equal(("photo-mark-bad", "marks.D", Severity.Warning), (bad.Code, bad.Where, bad.Severity));
        // The tap lies 6 mm to the right of the wrong place, and 2 below.
        Assert.Matches(@"^Mark D lies 6\.\d mm .* \((5\.[5-9]|6\.[0-5]) mm to the right, (1\.[5-9]|2\.[0-5]) mm down\)", bad.Message);
    }

    [Fact]
    public void Five_marks_show_that_one_is_bad_but_not_which()
    {
        MarkReference good = Placed(Ring[..5]);
        (_, ImmutableArray<Notice> findings) = Scale(good with { Marks = good.Marks.SetItem(3, good.Marks[3] with { Place = Ring[3] + new Vec2(-40, 10) }) });
        Assert.Equal("photo-marks-apart", Assert.Single(findings).Code);
    }

    [Fact]
    public void A_slip_of_the_tape_is_seen_in_six_distances_and_named_in_more()
    {
        Vec2[] corners = [Ring[0], Ring[2], Ring[4], Ring[6]];
        Assert.Empty(Scale(Taped(corners)).Findings);
        Assert.Equal("photo-distances-unlike", Assert.Single(Scale(Taped(corners, (0, 2, 10))).Findings).Code);
        Notice bad = Assert.Single(Scale(Taped(Ring[..6], (1, 4, 10))).Findings);
        Assert.Equal("photo-mark-bad", bad.Code);
        Assert.Matches(@"from B to E is (9\.[5-9]|10\.\d) mm more", bad.Message);
    }

    // Two rows of three, with honest errors.
    private static readonly Vec2[] Rows = [new(-80, 180), new(385, 170), new(395, 390), new(-90, 380), new(150, 400), new(160, 190)];

    private static readonly StudioCamera Above = StudioCamera.Over(new Box(new Vec2(-110, 150), new Vec2(415, 420)), 2000, 1500, 0.3, 1, 0.05, 0.01, default);

    private static readonly GreyPhoto Large = new(2000, 1500, [.. new ushort[2000 * 1500]]);

    private static MarkReference InRows(int seed, int wrong, Vec2 by)
    {
        var draws = new NormalDraws(seed);
        Vec2 Err(double s) => new(s * draws.Next(), s * draws.Next());
        return new([.. Rows.Select((p, i) => new PhotoMark($"{(char)('A' + i)}", Above.Sees(p) + Err(0.5), p + Err(HandErrors.Tape) + (i == wrong ? by : default)))], [], HandErrors.Tape);
    }

    [Theory]
    [InlineData(0, 10)]
    [InlineData(1, 20)]
    [InlineData(2, 20)]
    [InlineData(3, 10)]
    public void Of_six_marks_in_two_rows_the_wrong_one_is_among_those_that_are_named_and_none_is_to_be_left_out(int wrong, double by)
    {
        for (int seed = 1; seed <= 10; seed++)
        {
            Notice told = Assert.Single(PhotoTracing.Scale(Large, InRows(seed, wrong, new Vec2(by, 0))).Findings);
            Assert.Equal("photo-marks-apart", told.Code);
            string name = $"{(char)('A' + wrong)}";
            Assert.Matches($@"apart at most\. [A-F, or]*\b{name}\b[A-F, or]* is wrong; which of them cannot be told \(.*{name} by ", told.Message);
            Assert.Contains("leave none out", told.Mend, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Five_millimetres_in_six_marks_are_told_though_they_name_none()
    {
        int told = 0;
        for (int seed = 1; seed <= 20; seed++)
        {
            ImmutableArray<Notice> findings = PhotoTracing.Scale(Large, InRows(seed, 4, new Vec2(5, 0))).Findings;
            Assert.DoesNotContain(findings, f => f.Code == "photo-mark-bad");
            told += findings.Length;
            Assert.Empty(PhotoTracing.Scale(Large, InRows(seed, 4, default)).Findings);
        }
        Assert.Equal(20, told);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    public void The_stated_error_grows_with_a_wrong_mark_as_the_true_one_does(int wrong)
    {
        Vec2[] edge = [.. Enumerable.Range(0, 101).Select(k => new Vec2(3 * k, Studio.Edge(3 * k)))];
        var picked = new PickedEdge([[.. edge.Select(Above.Sees)]], [], true);
        double Stated(double by, out double real)
        {
            TracedCurve curve = PhotoTracing.Curve(Large, PhotoTracing.Scale(Large, InRows(3, wrong, new Vec2(by, 0))).Scale!, picked, default);
            real = StudioTrial.TrueError([.. curve.Points.Select(p => p.Place)]);
            return curve.Error;
        }
        double honest = Stated(0, out _);
        foreach (double by in (double[])[10, 20])
        {
            double stated = Stated(by, out double real);
            Assert.InRange(real, 0, stated);
            Assert.True(stated > 2 * honest, $"{stated} against {honest}");
        }
    }

    [Fact]
    public void A_mark_that_is_known_to_be_bad_among_six_is_not_to_be_left_out()
    {
        // A ring tells which; but five would be left.
        MarkReference good = Placed(Ring[..6]);
        ImmutableArray<Notice> findings = Scale(good with { Marks = good.Marks.SetItem(0, good.Marks[0] with { Place = Ring[0] + new Vec2(30, -25) }) }).Findings;
        Assert.All(findings, f => Assert.DoesNotContain("or leave it out", f.Mend, StringComparison.Ordinal));
        Assert.NotEmpty(findings);
    }

    [Fact]
    public void A_distance_that_makes_no_triangle_is_named()
    {
        MarkReference marks = Taped([Ring[0], Ring[2], Ring[4], Ring[6]], (0, 1, -270));
        (PhotoScale? scale, ImmutableArray<Notice> findings) = Scale(marks);
        Assert.Null(scale);
        Notice told = Assert.Single(findings);
        Assert.Equal("photo-distances-apart", told.Code);
        Assert.Contains("A–B (30.0 mm)", told.Message, StringComparison.Ordinal);
        Assert.StartsWith("A–B stands in every triangle", told.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Changed_names_are_told_as_such()
    {
        // Oblong: of a square the other way round is a square too.
        Vec2[] corners = [new(0, 0), new(300, 0), new(290, 180), new(0, 200)];
        foreach (MarkReference good in (MarkReference[])[Taped(corners), Placed(corners)])
            foreach ((int a, int b) in ((int, int)[])[(0, 1), (1, 2), (0, 2)])
            {
                MarkReference changed = good with { Marks = good.Marks.SetItem(a, good.Marks[a] with { Tap = good.Marks[b].Tap }).SetItem(b, good.Marks[b] with { Tap = good.Marks[a].Tap }) };
                (PhotoScale? scale, ImmutableArray<Notice> findings) = Scale(changed);
                Assert.Null(scale);
                Notice told = Assert.Single(findings);
                Assert.Contains(told.Code, (string[])["photo-marks-shape", "photo-marks-mirrored"]);
                Assert.Contains($"{good.Marks[a].Name} and {good.Marks[b].Name}", told.Message + told.Mend, StringComparison.Ordinal);
            }
    }

    [Fact]
    public void A_curve_that_would_be_known_to_a_tenth_of_its_length_only_is_none()
    {
        // Four marks in a far corner, measured to 15 mm.
        MarkReference marks = Placed(new(0, 0), new(60, 0), new(60, 60), new(0, 60)) with { Spread = 15 };
        PhotoEdge edge = new([.. Enumerable.Range(0, 7).Select(i => new EdgeTap(Camera.Sees(new Vec2(50 * i, Studio.Edge(50 * i))), false))], null);
        PhotoTrace trace = PhotoTracing.Trace(Blank, marks, edge, default);
        Assert.Null(trace.Curve);
        Notice told = Assert.Single(trace.Findings, f => f.Severity == Severity.Error);
        Assert.Equal("photo-error-large", told.Code);
        Assert.NotNull(PhotoTracing.Trace(Blank, marks with { Spread = 0.3 }, edge, default).Curve);
    }

    [Fact]
    public void Only_sides_and_distances_are_off_one_way()
    {
        Assert.All(Scale(Placed(Ring[0], Ring[2], Ring[4], Ring[6])).Scale!.Residuals, r => Assert.False(r.OneWay));
        Assert.Equal([false, false, false, false, true, true, true, true, true, true], Scale(Taped([Ring[0], Ring[2], Ring[4], Ring[6]])).Scale!.Residuals.Select(r => r.OneWay));
    }

    [Fact]
    public void Small_errors_of_hand_name_nobody()
    {
        var draws = new NormalDraws(5);
        int named = 0;
        for (int i = 0; i < 40; i++)
        {
            MarkReference good = Placed(Ring);
            Vec2 Err(double s) => new(s * draws.Next(), s * draws.Next());
            named += Scale(good with { Marks = [.. good.Marks.Select(m => m with { Tap = m.Tap + Err(0.5), Place = m.Place + Err(HandErrors.Tape) })] }).Findings.Length;
        }
        // One in a thousand sets of good marks would.
        Assert.Equal(0, named);
    }

    public static TheoryData<string, PhotoReference> Broken => new()
    {
        { "photo-marks-few", Placed(Ring[..3]) },
        { "photo-marks-in-line", Placed(new(0, 0), new(100, 0.2), new(200, 0), new(300, 0.1)) },
        { "photo-marks-mirrored", Placed(Ring) with { Marks = [.. Placed(Ring).Marks.Select(m => m with { Place = new Vec2(-m.Place!.Value.X, m.Place.Value.Y) })] } },
        { "photo-tap-outside", Placed(Ring) with { Marks = Placed(Ring).Marks.SetItem(2, new PhotoMark("C", new Vec2(801, 20), Ring[2])) } },
        { "photo-taps-repeat", Placed(Ring) with { Marks = Placed(Ring).Marks.SetItem(2, new PhotoMark("C", Camera.Sees(Ring[1]), Ring[2])) } },
        { "photo-marks-mixed", Placed(Ring) with { Marks = Placed(Ring).Marks.SetItem(2, new PhotoMark("C", Camera.Sees(Ring[2]), null)) } },
        { "photo-distances-few", Taped([Ring[0], Ring[2], Ring[4], Ring[6]]) with { Distances = [new(0, 1, 300), new(1, 2, 310), new(2, 3, 300), new(3, 0, 310)] } },
        { "photo-distances-apart", Taped([Ring[0], Ring[2], Ring[4], Ring[6]]) with { Distances = [new(0, 1, 300), new(1, 2, 10), new(2, 0, 10), new(3, 0, 10), new(3, 1, 10)] } },
        { "photo-corners-mirrored", new SheetReference(297, 210, [new(100, 100), new(700, 100), new(700, 500), new(100, 500)], 0.2) },
        { "photo-corners-crossed", new SheetReference(297, 210, [new(100, 500), new(700, 100), new(700, 500), new(100, 100)], 0.2) },
        { "photo-marks-in-line", new SheetReference(297, 210, [new(100, 100), new(300, 101), new(700, 100), new(500, 101)], 0.2) },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_reference_that_cannot_be_is_told(string code, PhotoReference reference)
    {
        (PhotoScale? scale, ImmutableArray<Notice> findings) = Scale(reference);
        Assert.Null(scale);
        Assert.All(findings, f => Assert.Equal((code, Severity.Error), (f.Code, f.Severity)));
        Assert.NotEmpty(findings);
        Assert.All(findings, f => Assert.NotNull(f.Mend));
    }
}
