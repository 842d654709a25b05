using SkiaSharp;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Tests.Photos;

/// <summary>A pinhole camera before a flat scene: written from the geometry, with nothing of what is tested.</summary>
/// <param name="Width">Pixels.</param>
/// <param name="Height">Pixels.</param>
/// <param name="Focal">Pixels.</param>
/// <param name="Across">Of the scene's across axis, in the axes of the camera (right, down, forward).</param>
/// <param name="Up">Of its up axis.</param>
/// <param name="Start">Of its origin, mm.</param>
/// <param name="Principal">Where the lens looks, pixels.</param>
/// <param name="Bow">Share by which the corner of the photo is moved outwards.</param>
internal sealed record StudioCamera(int Width, int Height, double Focal, Vec3 Across, Vec3 Up, Vec3 Start, Vec2 Principal, double Bow)
{
    private double HalfDiagonal => 0.5 * Math.Sqrt((double)Width * Width + (double)Height * Height);

    public Vec2 Sees(Vec2 p)
    {
        Vec3 at = Start + p.X * Across + p.Y * Up;
        Vec2 straight = (Focal / at.Z) * new Vec2(at.X, at.Y);
        double r = straight.Length / HalfDiagonal;
        return Principal + (1 + Bow * r * r) * straight;
    }

    /// <summary>Where the ray through a pixel meets the scene, mm.</summary>
    public Vec2 Meets(Vec2 pixel)
    {
        Vec2 bent = pixel - Principal;
        double far = bent.Length / HalfDiagonal, r = far;
        for (int i = 0; i < 9; i++) r = far / (1 + Bow * r * r);
        Vec2 straight = (far > 0 ? r / far / Focal : 1 / Focal) * bent;
        Vec3 normal = Across.Cross(Up), ray = new(straight.X, straight.Y, 1);
        Vec3 hit = (Start.Dot(normal) / ray.Dot(normal)) * ray - Start;
        return new Vec2(hit.Dot(Across), hit.Dot(Up));
    }

    /// <summary>A camera that has a box of the scene just in its picture.</summary>
    /// <param name="scene">mm.</param>
    /// <param name="width">Pixels.</param>
    /// <param name="height">Pixels.</param>
    /// <param name="tilt">Radians away from square above the scene.</param>
    /// <param name="towards">Direction of the scene that it leans to, radians.</param>
    /// <param name="roll">Turn of the picture, radians.</param>
    /// <param name="bow">Of the lens.</param>
    /// <param name="astray">From the middle of the photo to where the lens looks, pixels.</param>
    public static StudioCamera Over(Box scene, int width, int height, double tilt, double towards, double roll, double bow, Vec2 astray)
    {
        // The camera's axes in those of the scene (across, up, towards the camera), square above it: right, down, forward.
        Vec3 axis = new(Math.Cos(towards), Math.Sin(towards), 0);
        Vec3 Turn(Vec3 v) => Rodrigues(Rodrigues(v, new Vec3(0, 0, 1), roll), axis, tilt);
        Vec3 right = Turn(new Vec3(1, 0, 0)), down = Turn(new Vec3(0, -1, 0)), forward = Turn(new Vec3(0, 0, -1));
        var across = new Vec3(right.X, down.X, forward.X);
        var up = new Vec3(right.Y, down.Y, forward.Y);
        double focal = 0.75 * width;
        var principal = new Vec2(0.5 * width + astray.X, 0.5 * height + astray.Y);
        StudioCamera At(double distance)
        {
            return new StudioCamera(width, height, focal, across, up, new Vec3(0, 0, distance) - scene.Centre.X * across - scene.Centre.Y * up, principal, bow);
        }
        (double near, double far) = (100, 20_000);
        for (int i = 0; i < 40; i++)
        {
            double middle = 0.5 * (near + far);
            StudioCamera own = At(middle);
            bool holds = Corners(scene).All(c => (own.Start + c.X * across + c.Y * up).Z > 10 && own.Sees(c) is var q && q.X > 0 && q.Y > 0 && q.X < width && q.Y < height);
            if (holds) far = middle; else near = middle;
        }
        return At(far);
    }

    private static Vec2[] Corners(Box box) => [box.Min, new(box.Max.X, box.Min.Y), box.Max, new(box.Min.X, box.Max.Y)];

    private static Vec3 Rodrigues(Vec3 v, Vec3 axis, double angle) =>
        Math.Cos(angle) * v + Math.Sin(angle) * axis.Cross(v) + ((1 - Math.Cos(angle)) * axis.Dot(v)) * axis;
}

/// <summary>The scene: a sheet of paper and beside it a part, 300 mm long, whose upper edge is a known curve.</summary>
internal static class Studio
{
    public const double SheetWidth = 297, SheetHeight = 210;

    public static readonly Box Scene = new(new Vec2(-22, -22), new Vec2(322, 332));

    private const double Ground = 0.10, Paper = 0.80, Part = 0.55, PartBottom = 226;

    // Spread of the lens's blur, pixels.
    private const double Blur = 0.8;

    // Steps of light from nought to white, and room for grain below and above.
    private const int Steps = 4096, Room = 2048;

    private static readonly double[] Grain = Draw(1 << 16);

    private static readonly byte[] Looks = [.. Enumerable.Range(-Room, Steps + 2 * Room).Select(i => Look(Math.Clamp(i / (Steps - 1.0), 0, 1)))];

    /// <summary>Height of the true edge over a place across, mm: an arch that leans.</summary>
    public static double Edge(double x) => 242 + 64 * Math.Sin(Math.PI * x / 300) * (1 + 0.25 * Math.Cos(Math.PI * x / 300));

    public static double Slope(double x)
    {
        double a = Math.PI / 300, s = Math.Sin(a * x), c = Math.Cos(a * x);
        return 64 * a * (c * (1 + 0.25 * c) - 0.25 * s * s);
    }

    /// <summary>The photo as a camera stores it, one byte a pixel of how bright it looks, blurred by the lens.</summary>
    /// <param name="camera">Camera.</param>
    /// <param name="seed">Of the grain.</param>
    /// <param name="size">True size of the sheet, mm.</param>
    /// <param name="grain">Spread of the light that a pixel takes.</param>
    public static byte[] Pixels(StudioCamera camera, int seed, Vec2 size, double grain)
    {
        (int w, int h) = (camera.Width, camera.Height);
        byte[] pixels = new byte[w * h];
        var random = new Random(seed);
        int[] grains = [.. Grain.Select(g => Room + (int)Math.Round((Steps - 1) * grain * g))];
        const int tile = 8;
        Vec2[] Row(int y) => [.. Enumerable.Range(0, w / tile + 2).Select(i => camera.Meets(new Vec2(i * tile, y)))];
        Vec2[] below = Row(0);
        for (int y0 = 0; y0 < h; y0 += tile)
        {
            (Vec2[] above, below) = (below, Row(y0 + tile));
            for (int x0 = 0; x0 < w; x0 += tile)
            {
                (Vec2 a, Vec2 b, Vec2 c, Vec2 d) = (above[x0 / tile], above[x0 / tile + 1], below[x0 / tile], below[x0 / tile + 1]);
                double pixel = Math.Sqrt(Math.Abs((b - a).Cross(c - a))) / tile, reach = 1.9 * tile * pixel;
                bool flat = Math.Abs(Sheet(a, size)) > reach && Math.Abs(Plate(a)) > reach;
                double even = flat ? Light(a, pixel, size) : 0;
                int noise = random.Next(Grain.Length);
                // The lamp stands to the left.
                double lamp = (Steps - 1) * (1.1 - 0.25 * x0 / w);
                int step = (int)(lamp * even);
                for (int y = y0; y < Math.Min(h, y0 + tile); y++)
                    for (int x = x0; x < Math.Min(w, x0 + tile); x++)
                    {
                        if (!flat)
                        {
                            double u = (x + 0.5 - x0) / tile, v = (y + 0.5 - y0) / tile;
                            step = (int)(lamp * Light((1 - v) * ((1 - u) * a + u * b) + v * ((1 - u) * c + u * d), pixel, size));
                        }
                        pixels[y * w + x] = Looks[step + grains[noise++ & 0xFFFF]];
                    }
            }
        }
        return pixels;
    }

    public static byte[] Jpeg(byte[] pixels, int width, int height, int quality) => Encoded(pixels, width, height, SKEncodedImageFormat.Jpeg, quality);

    public static byte[] Png(byte[] pixels, int width, int height) => Encoded(pixels, width, height, SKEncodedImageFormat.Png, 100);

    private static byte[] Encoded(byte[] pixels, int width, int height, SKEncodedImageFormat format, int quality)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Gray8, SKAlphaType.Opaque));
        Span<byte> to = bitmap.GetPixelSpan();
        for (int y = 0; y < height; y++) pixels.AsSpan(y * width, width).CopyTo(to[(y * bitmap.RowBytes)..]);
        using SKData data = bitmap.Encode(format, quality);
        return data.ToArray();
    }

    private static double Light(Vec2 p, double pixel, Vec2 size)
    {
        double light = Ground;
        light += (Paper - light) * Cover(Sheet(p, size) / pixel);
        light += (Part - light) * Cover(Plate(p) / pixel);
        return light;
    }

    // Share of a blurred pixel on the inner side of an edge: the normal distribution, in Waissi & Rossin's sigmoid (1996), to 5e-5.
    private static double Cover(double pixels)
    {
        double z = pixels / Blur;
        return z > 5 ? 1 : z < -5 ? 0 : 1 / (1 + Math.Exp(-Math.Sqrt(Math.PI) * z * (0.9 + z * z * (0.0418198 - 0.0004406 * z * z))));
    }

    // mm inside the sheet, < 0 outside.
    private static double Sheet(Vec2 p, Vec2 size) => Math.Min(Math.Min(p.X, size.X - p.X), Math.Min(p.Y, size.Y - p.Y));

    private static double Plate(Vec2 p)
    {
        double slope = Slope(p.X);
        return Math.Min(Math.Min(p.X + 8, 308 - p.X), Math.Min(p.Y - PartBottom, (Edge(p.X) - p.Y) / Math.Sqrt(1 + slope * slope)));
    }

    private static byte Look(double light) => (byte)Math.Round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * Math.Pow(light, 1 / 2.4) - 0.055));

    private static double[] Draw(int count)
    {
        var draws = new NormalDraws(99);
        return [.. Enumerable.Range(0, count).Select(_ => draws.Next())];
    }
}
