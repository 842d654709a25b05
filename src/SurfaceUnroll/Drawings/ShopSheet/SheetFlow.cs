using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>Sets strips below one another on as many pages as they take.</summary>
internal sealed class SheetFlow
{
    // A table is begun on a page that has room for its head and so many rows, or for all of it.
    private const int FewRows = 3;

    private readonly double width, height;
    private readonly Func<bool, double, SheetRow> heading;
    private readonly Box area;
    private readonly List<PagePart> parts = [];
    private readonly ImmutableArray<Page>.Builder pages = ImmutableArray.CreateBuilder<Page>();
    private double y;

    /// <summary>Begins the first page.</summary>
    /// <param name="paper">Size and margin; upright unless it says level.</param>
    /// <param name="heading">What stands at the head of a page: whether it goes on from another, and the width.</param>
    public SheetFlow(PaperSpec paper, Func<bool, double, SheetRow> heading)
    {
        bool level = paper.Orientation == PaperOrientation.Landscape;
        (width, height) = level ? (paper.Size.Height, paper.Size.Width) : (paper.Size.Width, paper.Size.Height);
        double inset = paper.Margin + SheetSizes.Inset;
        area = new Box(new Vec2(inset, inset), new Vec2(width - inset, height - inset));
        this.heading = heading;
        Begin(goesOn: false);
    }

    /// <summary>mm.</summary>
    public double Width => area.Width;

    /// <summary>Width of each of two columns, mm.</summary>
    public double Half => 0.5 * (area.Width - SheetSizes.Gutter);

    /// <summary>All pages.</summary>
    public ImmutableArray<Page> Pages => [.. pages, Page.Of(width, height, parts)];

    private double Room => y - area.Min.Y;

    /// <summary>A strip over the whole width.</summary>
    public void Add(SheetRow row)
    {
        if (row.Height > Room) Turn();
        Put(row, area.Min.X);
        y -= SheetSizes.Break;
    }

    /// <summary>A block over the whole width.</summary>
    public void Add(SheetBlock block)
    {
        if (block.Begun(false).Concat(block.Rows.Take(block.Rows.Length > 2 * FewRows ? FewRows : block.Rows.Length)).Sum(r => r.Height) > Room) Turn();
        foreach (SheetRow row in block.Begun(false)) Put(row, area.Min.X);
        foreach (SheetRow row in block.Rows)
        {
            if (row.Height > Room)
            {
                Turn();
                foreach (SheetRow again in block.Begun(true)) Put(again, area.Min.X);
            }
            Put(row, area.Min.X);
        }
        y -= SheetSizes.Break;
    }

    /// <summary>Blocks of half the width, in two columns: parted where the columns come out most alike, or one after the other where they do not fit so.</summary>
    public void AddInColumns(IReadOnlyList<SheetBlock> blocks)
    {
        if (blocks.Count == 0) return;
        int parted = Enumerable.Range(0, blocks.Count + 1).MinBy(k => Tallest(blocks, k));
        if (Tallest(blocks, parted) > Room && (pages.Count > 0 || blocks.Max(b => b.Begun(false).Sum(r => r.Height) + b.Rows.Max(r => r.Height)) > Room)) Turn();
        if (Tallest(blocks, parted) <= Room)
        {
            double top = y, left = Column(blocks.Take(parted), area.Min.X);
            y = top;
            y = Math.Min(left, Column(blocks.Skip(parted), area.Min.X + Half + SheetSizes.Gutter));
        }
        else OneAfterTheOther(blocks);
    }

    private static double Tallest(IReadOnlyList<SheetBlock> blocks, int parted) =>
        Math.Max(blocks.Take(parted).Sum(b => b.Height + SheetSizes.Break), blocks.Skip(parted).Sum(b => b.Height + SheetSizes.Break));

    private double Column(IEnumerable<SheetBlock> blocks, double x)
    {
        foreach (SheetBlock block in blocks)
        {
            foreach (SheetRow row in block.Begun(false).Concat(block.Rows)) Put(row, x);
            y -= SheetSizes.Break;
        }
        return y;
    }

    private void OneAfterTheOther(IReadOnlyList<SheetBlock> blocks)
    {
        (double top, double x, double lowest) = (y, area.Min.X, y);
        foreach (SheetBlock block in blocks)
        {
            Need(block.Begun(false).Sum(r => r.Height) + block.Rows[0].Height);
            foreach (SheetRow row in block.Begun(false)) Put(row, x);
            foreach (SheetRow row in block.Rows)
            {
                if (Need(row.Height))
                    foreach (SheetRow again in block.Begun(true)) Put(again, x);
                Put(row, x);
            }
            y -= SheetSizes.Break;
        }
        y = Math.Min(lowest, y);

        // To the next column, or overleaf, where there is no room.
        bool Need(double mm)
        {
            if (mm <= Room) return false;
            lowest = Math.Min(lowest, y);
            if (x > area.Min.X)
            {
                Turn();
                (top, x, lowest) = (y, area.Min.X, y);
            }
            else (x, y) = (area.Min.X + Half + SheetSizes.Gutter, top);
            return true;
        }
    }

    private void Turn()
    {
        pages.Add(Page.Of(width, height, parts));
        parts.Clear();
        Begin(goesOn: true);
    }

    private void Begin(bool goesOn)
    {
        y = area.Max.Y;
        Put(heading(goesOn, area.Width), area.Min.X);
    }

    private void Put(SheetRow row, double x)
    {
        parts.AddRange(row.At(new Vec2(x, y)));
        y -= row.Height;
    }
}
