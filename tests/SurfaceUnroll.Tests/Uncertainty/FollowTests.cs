using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Uncertainty;

/// <summary>Jobs that are being changed: what errors do is taken over until it is worked out.</summary>
public class FollowTests
{
    private static Job Cover(double length, double? error = 0.4, string name = "cover") => ErrorJobs.Job(
        [("front", Arch(0, error)), ("rear", Arch(length, error))], new PanelSpec(name, ["front", "rear"], ElementMatching.BendOnly) { AutoTrim = error is not null });

    private static ChordSpec Arch(double x, double? error) => new(240 - 0.1 * x, 120 - 0.05 * x, Placement.None with { Origin = new Vec3(x, 0, 0) }) { Errors = error is { } e ? ErrorJobs.All(e) : ReadingErrors.None };

    [Fact]
    public void Bands_of_before_stand_at_the_same_shares_of_the_edges_as_they_now_are()
    {
        Development last = Developer.Develop(Cover(300)), followed = Developer.Follow(Cover(330), last);
        Assert.False(last.ErrorsAwaited);
        Assert.True(followed.ErrorsAwaited);
        BlankError before = last.Panels[0].Error!, now = followed.Panels[0].Error!;
        Assert.Equal(before.Readings, now.Readings);
        Assert.Equal(before.Edges.Select(e => e.Name), now.Edges.Select(e => e.Name));
        foreach ((EdgeError old, EdgeError own) in before.Edges.Zip(now.Edges))
        {
            Assert.Equal(old.Places[0].Band, own.Places[0].Band, 1e-12);
            Assert.Equal(old.Places[^1].Band, own.Places[^1].Band, 1e-12);
            Assert.Equal(old.Largest, own.Largest, 0.02 * old.Largest);
            Assert.Equal(followed.Panels[0].FindEdge(own.Name)!.FlatLength, own.Places[^1].At, 1e-6);
            Assert.Equal(own.Places[^1].At, own.Leave[^1].To);
        }
        // The blank itself is that of the job as it now stands, with the old trim.
        Assert.Equal(Developer.Develop(Cover(330)).Panels[0].FlatArea, followed.Panels[0].FlatArea, 1e-6);
        Assert.Equal(last.Panels[0].Allowances.Select(a => a.Edge), followed.Panels[0].Allowances.Select(a => a.Edge));
    }

    [Fact]
    public void Nothing_known_yet_leaves_nothing_on_and_refuses_nothing()
    {
        Development followed = Developer.Follow(Cover(300), null);
        Assert.False(followed.Failed);
        Assert.True(followed.ErrorsAwaited);
        Assert.Equal(0, followed.Panels[0].Error!.Largest);
        Assert.Empty(followed.Panels[0].Error!.Readings);
        Assert.Empty(followed.Panels[0].Allowances);
    }

    [Fact]
    public void A_panel_with_a_new_name_waits_for_its_bands()
    {
        Development followed = Developer.Follow(Cover(300, name: "hood"), Developer.Develop(Cover(300)));
        Assert.False(followed.Failed);
        Assert.Equal(0, followed.Panels[0].Error!.Largest);
    }

    [Fact]
    public void Without_errors_nothing_is_taken_over()
    {
        Development followed = Developer.Follow(Cover(300, null), Developer.Develop(Cover(300)));
        Assert.False(followed.ErrorsAwaited);
        Assert.Null(followed.Panels[0].Error);
    }

    [Fact]
    public void What_was_said_of_errors_and_of_finished_pieces_stands()
    {
        // An arc over more than half a circle, its errors so large that it cannot follow them in proportion.
        Job Flat(double chord) => ErrorJobs.Job([("rim", new ChordSpec(chord, 50, Placement.None) { Errors = ErrorJobs.All(12) })], ErrorJobs.Plate("rim")) with
        {
            Built = [new BuiltSpec("plate", [new BuiltReading("built.edge", BuiltKind.Edge, "rim", "", 290)], 0.5)],
        };
        Development last = Developer.Develop(Flat(60)), followed = Developer.Follow(Flat(61), last);
        string[] codes = [.. last.Notices.Select(n => n.Code).Where(c => c.StartsWith("error-", StringComparison.Ordinal) || c.StartsWith("built-", StringComparison.Ordinal))];
        Assert.Contains("error-not-linear", codes);
        Assert.Contains("built-beyond", codes);
        Assert.Equal(codes, followed.Notices.Select(n => n.Code).Where(c => c.StartsWith("error-", StringComparison.Ordinal) || c.StartsWith("built-", StringComparison.Ordinal)));
        Assert.Equal(last.Built, followed.Built);
    }
}
