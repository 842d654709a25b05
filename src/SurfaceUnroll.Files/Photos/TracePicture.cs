using System.Collections.Immutable;
using SkiaSharp;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Files.Photos;

/// <summary>Draws what was traced over the photo, as a PNG to look at.</summary>
public static class TracePicture
{
    // Pixels of the longer side: a screenful.
    private const int Longest = 1600;

    // Of the names of marks, and how far beside their rings they stand, pixels.
    private const float LetterSize = 20, Beside = 11;

    // The program's own typeface, for a machine may have none.
    private static readonly Lazy<SKTypeface> Letters = new(() => SKTypeface.FromStream(new MemoryStream(InterFont.Instance.File)));

    private static readonly SKColor Traced = new(0xE6, 0x00, 0x5C), Marked = new(0x00, 0x6C, 0xE0);

    /// <summary>The picture.</summary>
    /// <param name="photo">Photo.</param>
    /// <param name="curve">What was traced on it.</param>
    /// <param name="reference">On what.</param>
    public static byte[] Write(GreyPhoto photo, TracedCurve curve, PhotoReference reference)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(reference);
        double share = Math.Min(1, (double)Longest / Math.Max(photo.Width, photo.Height));
        int width = Math.Max(1, (int)Math.Round(photo.Width * share)), height = Math.Max(1, (int)Math.Round(photo.Height * share));
        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        Span<byte> pixels = bitmap.GetPixelSpan();
        for (int y = 0, k = 0; y < height; y++)
            for (int x = 0; x < width; x++)
            {
                byte grey = Grey(photo, (x + 0.5) / share, (y + 0.5) / share);
                (pixels[k], pixels[k + 1], pixels[k + 2], pixels[k + 3]) = (grey, grey, grey, 255);
                k += 4;
            }
        using var canvas = new SKCanvas(bitmap);
        using var line = new SKPaint { Color = Traced, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 2 };
        using var mark = new SKPaint { Color = Marked, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 2 };
        SKPoint At(Vec2 q) => new((float)(q.X * share), (float)(q.Y * share));
        canvas.DrawPoints(SKPointMode.Polygon, [.. curve.Line.Select(At)], line);
        foreach (Vec2 tap in reference.Taps) canvas.DrawCircle(At(tap), 7, mark);
        Name(canvas, [.. reference.Taps.Select(At)], reference is MarkReference marks ? [.. marks.Marks.Select(m => m.Name)] : ["1", "2", "3", "4"], width, height);
        if (reference is SheetReference sheet)
        {
            ImmutableArray<Vec2> corners = [new(0, 0), new(sheet.Width, 0), new(sheet.Width, sheet.Height), new(0, sheet.Height)];
            // Sides are drawn in parts, for the lens bows them.
            canvas.DrawPoints(SKPointMode.Polygon, [.. Enumerable.Range(0, 81).Select(i => At(curve.Scale.Camera.ToPhoto(Vec2.Lerp(corners[i / 20 % 4], corners[(i / 20 + 1) % 4], i % 20 / 20.0))))], mark);
        }
        canvas.Flush();
        using SKData png = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    // Beside each ring, on the side away from the middle of all, with a light rim so that it is read on any ground.
    private static void Name(SKCanvas canvas, SKPoint[] rings, string[] names, int width, int height)
    {
        using var font = new SKFont(Letters.Value, LetterSize);
        using var letter = new SKPaint { Color = Marked, IsAntialias = true };
        using var rim = new SKPaint { Color = SKColors.White, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 4 };
        float centre = rings.Average(r => r.X);
        for (int i = 0; i < rings.Length; i++)
        {
            string name = InterFont.Instance.Printable(names[i]);
            float wide = font.MeasureText(name), x = rings[i].X < centre ? rings[i].X - Beside - wide : rings[i].X + Beside;
            x = Math.Clamp(x, 2, Math.Max(2, width - wide - 2));
            float y = Math.Clamp(rings[i].Y - Beside, LetterSize, height - 4);
            canvas.DrawText(name, x, y, SKTextAlign.Left, font, rim);
            canvas.DrawText(name, x, y, SKTextAlign.Left, font, letter);
        }
    }

    // Back to how bright it looks: about the square root.
    private static byte Grey(GreyPhoto photo, double x, double y) => (byte)Math.Round(255 * Math.Pow(Math.Clamp(photo.At(x, y) / 65535, 0, 1), 1 / 2.2));
}
