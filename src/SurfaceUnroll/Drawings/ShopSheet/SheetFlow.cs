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

    // How often a block was parted.
    private int parted;

    /// <summary>Begins the first page.</summary>
    /// <param name="paper">Size and margins; upright unless it says level.</param>
    /// <param name="heading">What stands at the head of a page: whether it goes on from another, and the width.</param>
    public SheetFlow(PaperSpec paper, Func<bool, double, SheetRow> heading)
    {
        var sheet = PrintSheet.ForWall(paper);
        (width, height, area) = (sheet.Width, sheet.Height, sheet.Area.Grow(-SheetSizes.Inset));
        this.heading = heading;
        Begin(goesOn: false);
    }

    /// <summary>mm.</summary>
    public double Width => area.Width;

    /// <summary>Width of each of two columns, mm.</summary>
    public double Half => 0.5 * (area.Width - SheetSizes.Gutter);

    /// <summary>All pages.</summary>
    public ImmutableArray<Page> Pages => [.. pages, Page.Of(width, height, parts)];

    /// <summary>All stands on one page.</summary>
    public bool IsWhole => pages.Count == 0 && parted == 0;

    /// <summary>Takes fewer pages, or parts fewer blocks.</summary>
    public bool IsShorterThan(SheetFlow other) => pages.Count < other.pages.Count || (pages.Count == other.pages.Count && parted < other.parted);

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
                parted++;
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
        int first = Enumerable.Range(0, blocks.Count + 1).MinBy(k => Tallest(blocks, k));
        if (Tallest(blocks, first) > Room && (pages.Count > 0 || blocks.Max(b => b.Begun(false).Sum(r => r.Height) + b.Rows.Max(r => r.Height)) > Room)) Turn();
        if (Tallest(blocks, first) <= Room)
        {
            double top = y, left = Column(blocks.Take(first), area.Min.X);
            y = top;
            y = Math.Min(left, Column(blocks.Skip(first), area.Min.X + Half + SheetSizes.Gutter));
        }
        else OneAfterTheOther(blocks);
    }

    /// <summary>Two columns of blocks, each of which goes on overleaf by itself.</summary>
    /// <param name="left">Blocks of one width.</param>
    /// <param name="right">Blocks of another.</param>
    /// <param name="x">Where the right column begins, from the left of the left one, mm.</param>
    public void AddBeside(IReadOnlyList<SheetBlock> left, IReadOnlyList<SheetBlock> right, double x)
    {
        List<List<SheetRow>> first = Poured(left), second = Poured(right);
        for (int i = 0; i < Math.Max(first.Count, second.Count); i++)
        {
            if (i > 0) Turn();
            double top = y, lowest = top;
            foreach ((List<List<SheetRow>> column, double from) in new[] { (first, 0), (second, x) })
            {
                y = top;
                foreach (SheetRow row in i < column.Count ? column[i] : []) Put(row, area.Min.X + from);
                lowest = Math.Min(lowest, y);
            }
            y = lowest;
        }
    }

    // What of a column stands on this page and on each after it.
    private List<List<SheetRow>> Poured(IReadOnlyList<SheetBlock> blocks)
    {
        double whole = area.Height - heading(true, area.Width).Height, room = Room;
        List<List<SheetRow>> poured = [[]];
        foreach (SheetBlock block in blocks)
        {
            Need(block.Begun(false).Concat(block.Rows.Take(block.Rows.Length > 2 * FewRows ? FewRows : block.Rows.Length)).Sum(r => r.Height));
            foreach (SheetRow row in block.Begun(false)) Take(row);
            foreach (SheetRow row in block.Rows)
            {
                if (Need(row.Height))
                {
                    parted++;
                    foreach (SheetRow again in block.Begun(true)) Take(again);
                }
                Take(row);
            }
            Take(new SheetRow(SheetSizes.Break, []));
        }
        return poured;

        bool Need(double mm)
        {
            if (mm <= room || poured[^1].Count == 0 && poured.Count > 1) return false;
            poured.Add([]);
            room = whole;
            return true;
        }

        void Take(SheetRow row)
        {
            poured[^1].Add(row);
            room -= row.Height;
        }
    }

    private static double Tallest(IReadOnlyList<SheetBlock> blocks, int first) =>
        Math.Max(blocks.Take(first).Sum(b => b.Height + SheetSizes.Break), blocks.Skip(first).Sum(b => b.Height + SheetSizes.Break));

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
                {
                    parted++;
                    foreach (SheetRow again in block.Begun(true)) Put(again, x);
                }
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
