using System.Collections.Immutable;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>How the entries of a column stand.</summary>
public enum ColumnKind
{
    /// <summary>From the left.</summary>
    Left,

    /// <summary>Against the right: numbers.</summary>
    Right,

    /// <summary>Sentences, broken to what the other columns leave. The last column only.</summary>
    Words,
}

/// <summary>A column of a table.</summary>
/// <param name="Head">One line or two, parted by a line feed.</param>
/// <param name="Kind">How its entries stand.</param>
public readonly record struct TableColumn(string Head, ColumnKind Kind);

/// <summary>A table of a shop sheet as words, not yet set on a page.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Lead">What is said of all rows.</param>
/// <param name="Columns">At least one.</param>
/// <param name="Rows">As many entries each as there are columns.</param>
public sealed record ShopWords(string Title, ImmutableArray<string> Lead, ImmutableArray<TableColumn> Columns, ImmutableArray<ImmutableArray<string>> Rows)
{
    /// <summary>A table without the columns that hold nothing in any row.</summary>
    internal static ShopWords Filled(string title, ImmutableArray<string> lead, ImmutableArray<TableColumn> columns, ImmutableArray<ImmutableArray<string>> rows)
    {
        int[] kept = [.. Enumerable.Range(0, columns.Length).Where(c => rows.Any(r => r[c].Length > 0))];
        return new ShopWords(title, lead, [.. kept.Select(c => columns[c])], [.. rows.Select(r => kept.Select(c => r[c]).ToImmutableArray())]);
    }
}
