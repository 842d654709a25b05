namespace SurfaceUnroll.Bench.Tests;

/// <summary>Waits for what comes by itself.</summary>
internal static class Waiting
{
    /// <summary>Waits until a condition holds; fails if it does not within a minute, a limit for a test that would otherwise hang. Nothing is measured by it.</summary>
    public static async Task Until(Func<bool> holds)
    {
        for (int i = 0; i < 3000 && !holds(); i++) await Task.Delay(20);
        Assert.True(holds());
    }
}
