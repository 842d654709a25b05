using System.Buffers.Binary;
using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace SurfaceUnroll.Tests.Files;

/// <summary>A grey picture, row by row from the top, 0 black to 255 white. Pixels are squares; the first one reaches from 0 to 1 both ways.</summary>
internal sealed record GreyPicture(int Width, int Height, byte[] Pixels)
{
    /// <summary>As pdftoppm writes it: P5, width, height, 255, then a byte a pixel.</summary>
    public static GreyPicture OfPgm(byte[] file)
    {
        int at = 0;
        string Word()
        {
            while (char.IsWhiteSpace((char)file[at])) at++;
            int from = at;
            while (!char.IsWhiteSpace((char)file[at])) at++;
            return Encoding.ASCII.GetString(file, from, at - from);
        }
        Assert.Equal("P5", Word());
        int width = int.Parse(Word(), CultureInfo.InvariantCulture), height = int.Parse(Word(), CultureInfo.InvariantCulture);
        Assert.Equal("255", Word());
        return new GreyPicture(width, height, file[(at + 1)..]);
    }

    /// <summary>As rsvg-convert writes it: eight bits of red, green, blue and perhaps alpha, not interlaced. Red stands for all.</summary>
    /// <remarks>Portable Network Graphics, ISO/IEC 15948:2004, sections 9 (filters) and 11 (chunks).</remarks>
    public static GreyPicture OfPng(byte[] file)
    {
        using var packed = new MemoryStream();
        int width = 0, height = 0, bytes = 0;
        for (int at = 8; at < file.Length;)
        {
            int length = BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(at));
            ReadOnlySpan<byte> body = file.AsSpan(at + 8, length);
            switch (Encoding.ASCII.GetString(file, at + 4, 4))
            {
                case "IHDR":
                    (width, height) = (BinaryPrimitives.ReadInt32BigEndian(body), BinaryPrimitives.ReadInt32BigEndian(body[4..]));
                    bytes = body[9] switch { 2 => 3, 6 => 4, _ => 0 };
                    Assert.True(body[8] == 8 && bytes > 0 && body[12] == 0, "another kind of PNG");
                    break;
                case "IDAT":
                    packed.Write(body);
                    break;
            }
            at += length + 12;
        }
        packed.Position = 0;
        using var unpacked = new ZLibStream(packed, CompressionMode.Decompress);
        byte[] pixels = new byte[width * height], row = new byte[width * bytes], above = new byte[width * bytes];
        for (int y = 0; y < height; y++)
        {
            int filter = unpacked.ReadByte();
            unpacked.ReadExactly(row);
            Unfilter(filter, row, above, bytes);
            for (int x = 0; x < width; x++) pixels[y * width + x] = row[x * bytes];
            (row, above) = (above, row);
        }
        return new GreyPicture(width, height, pixels);
    }

    /// <summary>0 white to 1 black; white outside.</summary>
    public double Ink(double x, double y) => Pixel((int)Math.Floor(x), (int)Math.Floor(y));

    /// <summary>The same between the middles of pixels in proportion.</summary>
    public double SmoothInk(double x, double y)
    {
        (int column, int row) = ((int)Math.Floor(x - 0.5), (int)Math.Floor(y - 0.5));
        (double u, double v) = (x - 0.5 - column, y - 0.5 - row);
        return (1 - v) * ((1 - u) * Pixel(column, row) + u * Pixel(column + 1, row)) + v * ((1 - u) * Pixel(column, row + 1) + u * Pixel(column + 1, row + 1));
    }

    private double Pixel(int column, int row) => column < 0 || row < 0 || column >= Width || row >= Height ? 0 : 1 - Pixels[row * Width + column] / 255.0;

    private static void Unfilter(int filter, byte[] row, byte[] above, int bytes)
    {
        for (int i = 0; i < row.Length; i++)
        {
            int left = i >= bytes ? row[i - bytes] : 0, up = above[i], corner = i >= bytes ? above[i - bytes] : 0;
            row[i] += (byte)(filter switch { 0 => 0, 1 => left, 2 => up, 3 => (left + up) / 2, 4 => Nearest(left, up, corner), _ => throw new InvalidDataException("no such filter") });
        }
    }

    private static int Nearest(int left, int up, int corner)
    {
        int guess = left + up - corner, a = Math.Abs(guess - left), b = Math.Abs(guess - up), c = Math.Abs(guess - corner);
        return a <= b && a <= c ? left : b <= c ? up : corner;
    }
}
