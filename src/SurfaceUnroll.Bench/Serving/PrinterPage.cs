using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>The page to measure a printer by: the one that <c>page-test</c> writes.</summary>
internal static class PrinterPage
{
    /// <summary>The paper of the page: the job's size with the usual margins; A4 where that size has no room for the page.</summary>
    public static PaperSpec PaperOf(Job job)
    {
        PaperSpec sized = PaperSpec.Default with { Size = job.Paper.Size };
        return PaperRoom.Fault(sized, mm => mm.ToString(System.Globalization.CultureInfo.InvariantCulture)) is null ? sized : PaperSpec.Default;
    }

    /// <summary>The page as a PDF.</summary>
    public static byte[] Pdf(PaperSpec paper) => PrinterTestPdf.Write(paper);
}
