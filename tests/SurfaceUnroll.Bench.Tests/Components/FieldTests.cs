using SurfaceUnroll.Bench.Fields;
using SurfaceUnroll.Files.JobFiles;

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
}
