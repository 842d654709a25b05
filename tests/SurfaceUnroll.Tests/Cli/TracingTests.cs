using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Cli;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Tests.Photos;

namespace SurfaceUnroll.Tests.Cli;

public sealed class TracingTests : IDisposable
{
    private static readonly StudioTrial Trial = new(4, 800);

    // Tapped once: a hand taps no place alike twice.
    private static readonly string[] Corners = [.. Trial.Sheet().Corners.Select(Pixel)], Edge = [.. Trial.Edge().Taps.Select(t => Pixel(t.At))];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private static string Pixel(Vec2 p) => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.0},{p.Y:0.0}");

    private string[] Sheet(params string[] more) =>
        ["trace", _folder.At("photo.jpg"), "--sheet", "A4", "--corners", .. Corners, "--edge", .. Edge, "--out", _folder.At("front.csv"), .. more];

    private void Photo() => _folder.Write("photo.jpg", Trial.Jpeg);

    [Fact]
    public void A_photo_with_a_sheet_becomes_a_curve_that_a_job_reads()
    {
        Photo();
        InProcess.Result result = InProcess.Run(Sheet("--picture", _folder.At("look.png")));
        Assert.Equal(("", ExitStatus.Done), (result.Error, result.Status));
        foreach (string word in (string[])["corner 4", "top side", "297 by 210 mm", "Lens bow", "straight from end to end", "Stated error", "\"file\": \"front.csv\", \"fileUnits\": \"mm\", \"error\": \"0."]) Assert.Contains(word, result.Out, StringComparison.Ordinal);
        JobReading job = JobFile.Read(
            """{ "units": "mm", "curves": { "front": { "file": "front.csv", "fileUnits": "mm", "error": "0.06 mm" }, "rear": { "chord": 200, "rise": 90 } }, "panels": [ { "name": "a", "loft": ["front", "rear"] } ] }""",
            name => File.ReadAllBytes(_folder.At(name)));
        Assert.Empty(job.Faults);
        SpaceCurve curve = MeasuredCurve.Build(job.Job!.Curves[0].Spec, "curves.front").Curve!;
        Assert.Equal(0, curve.Start.Point.Y + curve.End.Point.Y, 1e-6);
        Assert.Equal(0, curve.Start.Point.Z, 1e-6);
        ImmutableArray<Vec2> points = [.. curve.Pieces.Select(p => p.At(0).Point).Append(curve.End.Point).Select(p => new Vec2(p.Y, p.Z))];
        Assert.InRange(StudioTrial.TrueError(points), 0, 0.3);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], File.ReadAllBytes(_folder.At("look.png"))[..4]);
    }

    [Fact]
    public void A_sheet_of_another_shape_is_refused_and_nothing_is_written()
    {
        Photo();
        string[] words = Sheet();
        words[Array.IndexOf(words, "A4")] = "210 x 297";
        InProcess.Result result = InProcess.Run(words);
        Assert.Equal((ExitStatus.CannotUse, ""), (result.Status, result.Out));
        Assert.Contains("times as wide as high", result.Error, StringComparison.Ordinal);
        Assert.Contains("“297 x 210”", result.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(_folder.At("front.csv")));
    }

    [Fact]
    public void Table_of_marks_is_not_written_over()
    {
        Photo();
        string marks = _folder.Write("marks.csv", "1, 10, 10\n");
        InProcess.Result result = InProcess.Run(["trace", _folder.At("photo.jpg"), "--marks", marks, "--edge", .. Edge, "--out", marks]);
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("overwrite the table of marks", result.Error, StringComparison.Ordinal);
        Assert.Equal("1, 10, 10\n", File.ReadAllText(marks));
    }

    [Fact]
    public void The_same_photo_gives_the_same_bytes_and_the_stated_error_in_its_first_row()
    {
        Photo();
        InProcess.Run(Sheet());
        byte[] first = File.ReadAllBytes(_folder.At("front.csv"));
        InProcess.Run(Sheet());
        Assert.Equal(first, File.ReadAllBytes(_folder.At("front.csv")));
        Assert.Matches(@"^# Traced on photo\.jpg by A4; in mm, true within 0\.\d+ mm in 95 of 100 photos\nacross,up\n-?\d", File.ReadAllText(_folder.At("front.csv")));
    }

    [Fact]
    public void Marks_with_distances_by_tape_do_as_well_and_inches_are_written_as_such()
    {
        Photo();
        MarkReference taped = Trial.Taped();
        string marks = _folder.Write("marks.csv", string.Join('\n',
            taped.Marks.Select(m => $"{m.Name}, {Pixel(m.Tap)}").Concat(taped.Distances.Select(d => string.Create(CultureInfo.InvariantCulture, $"{taped.Marks[d.From].Name}, {taped.Marks[d.To].Name}, {d.Length / 25.4:0.000}")))));
        InProcess.Result result = InProcess.Run(["trace", _folder.At("photo.jpg"), "--marks", marks, "--units", "in", "--level", "--edge", .. Edge, "--out", _folder.At("front.csv")]);
        Assert.Equal(("", ExitStatus.Done), (result.Error, result.Status));
        Assert.Contains("not known from this reference", result.Out, StringComparison.Ordinal);
        Assert.Contains("1–2", result.Out, StringComparison.Ordinal);
        Assert.Contains("\"fileUnits\": \"in\"", result.Out, StringComparison.Ordinal);
        double[][] rows = [.. File.ReadAllLines(_folder.At("front.csv")).Skip(2).Select(r => r.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray())];
        Assert.Equal(300 / 25.4, rows[^1][0] - rows[0][0], 0.05);
        Assert.Equal(0, rows[^1][1], 1e-4);
    }

    [Fact]
    public void Every_fault_is_told_and_nothing_is_written()
    {
        Photo();
        InProcess.Result result = InProcess.Run("trace", _folder.At("photo.jpg"), "--sheet", "A4", "--corners", "1,2", "3,4", "five", "--edge", "1,2", "--follow", "everything", "--out", _folder.At("front.dxf"));
        Assert.Equal((ExitStatus.CannotUse, ""), (result.Status, result.Out));
        foreach (string word in (string[])["“five” is no place in the photo", "only one", "“everything” is not a word", "as a table of points", "4 faults; nothing was written."]) Assert.Contains(word, result.Error, StringComparison.Ordinal);
        Assert.Single(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Theory]
    [InlineData("absent.jpg --sheet A4 --corners 1,9 9,9 9,1 1,1 --edge 1,1 2,2 --out a.csv", "There is no such file.")]
    [InlineData("text.jpg --sheet A4 --corners 1,9 9,9 9,1 1,1 --edge 1,1 2,2 --out a.csv", "neither JPEG nor PNG")]
    [InlineData("photo.jpg --edge 1,1 2,2 --out a.csv", "What is measured by is not named.")]
    [InlineData("photo.jpg --sheet A4 --marks m.csv --edge 1,1 2,2 --out a.csv", "measured by one of them")]
    [InlineData("photo.jpg --sheet A4 --corners 90,500 700,500 700,90 --edge 1,1 2,2 --out a.csv", "four corners; 3 are given")]
    [InlineData("photo.jpg --sheet A4 --corners 90,90 700,90 700,500 90,500 --edge 100,100 200,200 --out a.csv", "go round with the clock")]
    [InlineData("photo.jpg --sheet A4 --corners 90,500 700,500 700,90 90,90 --edge 100,100 900,200 --out a.csv", "lies outside the photo, which is 800 by 600")]
    [InlineData("photo.jpg --sheet A4 --corners 90,500 700,500 700,90 90,90 --edge 100,100 200,200 --tape wide --out a.csv", "“wide” does not say how well")]
    [InlineData("photo.jpg --sheet A4 --corners 90,500 700,500 700,90 90,90 --edge 100,100 200,200 --tape 500 --out a.csv", "that can be 0.01 to 20 mm")]
    [InlineData("photo.jpg --sheet A4 --corners 90,500 700,500 700,90 90,90 --edge 100,100 200,200", "is not named")]
    [InlineData("photo.jpg --marks absent.csv --edge 1,1 2,2 --out a.csv", "There is no such file.")]
    public void A_wrong_command_line_ends_with_2_and_writes_nothing(string line, string expected)
    {
        Photo();
        _folder.Write("text.jpg", "hello");
        string[] words = [.. line.Split(' ').Select(w => w.EndsWith(".jpg", StringComparison.Ordinal) || w.EndsWith(".csv", StringComparison.Ordinal) ? _folder.At(w) : w)];
        InProcess.Result result = InProcess.Run(["trace", .. words]);
        Assert.Equal((ExitStatus.CannotUse, ""), (result.Status, result.Out));
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        Assert.Contains("mend: ", result.Error, StringComparison.Ordinal);
        Assert.Equal(2, Directory.EnumerateFileSystemEntries(_folder.Path).Count());
    }
}
