using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The tables of one piece, set in the width of a page.</summary>
internal static class PieceTables
{
    /// <summary>What is rolled, line by line; null if nothing is.</summary>
    public static SheetBlock? Rolls(PanelDevelopment panel, FormingPlan plan, LengthUnit units, double width) => Set(PieceWords.Rolls(panel, plan, units), width);

    /// <summary>The sharp bends in order; null if there are none.</summary>
    public static SheetBlock? Bends(PanelDevelopment panel, FormingPlan plan, LengthUnit units, double width) => Set(PieceWords.Bends(panel, plan, units), width);

    /// <summary>Where metal is stretched or shrunk, the worst place first; null if nowhere.</summary>
    public static SheetBlock? Stretch(FormingPlan plan, double width) => Set(PieceWords.Stretch(plan), width);

    /// <summary>What the tape must show; null if there is nothing to hold it to.</summary>
    public static SheetBlock? Tapes(FormingPlan plan, LengthUnit units, double width) => Set(PieceWords.Tapes(plan, units), width);

    /// <summary>What the piece takes, and how it lies to the grain.</summary>
    public static SheetBlock Blank(PanelDevelopment panel, FormingPlan plan, Job job, double width) => SheetBlock.Facts("Blank", width, 17, PieceWords.Blank(panel, plan, job));

    /// <summary>How far the edges may be off; null where no reading has an error.</summary>
    public static SheetBlock? Errors(PanelDevelopment panel, LengthUnit units, double width) =>
        PieceWords.Errors(panel, units) is { IsEmpty: false } rows ? SheetBlock.Facts("How far its edges may be off", width, 17, rows) : null;

    private static SheetBlock? Set(ShopWords? words, double width) => words is null ? null : ShopTable.Of(words, width);
}
