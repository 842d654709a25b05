using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>The printed pattern of a panel: assembly page and tiles at 1:1.</summary>
public static class PatternPdf
{
    /// <summary>The PDF of one panel.</summary>
    public static byte[] Write(PanelDevelopment panel, Job job) =>
        Write(panel, job, TileLayout.Plan(PatternDrawing.Of(panel, job, []), job.Paper), PatternPages.StrainSheet(panel, job), []);

    /// <summary>The PDF of one panel whose drawing is laid over sheets and whose strain page is at hand, with what the job's joints ask of it.</summary>
    public static byte[] Write(PanelDevelopment panel, Job job, TilePlan plan, Page? strain, ImmutableArray<JointFit> joints) =>
        PdfPages.Write(PatternPages.Of(panel, job, plan, strain, joints), plan.Drawing.Title);
}
