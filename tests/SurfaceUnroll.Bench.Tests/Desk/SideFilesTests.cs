using System.Text;
using SurfaceUnroll.Bench.Desk;

namespace SurfaceUnroll.Bench.Tests.Desk;

public sealed class SideFilesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private SideFiles Drawings => new(_folder.Path, [".dxf", ".svg"]);

    [Theory]
    [InlineData("Front hoop.DXF", "front-hoop.dxf")]
    [InlineData("../../secret.dxf", "secret.dxf")]
    [InlineData("C:\\drawings\\Größe 2.svg", "größe-2.svg")]
    [InlineData("..dxf", "file.dxf")]
    public void File_is_put_beside_the_job_under_a_plain_name(string sent, string kept)
    {
        Assert.Equal((kept, null), Drawings.Keep(sent, "0"u8.ToArray()));
        Assert.Equal("0", File.ReadAllText(Path.Combine(_folder.Path, kept)));
        Assert.Single(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void Same_file_is_kept_once_and_another_of_its_name_stays()
    {
        byte[] one = Encoding.UTF8.GetBytes("one"), two = Encoding.UTF8.GetBytes("two");
        Assert.Equal("hoop.dxf", Drawings.Keep("hoop.dxf", one).Name);
        Assert.Equal("hoop.dxf", Drawings.Keep("hoop.dxf", one).Name);
        Assert.Equal("hoop-2.dxf", Drawings.Keep("hoop.dxf", two).Name);
        Assert.Equal("one", File.ReadAllText(Path.Combine(_folder.Path, "hoop.dxf")));
        Assert.Equal<string>(["hoop-2.dxf", "hoop.dxf"], Drawings.Names);
    }

    [Theory]
    [InlineData("job.json", 3)]
    [InlineData("hoop", 3)]
    [InlineData("hoop.dxf", 0)]
    public void What_is_no_such_file_is_refused_with_the_reason(string name, int size)
    {
        (string? kept, string? problem) = Drawings.Keep(name, new byte[size]);
        Assert.Null(kept);
        Assert.Contains(name, problem, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }
}
