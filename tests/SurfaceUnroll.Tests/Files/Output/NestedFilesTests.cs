using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Tests.Files.Dxf;
using SurfaceUnroll.Tests.Files.Pdf;

namespace SurfaceUnroll.Tests.Files.Output;

public class NestedFilesTests
{
    // The starter's cover twice, one to a sheet.
    private static readonly Lazy<Development> TwoSheets = new(() => Develop("\"stock\": { \"size\": [560, 420], \"count\": 1 }"));

    [Fact]
    public void Each_sheet_has_its_files_and_all_have_one_picture() => Assert.Equal(
        ["nested-1.dxf", "nested-1.svg", "nested-2.dxf", "nested-2.svg", "nesting.svg", "shop-sheet.pdf", "report.json"],
        PatternFiles.Of(TwoSheets.Value).Select(f => f.Name).Where(n => !n.StartsWith("cover", StringComparison.Ordinal) && !n.StartsWith("other", StringComparison.Ordinal)));

    [Fact]
    public void Without_stock_there_are_none()
    {
        Development bare = Developer.Develop(JobFile.Read(StarterJob.Text).Job!);
        Assert.Null(bare.Nest);
        Assert.DoesNotContain(PatternFiles.Of(bare), f => f.Name.StartsWith("nest", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_stroke_and_word_of_a_piece_stands_on_its_sheet_and_the_rim_is_a_note()
    {
        Development development = TwoSheets.Value;
        ImmutableArray<Drawing> drawings = [.. development.Panels.Select(p => PatternDrawing.Of(p, development.Job, development.Joints))];
        NestedSheet sheet = development.Nest!.Sheets[0];
        NestPlacement placement = Assert.Single(sheet.Placements);
        Drawing piece = drawings[placement.Panel], nested = NestDrawing.Of(sheet, drawings, "");
        Assert.Equal((Role.Note, true), (nested.Strokes[0].Role, nested.Strokes[0].Closed));
        Assert.Equal(new Box(Vec2.Zero, new Vec2(560, 420)), nested.Bounds);
        Assert.Equal(piece.Strokes.Length + 1, nested.Strokes.Length);
        foreach ((Stroke from, Stroke to) in piece.Strokes.Zip(nested.Strokes.Skip(1)))
        {
            Assert.Equal(from, to with { Points = from.Points });
            Assert.Equal(from.Points.Select(placement.Place), to.Points);
        }
        Assert.Equal(piece.Letterings.Length, nested.Letterings.Length);
        foreach ((Lettering from, Lettering to) in piece.Letterings.Zip(nested.Letterings))
        {
            Assert.Equal(from.Text, to.Text);
            // Words on their heads are turned back in the same room.
            Assert.True((placement.Place(TextOutline.Of(from).Bounds.Centre) - TextOutline.Of(to).Bounds.Centre).Length < 1e-6, from.Text);
        }
    }

    [SkippableFact]
    public void Ezdxf_finds_nothing_and_the_cut_lies_in_the_sheet()
    {
        DxfReader.Reading read = DxfReader.Read(PatternFiles.Of(TwoSheets.Value).Single(f => f.Name == "nested-2.dxf").Content.ToArray());
        Assert.Empty(read.Findings);
        // Cut lines are within 0.02 mm.
        DxfReader.Entity cut = Assert.Single(read.Entities, e => e.Layer == "CUT");
        Assert.All(cut.Points, p => Assert.True(p[0] is >= 4.97 and <= 555.03 && p[1] is >= 4.97 and <= 415.03));
    }

    [Fact]
    public void The_report_lays_the_pieces_where_they_are_drawn()
    {
        Development development = TwoSheets.Value;
        using JsonDocument report = JsonDocument.Parse(PatternFiles.Of(development).Single(f => f.Name == "report.json").Content.ToArray());
        JsonElement nest = report.RootElement.GetProperty("nest");
        Assert.Equal((1, 2), (nest.GetProperty("stock")[0].GetProperty("have").GetInt32(), nest.GetProperty("stock")[0].GetProperty("count").GetInt32()));
        foreach ((NestedSheet sheet, JsonElement json) in development.Nest!.Sheets.Zip(nest.GetProperty("sheets").EnumerateArray()))
        {
            Assert.Equal(sheet.Use, json.GetProperty("use").GetDouble(), 1e-12);
            NestPlacement placement = Assert.Single(sheet.Placements);
            JsonElement piece = Assert.Single(json.GetProperty("pieces").EnumerateArray());
            Assert.Equal(development.Panels[placement.Panel].Spec.Name, piece.GetProperty("name").GetString());
            Assert.Equal(placement.Turn * 180 / Math.PI, piece.GetProperty("turnDeg").GetDouble(), 1e-6);
            Assert.Equal(placement.Move.X, piece.GetProperty("move")[0].GetDouble(), 1e-6);
            Assert.Equal(placement.Move.Y, piece.GetProperty("move")[1].GetDouble(), 1e-6);
        }
    }

    [Fact]
    public void The_picture_names_the_pieces_their_sizes_and_the_use()
    {
        string picture = Encoding.UTF8.GetString(PatternFiles.Of(TwoSheets.Value).Single(f => f.Name == "nesting.svg").Content.ToArray());
        foreach (string words in new[] { "Nested on 2 sheets of 560 × 420 mm, ", ">Sheet 2: 560 × 420 mm, ", " % used", ">cover<", ">other<", ">grain<" }) Assert.Contains(words, picture, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheets_that_are_too_few_or_too_small_are_told()
    {
        Assert.Contains("take 2 sheets of 560 mm × 420 mm, and there is 1", Assert.Single(TwoSheets.Value.Notices, n => n.Code == "stock-too-few").Message, StringComparison.Ordinal);
        Development small = Develop("\"stock\": [ { \"size\": [300, 200] }, { \"size\": [400, 100] } ]");
        Assert.Equal(["“other”", "“cover”"], small.Notices.Where(n => n.Code == "stock-too-small").Select(n => n.Message.Split(' ')[0]));
        Assert.All(small.Notices.Where(n => n.Code == "stock-too-small"), n => Assert.Contains("however it is turned", n.Message, StringComparison.Ordinal));
        Assert.Empty(small.Nest!.Sheets);
        // The sheet for the wall speaks of the picture only where there is one.
        Assert.DoesNotContain("nesting.svg", WallWords(small), StringComparison.Ordinal);
        Assert.Contains("nesting.svg", WallWords(TwoSheets.Value), StringComparison.Ordinal);
        Assert.DoesNotContain(PatternFiles.Of(small), f => f.Name.StartsWith("nest", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Nesting", false)]
    [InlineData("nested 12", false)]
    [InlineData("nested", true)]
    [InlineData("nested 1 b", true)]
    public void No_panel_has_the_name_of_a_nested_sheet(string name, bool may) =>
        Assert.Equal(may, JobFile.Read(StarterJob.Text.Replace("\"name\": \"cover\"", $"\"name\": \"{name}\"", StringComparison.Ordinal)).Job is not null);

    private static string WallWords(Development development) => string.Join(" ", PdfSheets.Read(ShopSheetPdf.Write(development)!).SelectMany(p => p.Words).Select(w => w.Text));

    private static Development Develop(string keys) => Developer.Develop(JobFile.Read(StarterJob.Text
        .Replace("\"paper\"", keys + ", \"paper\"", StringComparison.Ordinal)
        .Replace("\"panels\": [", "\"panels\": [ { \"name\": \"other\", \"loft\": [\"front\", \"rear\"] },", StringComparison.Ordinal)).Job!);
}
