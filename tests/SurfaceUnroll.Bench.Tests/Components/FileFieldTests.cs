using System.Collections.Immutable;
using Microsoft.AspNetCore.Components.Forms;
using SurfaceUnroll.Bench.Fields;
using SurfaceUnroll.Bench.Stops.Measuring;
using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Bench.Tests.Components;

public sealed class FileFieldTests : IDisposable
{
    private readonly DeskContext _context = new(StarterJob.Text);

    public void Dispose() => _context.Dispose();

    private IRenderedComponent<FileField> Field() =>
        _context.Render<FileField>(p => p.Add(f => f.Path, "curves.rear.file").Add(f => f.Label, "Drawing").Add(f => f.Endings, ImmutableArray.Create(".csv", ".dxf")));

    [Fact]
    public void File_that_is_brought_lies_beside_the_job_and_is_named_in_it()
    {
        var field = Field();
        field.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText("0,0\n1,1\n", "My Hoop.csv"));
        field.WaitForAssertion(() => Assert.Equal("my-hoop.csv", _context.Desk.State.Text.Shown("curves.rear.file")));
        Assert.Equal("0,0\n1,1\n", File.ReadAllText(Path.Combine(Path.GetDirectoryName(_context.Desk.Path)!, "my-hoop.csv")));
        Assert.NotNull(field.Find("datalist option[value='my-hoop.csv']"));
    }

    [Fact]
    public void File_of_another_kind_is_refused_at_the_field()
    {
        var field = Field();
        field.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText("{}", "job.json"));
        field.WaitForAssertion(() => Assert.Contains(".csv or .dxf", field.Find(".fault").TextContent, StringComparison.Ordinal));
        Assert.Null(_context.Desk.State.Text.Find("curves.rear.file"));
    }

    [Fact]
    public async Task Curve_of_a_file_is_drawn_once_it_is_read()
    {
        using var context = new DeskContext(StarterJob.Text);
        File.WriteAllText(Path.Combine(Path.GetDirectoryName(context.Desk.Path)!, "rib.csv"), "0,0\n50,40\n100,0\n");
        context.Desk.Apply(SurfaceUnroll.Files.JobTexts.JobEdit.Set("curves.rib", "{ \"file\": \"rib.csv\" }"));
        ImmutableArray<MeasuredShape> before = MeasuredShape.All(context.Desk.State, []);
        Assert.True(before.Single(s => s.Name == "rib").Waits);
        await context.LookedAsync();
        MeasuredShape shape = MeasuredShape.All(context.Desk.State, before).Single(s => s.Name == "rib");
        Assert.False(shape.Waits);
        Assert.Equal((0.0, 100.0), (shape.Own[0][0].Y, shape.Own[^1][^1].Y));
    }
}
