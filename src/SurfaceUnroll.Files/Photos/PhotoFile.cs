using System.Globalization;
using System.Runtime.InteropServices;
using SkiaSharp;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Files.Photos;

/// <summary>What came of reading a photo: it, or the reason why not.</summary>
/// <param name="Photo">Upright, as its EXIF turn says.</param>
/// <param name="Fault">Null where there is a photo.</param>
public sealed record PhotoReading(GreyPhoto? Photo, Notice? Fault);

/// <summary>Reads photos: JPEG and PNG, turned upright.</summary>
public static class PhotoFile
{
    /// <summary>Most bytes of a file.</summary>
    public const long LargestFile = 64 << 20;

    /// <summary>Most pixels, in millions: what phones take; more would need gigabytes to work with.</summary>
    public const int MostMegapixels = 64;

    /// <summary>Fewest pixels each way.</summary>
    public const int FewestPixels = 64;

    private static readonly int[] Red = Lights(0.2126), Green = Lights(0.7152), Blue = Lights(0.0722);

    // Pixels of the longer side of a photo for the screen, and the quality of its JPEG.
    private const int LongestShown = 3000, ShownQuality = 88;

    /// <summary>Reads a photo.</summary>
    /// <param name="bytes">The file.</param>
    public static PhotoReading Read(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        (SKBitmap? bitmap, SKEncodedOrigin origin, Notice? fault) = Decoded(bytes);
        using SKBitmap? own = bitmap;
        return new PhotoReading(own is null ? null : Upright(own.GetPixelSpan(), own.Width, own.Height, origin), fault);
    }

    /// <summary>The photo upright and no larger than a screen can use, as a JPEG; null where it cannot be read.</summary>
    /// <param name="bytes">The file.</param>
    public static byte[]? Shown(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        (SKBitmap? bitmap, SKEncodedOrigin origin, _) = Decoded(bytes);
        using SKBitmap? own = bitmap;
        if (own is null) return null;
        float share = Math.Min(1, (float)LongestShown / Math.Max(own.Width, own.Height)), w = own.Width * share, h = own.Height * share;
        // What the turns of EXIF 2.32, tag 274, make of (x, y).
        SKMatrix turn = origin switch
        {
            SKEncodedOrigin.TopRight => new SKMatrix(-share, 0, w, 0, share, 0, 0, 0, 1),
            SKEncodedOrigin.BottomRight => new SKMatrix(-share, 0, w, 0, -share, h, 0, 0, 1),
            SKEncodedOrigin.BottomLeft => new SKMatrix(share, 0, 0, 0, -share, h, 0, 0, 1),
            SKEncodedOrigin.LeftTop => new SKMatrix(0, share, 0, share, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightTop => new SKMatrix(0, -share, h, share, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightBottom => new SKMatrix(0, -share, h, -share, 0, w, 0, 0, 1),
            SKEncodedOrigin.LeftBottom => new SKMatrix(0, share, 0, -share, 0, w, 0, 0, 1),
            _ => SKMatrix.CreateScale(share, share),
        };
        (float across, float up) = turn.ScaleX == 0 ? (h, w) : (w, h);
        using var shown = new SKBitmap(new SKImageInfo(Math.Max(1, (int)Math.Round(across)), Math.Max(1, (int)Math.Round(up)), SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(shown);
        canvas.Clear(SKColors.White);
        canvas.SetMatrix(turn);
        using SKImage image = SKImage.FromBitmap(own);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        canvas.Flush();
        using SKData jpeg = shown.Encode(SKEncodedImageFormat.Jpeg, ShownQuality);
        return jpeg.ToArray();
    }

    // The pixels as they are stored, and which way is up.
    private static (SKBitmap? Bitmap, SKEncodedOrigin Origin, Notice? Fault) Decoded(byte[] bytes)
    {
        if (bytes.LongLength > LargestFile) return Refused("photo-too-large", string.Create(CultureInfo.InvariantCulture, $"The photo has more than {LargestFile >> 20} MB."), "Save it as a JPEG.");
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null || codec.EncodedFormat is not (SKEncodedImageFormat.Jpeg or SKEncodedImageFormat.Png))
            return Refused("photo-not-a-photo", "This is no photo that can be read: neither JPEG nor PNG.", "Save it as a JPEG. Phones that write HEIC can be set to write JPEG (“most compatible”).");
        (int width, int height) = (codec.Info.Width, codec.Info.Height);
        if ((long)width * height > MostMegapixels * 1_000_000L)
            return Refused("photo-too-large", string.Create(CultureInfo.InvariantCulture, $"The photo has {width} by {height} pixels, more than {MostMegapixels} million."), "Save it smaller: twelve million are enough.");
        if (Math.Min(width, height) < FewestPixels)
            return Refused("photo-too-small", string.Create(CultureInfo.InvariantCulture, $"The photo has {width} by {height} pixels: too few to measure on."), "Take the photo as the camera takes it, not a thumbnail of it.");
        var bitmap = new SKBitmap();
        var info = new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Unpremul);
        SKCodecResult? result = bitmap.TryAllocPixels(info) ? codec.GetPixels(info, bitmap.GetPixels()) : null;
        if (result == SKCodecResult.Success) return (bitmap, codec.EncodedOrigin, null);
        bitmap.Dispose();
        return result switch
        {
            null => Refused("photo-too-large", "There is not memory enough for this photo.", "Save it smaller: twelve million pixels are enough."),
            SKCodecResult.IncompleteInput => Refused("photo-broken", "The photo breaks off before its end.", "Copy it from the camera again."),
            _ => Refused("photo-broken", "The photo is damaged.", "Copy it from the camera again."),
        };
    }

    private static (SKBitmap?, SKEncodedOrigin, Notice) Refused(string code, string message, string mend) => (null, default, new Notice(code, Severity.Error, "photo", message, mend));

    // The eight turns of EXIF 2.32, tag 274, as steps through the stored pixels for a step to the right and one down.
    private static GreyPhoto Upright(ReadOnlySpan<byte> rgba, int width, int height, SKEncodedOrigin origin)
    {
        (int first, int right, int down) = origin switch
        {
            SKEncodedOrigin.TopRight => (width - 1, -1, width),
            SKEncodedOrigin.BottomRight => (width * height - 1, -1, -width),
            SKEncodedOrigin.BottomLeft => (width * (height - 1), 1, -width),
            SKEncodedOrigin.LeftTop => (0, width, 1),
            SKEncodedOrigin.RightTop => (width * (height - 1), -width, 1),
            SKEncodedOrigin.RightBottom => (width * height - 1, -width, -1),
            SKEncodedOrigin.LeftBottom => (width - 1, width, -1),
            _ => (0, 1, width),
        };
        bool lies = Math.Abs(right) == width && width > 1;
        (int across, int up) = lies ? (height, width) : (width, height);
        ushort[] light = new ushort[across * up];
        for (int y = 0, k = 0; y < up; y++)
            for (int x = 0, at = 4 * (first + y * down); x < across; x++, at += 4 * right)
            {
                int value = Red[rgba[at]] + Green[rgba[at + 1]] + Blue[rgba[at + 2]], cover = rgba[at + 3];
                // What shows through is taken for white paper.
                light[k++] = (ushort)(cover == 255 ? value : (value * cover + 65535 * (255 - cover)) / 255);
            }
        return new GreyPhoto(across, up, ImmutableCollectionsMarshal.AsImmutableArray(light));
    }

    // Pictures hold how bright a thing looks; light itself comes from the curve of IEC 61966-2-1 (sRGB), and how much each colour has of it from ITU-R BT.709.
    private static int[] Lights(double share) => [.. Enumerable.Range(0, 256).Select(i =>
    {
        double v = i / 255.0;
        return (int)Math.Floor(65535 * share * (v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4)));
    })];
}
