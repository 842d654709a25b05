using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>The printed pattern of a panel: assembly page and tiles at 1:1.</summary>
public static class PatternPdf
{
    /// <summary>The PDF of one panel.</summary>
    public static byte[] Write(PanelDevelopment panel, Job job) =>
        PdfPages.Write(PatternPages.Of(panel, job), $"{panel.Spec.Name} – {job.Name}");
}
