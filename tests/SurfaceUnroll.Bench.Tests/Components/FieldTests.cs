using SurfaceUnroll.Bench.Fields;
using SurfaceUnroll.Bench.Stops.Measuring;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Tests.Components;

public sealed class FieldTests : IDisposable
{
    private readonly DeskContext _context = new(StarterJob.Text);

    public void Dispose() => _context.Dispose();

    [Fact]
    public async Task What_is_typed_is_in_the_text_and_its_fault_at_the_field()
    {
        var field = _context.Render<LengthField>(p => p.Add(f => f.Path, "sheet.thickness").Add(f => f.Label, "Thickness"));
        Assert.Equal("0.9", field.Find("input").GetAttribute("value"));
        field.Find("input").Input("thin");
        Assert.Equal("thin", _context.Desk.State.Text.Shown("sheet.thickness"));
        await _context.LookedAsync();
        field = _context.Render<LengthField>(p => p.Add(f => f.Path, "sheet.thickness").Add(f => f.Label, "Thickness"));
        Assert.Equal("true", field.Find("input").GetAttribute("aria-invalid"));
        Assert.NotEmpty(field.Find($"#{field.Find("input").GetAttribute("aria-describedby")}").TextContent);
    }

    [Fact]
    public void Length_of_another_unit_is_told_in_that_of_the_job()
    {
        var field = _context.Render<LengthField>(p => p.Add(f => f.Path, "sheet.thickness").Add(f => f.Label, "Thickness"));
        field.Find("input").Input("1/8 in");
        field.Render();
        // 25.4 mm an inch by definition.
        Assert.Contains("3.2 mm", field.Find(".same").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Emptied_optional_field_is_taken_out_of_the_job()
    {
        var field = _context.Render<TextField>(p => p.Add(f => f.Path, "measured").Add(f => f.Label, "Face").Add(f => f.Optional, true));
        field.Find("input").Input(" ");
        Assert.Null(_context.Desk.State.Text.Find("measured"));
    }

    // The third of a point may be its own error.
    [Fact]
    public void Point_with_an_error_of_its_own_is_no_corner_and_can_become_one()
    {
        _context.Desk.Apply(JobEdit.Set("curves.rear.points[2]", "[95, 210, { \"error\": 2 }]"));
        var table = _context.Render<PointTable>(p => p.Add(t => t.List, new PointList(_context.Desk.State.Text, "curves.rear.points", ["across", "up"])).Add(t => t.Caption, "Points").Add(t => t.Corners, true));
        Assert.DoesNotContain(table.FindAll("input[type=checkbox]"), box => box.HasAttribute("checked"));
        table.FindAll("input[type=checkbox]")[2].Change(true);
        Assert.Equal("[95, 210, \"corner\", { \"error\": 2 }]", _context.Desk.State.Text.Written("curves.rear.points[2]"));
    }
}
