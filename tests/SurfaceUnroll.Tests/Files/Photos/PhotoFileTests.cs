using System.Buffers.Binary;
using System.IO.Compression;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Tests.Photos;

namespace SurfaceUnroll.Tests.Files.Photos;

public class PhotoFileTests
{
    private const int Width = 96, Height = 64;

    // Dark, with a white block near one corner as the upright photo shows it, so that every turn looks different.
    private static byte White(int x, int y) => x is >= 8 and < 40 && y is >= 8 and < 24 ? (byte)255 : (byte)20;

    /// <summary>A JPEG whose pixels are stored as a camera that is held some other way stores them, and that says so in its EXIF block (EXIF 2.32, tag 274).</summary>
    private static byte[] Turned(int orientation)
    {
        bool lies = orientation >= 5;
        (int w, int h) = lies ? (Height, Width) : (Width, Height);
        byte[] stored = new byte[w * h];
        for (int r = 0; r < h; r++)
            for (int c = 0; c < w; c++)
            {
                // The meaning of the eight values, word for word: which side of the scene row 0 and column 0 are.
                (int x, int y) = orientation switch
                {
                    1 => (c, r),                              // row 0 top, column 0 left
                    2 => (Width - 1 - c, r),                  // top, right
                    3 => (Width - 1 - c, Height - 1 - r),     // bottom, right
                    4 => (c, Height - 1 - r),                 // bottom, left
                    5 => (r, c),                              // left, top
                    6 => (Width - 1 - r, c),                  // right, top
                    7 => (Width - 1 - r, Height - 1 - c),     // right, bottom
                    _ => (r, Height - 1 - c),                 // left, bottom
                };
                stored[r * w + c] = White(x, y);
            }
        byte[] jpeg = Studio.Jpeg(stored, w, h, 95);
        byte[] exif = [0xFF, 0xE1, 0, 34, .. "Exif\0\0MM\0*"u8, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, 0, 0, 0, 0];
        return [.. jpeg[..2], .. exif, .. jpeg[2..]];
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void All_turns_of_a_camera_come_out_upright(int orientation)
    {
        GreyPhoto photo = PhotoFile.Read(Turned(orientation)).Photo!;
        Assert.Equal((Width, Height), (photo.Width, photo.Height));
        foreach ((int x, int y) in ((int, int)[])[(10, 10), (37, 10), (10, 21), (37, 21), (44, 10), (10, 28), (4, 4), (90, 60), (90, 4), (4, 60)])
            Assert.Equal(White(x, y) == 255, photo.Light[y * Width + x] > 30_000);
        // What a page shows is turned alike, and says nothing of a turn any more.
        GreyPhoto shown = PhotoFile.Read(PhotoFile.Shown(Turned(orientation))!).Photo!;
        Assert.Equal((Width, Height), (shown.Width, shown.Height));
        foreach ((int x, int y) in ((int, int)[])[(12, 12), (36, 12), (12, 20), (36, 20), (46, 12), (12, 30), (4, 4), (90, 60), (90, 4), (4, 60)])
            Assert.Equal(White(x, y) == 255, shown.Light[y * Width + x] > 30_000);
    }

    [Fact]
    public void A_large_photo_is_shown_smaller()
    {
        GreyPhoto shown = PhotoFile.Read(PhotoFile.Shown(Studio.Jpeg(new byte[4000 * 500], 4000, 500, 90))!).Photo!;
        Assert.Equal((3000, 375), (shown.Width, shown.Height));
        Assert.Null(PhotoFile.Shown("hello"u8.ToArray()));
    }

    [Fact]
    public void Light_is_taken_from_how_bright_a_pixel_looks()
    {
        byte[] pixels = [.. Enumerable.Range(0, Width * Height).Select(i => i % Width < 48 ? (byte)188 : (byte)255)];
        GreyPhoto photo = PhotoFile.Read(Studio.Png(pixels, Width, Height)).Photo!;
        // IEC 61966-2-1: what looks like 188 of 255 is half the light, 0.503.
        Assert.Equal(0.503, photo.Light[0] / 65535.0, 0.001);
        Assert.Equal(1, photo.Light[Width - 1] / 65535.0, 0.001);
        // Between the middles of pixels in proportion.
        Assert.Equal(0.5 * (photo.Light[47] + photo.Light[48]), photo.At(48, 5.5), 1e-6);
    }

    [Fact]
    public void A_file_that_is_no_photo_is_told()
    {
        foreach (byte[] bytes in (byte[][])[[], "hello"u8.ToArray(), [0xFF, 0xD8], "GIF89a\x01\0\x01\0\0\0\0;"u8.ToArray()]) Refused("photo-not-a-photo", bytes);
    }

    [Fact]
    public void A_photo_that_breaks_off_is_told()
    {
        byte[] jpeg = Studio.Jpeg([.. Enumerable.Range(0, 200 * 200).Select(i => (byte)(i * 7))], 200, 200, 90), png = Studio.Png([.. Enumerable.Range(0, 200 * 200).Select(i => (byte)(i * i))], 200, 200);
        Refused("photo-broken", jpeg[..(jpeg.Length / 2)]);
        Refused("photo-broken", png[..(png.Length / 2)]);
    }

    [Fact]
    public void Too_few_and_too_many_pixels_are_told_before_any_is_read()
    {
        Refused("photo-too-small", Studio.Png(new byte[40 * 400], 40, 400));
        Refused("photo-too-large", HugePng(20_000, 20_000));
    }

    private static void Refused(string code, byte[] bytes)
    {
        PhotoReading reading = PhotoFile.Read(bytes);
        Assert.Null(reading.Photo);
        Assert.Equal(code, reading.Fault!.Code);
        Assert.NotNull(reading.Fault.Mend);
    }

    // The head of a PNG (ISO/IEC 15948, section 11.2.2) and the beginning of its pixels: less than a hundred bytes that ask for 1.6 GB.
    private static byte[] HugePng(int width, int height)
    {
        byte[] head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        (head[8], head[9]) = (8, 6);
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true)) zlib.Write(new byte[64]);
        return [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR"u8, head), .. Chunk("IDAT"u8, packed.ToArray()), .. Chunk("IEND"u8, [])];
    }

    private static byte[] Chunk(ReadOnlySpan<byte> name, byte[] body)
    {
        byte[] chunk = new byte[12 + body.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, body.Length);
        name.CopyTo(chunk.AsSpan(4));
        body.CopyTo(chunk, 8);
        uint crc = 0xFFFFFFFF;
        foreach (byte b in chunk.AsSpan(4, 4 + body.Length))
        {
            crc ^= b;
            for (int k = 0; k < 8; k++) crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320 : crc >> 1;
        }
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8 + body.Length), ~crc);
        return chunk;
    }
}
