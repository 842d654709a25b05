using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace SurfaceUnroll.Bench.Tests.Browser;

/// <summary>A page against axe-core's rules for WCAG 2.0 to 2.2, A and AA (Deque axe-core, run in the page itself: its binding for Playwright opens another page for each run).</summary>
internal static class Accessibility
{
    private const string Rules = """{ "type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }""";

    private const string Contrast = """{ "type": "rule", "values": ["color-contrast"] }""";

    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <summary>Findings of any weight.</summary>
    /// <param name="page">The page.</param>
    /// <param name="contrast">Of contrast alone: the same elements in other colours.</param>
    public static async Task<string[]> FindingsAsync(IPage page, bool contrast = false)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window")) await page.EvaluateAsync(Script);
        return await page.EvaluateAsync<string[]>($$"""
            async () => (await axe.run(document, { runOnly: {{(contrast ? Contrast : Rules)}}, resultTypes: ['violations'] })).violations
              .map(v => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map(n => n.html).join(' | ')}`)
            """);
    }
}
