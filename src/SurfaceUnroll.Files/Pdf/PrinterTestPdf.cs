using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Writes the page that a printer is measured by.</summary>
public static class PrinterTestPdf
{
    /// <summary>The file.</summary>
    /// <param name="paper">With room for the page.</param>
    public static byte[] Write(PaperSpec paper) => PdfPages.Write([PrinterTestPage.On(paper).Draw(paper)], "Printer test");
}
