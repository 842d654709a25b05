using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Preview;

/// <summary>Takes points in mm with y up to the picture, y down.</summary>
/// <param name="Centre">Point in mm that comes to stand at <paramref name="Middle"/>.</param>
/// <param name="Middle">Place on the picture.</param>
/// <param name="Scale">Picture units for a mm.</param>
internal readonly record struct PictureFrame(Vec2 Centre, Vec2 Middle, double Scale)
{
    /// <summary>Place on the picture.</summary>
    public Vec2 Place(Vec2 p) => new(Middle.X + Scale * (p.X - Centre.X), Middle.Y - Scale * (p.Y - Centre.Y));
}
