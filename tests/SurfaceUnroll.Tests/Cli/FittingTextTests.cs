using System.Text;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Cli;

public sealed class FittingTextTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _job;

    public FittingTextTests() => _job = _folder.Write("job.json", "{}");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Panels_list_openings_allowances_and_bends()
    {
        string text = Run("check", FittedSamples.Cover());
        foreach (string row in new[] { "Opening, lamp", "Openings, row", "6 × Ø 5.5", "Allowance, rear", "Bend 1, lip rear", "DOWN 85–95°, inside R 0.9, allowance 2.04, deduction 1.56 mm, K 0.440 (table: mild steel, R/t 1)" })
            Assert.Contains(row, text, StringComparison.Ordinal);
        Assert.Contains("11, numbered from the front", Run("check", FittedSamples.Bent()), StringComparison.Ordinal);
    }

    [Fact]
    public void Joints_follow_the_panels()
    {
        string text = Run("check", FittedSamples.Cover());
        int joint = text.IndexOf("Joint A  Cover/rear – Front plate/arch  lip 12 mm on Cover", StringComparison.Ordinal);
        Assert.True(joint > text.IndexOf("Bend 1", StringComparison.Ordinal));
        foreach (string row in new[] { "471.2 mm and 472.7 mm, difference 1.50 mm", "DOES NOT FIT: largest gap 0.80 mm, 143 mm along Cover/rear", "85–95°", "stretches 3.4 %, 1 notch" })
            Assert.Contains(row, text[joint..], StringComparison.Ordinal);
        Assert.Matches(@"Match marks +9\n", text[joint..]);
    }

    [Fact]
    public void Cautions_speak_of_what_the_job_asks_for_and_each_once()
    {
        string plain = Run("develop", Samples.HalfCylinder()), cover = Run("develop", FittedSamples.Cover());
        foreach (string caution in new[] { "pinch", "Deburr every hole", "watch for fire", "licensed practice", "On a road vehicle" })
        {
            Assert.DoesNotContain(caution, plain, StringComparison.Ordinal);
            Assert.Equal(2, cover.Split(caution).Length);
        }
    }

    private string Run(string command, Development development) =>
        InProcess.Run(InProcess.Giving(development, new OutputFile("report.json", Encoding.UTF8.GetBytes("{}"))), command, _job).Out;
}
