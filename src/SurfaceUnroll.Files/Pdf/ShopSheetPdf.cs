using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Drawings.ShopSheet;
using SurfaceUnroll.Files.Preview;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>The sheet for the wall of the shop: a page for the whole job, then one for each piece.</summary>
public static class ShopSheetPdf
{
    /// <summary>The PDF; null if of no piece it is known how it is formed.</summary>
    public static byte[]? Write(Development development)
    {
        ImmutableArray<Page> pages = Pages(development);
        return pages.IsEmpty ? null : PdfPages.Write(pages, $"Shop sheet – {development.Job.Name}");
    }

    /// <summary>Its pages.</summary>
    public static ImmutableArray<Page> Pages(Development development)
    {
        if (development.Panels.All(p => p.Plan is null)) return [];
        return
        [
            .. JobSheet.Of(development, FormedViews.Of(development)),
            .. development.Panels.Where(p => p.Plan is not null).SelectMany(p => PieceSheet.Of(p, development.Job, development.Joints, FormedViews.Of(p))),
        ];
    }
}
