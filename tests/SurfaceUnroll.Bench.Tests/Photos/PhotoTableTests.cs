using SurfaceUnroll.Bench.Stops.Measuring.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Photos;

namespace SurfaceUnroll.Bench.Tests.Photos;

public sealed class PhotoTableTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_photo_is_read_once_and_again_when_it_changes()
    {
        string job = _folder.Write("cover.json", "{}"), path = _folder.Write("hood.jpg", Studio.Jpeg(new byte[100 * 80], 100, 80, 90));
        var table = new PhotoTable();
        var first = table.Read(job, "hood.jpg");
        Assert.Equal(100, first.Photo!.Width);
        Assert.Same(first, table.Read(job, "hood.jpg"));
        File.WriteAllBytes(path, Studio.Jpeg(new byte[90 * 70], 90, 70, 90));
        File.SetLastWriteTimeUtc(path, DateTime.UtcNow.AddMinutes(1));
        Assert.Equal(90, table.Read(job, "hood.jpg").Photo!.Width);
    }

    [Fact]
    public void Nothing_but_photos_beside_the_job_is_opened()
    {
        string folder = Directory.CreateDirectory(_folder.At("jobs")).FullName, job = Path.Combine(folder, "cover.json");
        File.WriteAllText(job, "{}");
        _folder.Write("outside.jpg", Studio.Jpeg(new byte[100 * 80], 100, 80, 90));
        foreach (string name in (string[])["../outside.jpg", "cover.json", "absent.jpg", "", _folder.At("outside.jpg")])
        {
            Assert.Null(PhotoTable.Shown(job, name));
            Assert.NotNull(new PhotoTable().Read(job, name).Fault);
        }
    }

    [Fact]
    public void What_was_tapped_is_kept_for_each_curve()
    {
        var table = new PhotoTable();
        table.Keep("cover.json", "curves.front", "hood.jpg", new PhotoSitting().Tapped(new Vec2(3, 4)));
        Assert.Equal([new Vec2(3, 4)], table.Sitting("cover.json", "curves.front", "hood.jpg").Reference.AsEnumerable());
        Assert.Empty(table.Sitting("cover.json", "curves.rear", "hood.jpg").Reference);
    }
}
