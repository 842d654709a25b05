using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Digest of what a document shows.</summary>
internal static class PageDigest
{
    /// <summary>32 bytes that differ wherever the pages or the title differ.</summary>
    public static byte[] Of(IReadOnlyList<Page> pages, string title)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(hash, title);
        foreach (Page page in pages)
        {
            Add(hash, page.Width, page.Height, page.Fills.Length, page.Lines.Length, page.Texts.Length);
            foreach (PageFill fill in page.Fills)
            {
                Add(hash, fill.Grey);
                Add(hash, fill.Points);
                if (fill.Colour is { } colour) Add(hash, colour.Red, colour.Green, colour.Blue);
                foreach (ImmutableArray<Vec2> loop in fill.More) Add(hash, loop);
            }
            foreach (PageLine line in page.Lines)
            {
                Add(hash, (int)line.Pen, line.Closed ? 1 : 0);
                Add(hash, line.Points);
            }
            foreach (PageText text in page.Texts)
            {
                Add(hash, text.Text);
                Add(hash, text.At.X, text.At.Y, text.Height, text.Angle, (int)text.Anchor, text.Halo ? 1 : 0);
            }
        }
        return hash.GetHashAndReset();
    }

    private static void Add(IncrementalHash hash, ImmutableArray<Vec2> points)
    {
        Add(hash, points.Length);
        hash.AppendData(MemoryMarshal.AsBytes(points.AsSpan()));
    }

    private static void Add(IncrementalHash hash, string text)
    {
        Add(hash, text.Length);
        hash.AppendData(Encoding.UTF8.GetBytes(text));
    }

    private static void Add(IncrementalHash hash, params ReadOnlySpan<double> numbers) => hash.AppendData(MemoryMarshal.AsBytes(numbers));
}
