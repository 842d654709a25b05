using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Drawings.ShopSheet;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Files.Preview;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Drawings.ShopSheet;

public partial class ShopSheetTests
{
    private static Development Cover(LengthUnit units = LengthUnit.Millimetre, PaperSize? size = null, double margin = 10, PaperOrientation way = PaperOrientation.Fewest)
    {
        Development cover = PlannedSamples.Cover;
        return cover with { Job = cover.Job with { Units = units, Paper = new PaperSpec(size ?? PaperSize.A4, margin, 10, way) } };
    }

    private static IEnumerable<string> Words(IEnumerable<Page> pages) => pages.SelectMany(p => p.Texts).Select(t => t.Text);

    public static TheoryData<LengthUnit, string, double, PaperOrientation> Papers => new()
    {
        { LengthUnit.Millimetre, "A4", 10, PaperOrientation.Fewest },
        { LengthUnit.Millimetre, "A4", 20, PaperOrientation.Landscape },
        { LengthUnit.Millimetre, "A3", 10, PaperOrientation.Portrait },
        { LengthUnit.Inch, "A4", 10, PaperOrientation.Fewest },
        { LengthUnit.Inch, "Letter", 12.7, PaperOrientation.Fewest },
    };

    [Theory]
    [MemberData(nameof(Papers))]
    public void All_that_is_drawn_lies_within_the_margins_is_grey_and_can_be_read_at_arms_length(LengthUnit units, string paper, double margin, PaperOrientation way)
    {
        PaperSize size = paper switch { "A4" => PaperSize.A4, "Letter" => PaperSize.Letter, _ => new PaperSize("A3", 297, 420) };
        ImmutableArray<Page> pages = ShopSheetPdf.Pages(Cover(units, size, margin, way));
        Assert.True(pages.Length >= 1 + PlannedSamples.Cover.Panels.Length);
        foreach (Page page in pages)
        {
            Assert.Equal(way == PaperOrientation.Landscape ? (size.Height, size.Width) : (size.Width, size.Height), (page.Width, page.Height));
            // Half of the widest line may lie beyond its middle.
            var area = new Box(new Vec2(margin, margin) - new Vec2(0.35, 0.35), new Vec2(page.Width - margin + 0.35, page.Height - margin + 0.35));
            Assert.All(page.Texts, t => Assert.True(TextOutline.Of(t).Corners.All(area.Contains), t.Text));
            Assert.All(page.Lines.SelectMany(l => l.Points), p => Assert.True(area.Contains(p)));
            Assert.All(page.Fills.SelectMany(f => f.Points.Concat(f.More.SelectMany(l => l))), p => Assert.True(area.Contains(p)));
            Assert.All(page.Texts, t => Assert.True(t.Height >= 2.2, $"{t.Text}: {t.Height}"));
            Assert.All(page.Fills, f => Assert.Null(f.Colour));
        }
    }

    [Fact]
    public void No_word_of_a_table_or_paragraph_lies_on_another()
    {
        // Words with white behind them stand in pictures and find their own places.
        foreach (Page page in ShopSheetPdf.Pages(Cover()))
        {
            Box[] words = [.. page.Texts.Where(t => !t.Halo).Select(t => TextOutline.Of(t).Bounds.Grow(-0.05))];
            for (int i = 0; i < words.Length; i++)
                for (int j = 0; j < i; j++)
                    Assert.False(words[i].Min.X < words[j].Max.X && words[j].Min.X < words[i].Max.X && words[i].Min.Y < words[j].Max.Y && words[j].Min.Y < words[i].Max.Y, $"{page.Texts.Where(t => !t.Halo).ElementAt(i).Text} on {page.Texts.Where(t => !t.Halo).ElementAt(j).Text}");
        }
    }

    [Fact]
    public void Every_number_in_it_is_in_the_report()
    {
        Development cover = Cover();
        using JsonDocument report = JsonDocument.Parse(ReportJson.Write(cover));
        HashSet<string> known = [];
        foreach (JsonElement panel in report.RootElement.GetProperty("panels").EnumerateArray())
        {
            Learn(panel.GetProperty("plan"), known);
            if (panel.TryGetProperty("bends", out JsonElement bends)) Learn(bends, known);
        }
        foreach (string part in new[] { "joints", "tacks", "nest" }) Learn(report.RootElement.GetProperty(part), known);
        // Headings have the words of the job; what is counted in whole numbers below ten are steps and rounds.
        string[] printed =
        [
            .. ShopSheetPdf.Pages(cover).SelectMany(p => p.Texts).Where(t => !t.Text.Contains(cover.Job.Name, StringComparison.Ordinal))
                .SelectMany(t => Numbers().Matches(t.Text)).Select(m => m.Value).Where(n => n.Length > 1),
        ];
        string[] strange = [.. printed.Where(n => !known.Contains(n)).Distinct()];
        Assert.True(printed.Length > 300);
        // The order of work has a step 10 and more.
        Assert.Equal([], strange.Except(["10", "11", "12"]));
    }

    // Every number that is no coordinate, as it may be printed: to whole numbers or some decimals, fractions in percent, areas in m² and cm². Words have numbers too.
    private static void Learn(JsonElement value, HashSet<string> known, bool inList = false)
    {
        if (value.ValueKind == JsonValueKind.Object) foreach (JsonProperty p in value.EnumerateObject()) Learn(p.Value, known);
        else if (value.ValueKind == JsonValueKind.Array) foreach (JsonElement e in value.EnumerateArray().Where(e => !inList && e.ValueKind != JsonValueKind.Number || value.GetArrayLength() <= 2)) Learn(e, known, inList: true);
        else if (value.ValueKind == JsonValueKind.String) foreach (Match m in Numbers().Matches(value.GetString()!)) known.Add(m.Value);
        else if (value.ValueKind == JsonValueKind.Number)
        {
            foreach ((double scale, int[] decimals) in new (double, int[])[] { (1, [0, 1, 2, 3]), (100, [0, 1]), (1e-6, [4]), (1e-2, [1]) })
                foreach (int d in decimals)
                {
                    double rounded = Math.Round(Math.Abs(scale * value.GetDouble()), d, MidpointRounding.AwayFromZero);
                    known.Add(rounded.ToString("F" + d.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
                    known.Add(rounded.ToString("0.###", CultureInfo.InvariantCulture));
                }
        }
    }

    [GeneratedRegex(@"(?<![A-Za-z])[0-9]+(\.[0-9]+)?")]
    private static partial Regex Numbers();

    [Fact]
    public void A_long_schedule_goes_on_overleaf_under_its_head_and_loses_no_line()
    {
        Development cover = Cover();
        PanelDevelopment panel = cover.Panels.First(p => p.Spec.Name == "cover");
        panel = panel with { Plan = PlannedSamples.PlanOf(panel, more: 70) };
        ImmutableArray<Page> pages = PieceSheet.Of(panel, cover.Job, cover.Joints, FormedViews.Of(panel));
        Assert.True(pages.Length > 1);
        Assert.Contains("Roll schedule, mm", Words([pages[0]]));
        Assert.All(pages.Skip(1), page => Assert.Contains("cover, continued", Words([page])));
        // Every page with lines of it has its head.
        Page[] with = [.. pages.Skip(1).Where(page => Words([page]).Any(w => w.StartsWith("rear ", StringComparison.Ordinal) || w.StartsWith("front ", StringComparison.Ordinal)))];
        Assert.NotEmpty(with);
        foreach (Page page in with)
        {
            Assert.Contains("Roll schedule, mm, continued", Words([page]));
            Assert.Contains("finished", Words([page]));
        }
        int lines = panel.Plan.Rolls!.Lines.Length;
        string[] words = [.. Words(pages)];
        for (int n = 40; n <= lines; n++) Assert.Equal(1, words.Count(w => w == n.ToString(CultureInfo.InvariantCulture)));
        Assert.Contains(words, w => w.StartsWith("8 !", StringComparison.Ordinal));
        Assert.Contains(words, w => w.Contains("CANNOT BE ROLLED", StringComparison.Ordinal));
    }

    [Fact]
    public void Neighbours_that_stay_flat_are_one_row_and_the_end_that_leads_is_named()
    {
        Development cover = Cover();
        PanelDevelopment panel = cover.Panels.First(p => p.Spec.Name == "cover");
        string[] words = [.. Words(PieceSheet.Of(panel, cover.Job, cover.Joints, FormedViews.Of(panel)))];
        RollLine[] lines = [.. panel.Plan!.Rolls!.Lines];
        int flats = lines.TakeWhile(l => l.IsFlat).Count();
        Assert.True(flats > 1);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"1 – {flats}"), words);
        foreach (RollLine line in lines.Where(l => !l.IsFlat && Math.Abs(l.ConeOffset) >= 0.05))
            Assert.Contains((line.ConeOffset > 0 ? "rear " : "front ") + Math.Abs(line.ConeOffset).ToString("0.0", CultureInfo.InvariantCulture), words);
        // A whole row, in the order of its columns.
        int at = Array.FindIndex(lines, l => !l.IsFlat) + 3;
        RollLine row = lines[at];
        string Fixed(double mm) => mm.ToString(mm >= 100 ? "0" : "0.0", CultureInfo.InvariantCulture);
        (double front, double rear) = panel.Plan.Rolls.Places()[at];
        string[] expected =
        [
            row.Number.ToString(CultureInfo.InvariantCulture), front.ToString("0.0", CultureInfo.InvariantCulture), rear.ToString("0.0", CultureInfo.InvariantCulture),
            (row.ConeOffset > 0 ? "rear " : "front ") + Math.Abs(row.ConeOffset).ToString("0.0", CultureInfo.InvariantCulture),
            Fixed(row.RadiusFront), Fixed(row.RadiusRear), Fixed(row.RollFront), Fixed(row.RollRear),
        ];
        int begin = Array.IndexOf(words, expected[3]) - 3;
        Assert.Equal(expected, words[begin..(begin + expected.Length)]);
        // All bend one way, which is said once and not in every row.
        Assert.Contains("Every line bends", string.Join(' ', words), StringComparison.Ordinal);
        Assert.DoesNotContain("DOWN", words);
    }

    [Fact]
    public void On_a_cylinder_neither_end_leads()
    {
        Development half = PlannedSamples.With(Samples.HalfCylinder());
        string[] words = [.. Words(PieceSheet.Of(half.Panels[0], half.Job, [], FormedViews.Of(half.Panels[0])))];
        Assert.Contains("Roll schedule, mm", words);
        Assert.DoesNotContain("leads", words);
    }

    [Theory]
    [InlineData(2.51, "2 1/2")] // to 32nds
    [InlineData(7.03, "7")] // to 16ths
    [InlineData(20.15, "20 1/4")] // to quarters
    public void Large_radii_of_an_inch_job_are_given_as_a_template_tells_them(double inches, string printed)
    {
        Development cover = Cover(LengthUnit.Inch);
        PanelDevelopment panel = cover.Panels.First(p => p.Spec.Name == "cover");
        FormingPlan plan = panel.Plan!;
        panel = panel with { Plan = plan with { Rolls = plan.Rolls! with { Lines = [.. plan.Rolls.Lines.Select(l => l with { RadiusFront = 25.4 * inches, RadiusRear = 1000 })] } } };
        Assert.Contains(printed, Words(PieceSheet.Of(panel, cover.Job, cover.Joints, FormedViews.Of(panel))));
    }

    [Fact]
    public void A_piece_of_the_cover_has_its_letters_twice_and_all_its_tables_on_one_page()
    {
        Development cover = Cover();
        PanelDevelopment panel = cover.Panels.First(p => p.Spec.Name == "cover");
        Page page = Assert.Single(PieceSheet.Of(panel, cover.Job, cover.Joints, FormedViews.Of(panel)));
        string[] words = [.. Words([page])];
        foreach (TapeMark mark in panel.Plan!.Marks) Assert.Equal(2, words.Count(w => w == mark.Letter || w == $"({mark.Letter})"));
        foreach (string title in new[] { "Roll schedule, mm", "Tape checks, mm", "Blank", "Take care", "GRAIN" }) Assert.Contains(title, words);
        TapeCheck tape = panel.Plan.Tapes[0];
        Assert.Contains($"{tape.From} – {tape.To}", words);
        Assert.Contains(tape.OnPart.ToString("0.0", CultureInfo.InvariantCulture), words);
    }

    [Fact]
    public void An_inch_job_has_inches_and_pounds_and_no_millimetre()
    {
        string[] words = [.. Words(ShopSheetPdf.Pages(Cover(LengthUnit.Inch)))];
        Assert.Contains("Roll schedule, inches", words);
        Assert.Contains(words, w => w.Contains(" lb (", StringComparison.Ordinal));
        Assert.DoesNotContain(words, w => w.Contains(" mm", StringComparison.Ordinal));
    }

    [Fact]
    public void The_assembly_page_has_each_joint_with_its_lengths_tacks_and_welds_in_order()
    {
        Development cover = Cover();
        string[] words = [.. Words(JobSheet.Of(cover, FormedViews.Of(cover)))];
        foreach (TackPlan tacks in cover.Tacks)
        {
            Assert.Contains($"Joint {tacks.Joint}: tacks, mm", words);
            foreach (Tack tack in tacks.Tacks) Assert.Contains(tack.At.ToString("0.0", CultureInfo.InvariantCulture), words);
            foreach (Stitch stitch in tacks.Stitches) Assert.Contains("←" + stitch.Number.ToString(CultureInfo.InvariantCulture), words);
        }
        Assert.Contains(words, w => w.StartsWith("Stock: Nested on 2 sheets of 2500 × 1250 mm, 43 % used", StringComparison.Ordinal));
        Assert.Contains("Order of work (common practice)", words);
        Assert.Contains("Take care", words);
    }

    [Fact]
    public void Where_no_plan_is_known_there_is_no_sheet()
    {
        Development bare = Samples.HalfCylinder();
        bare = bare with { Panels = [.. bare.Panels.Select(p => p with { Plan = null })] };
        Assert.Null(ShopSheetPdf.Write(bare));
        Assert.DoesNotContain(PatternFiles.Of(bare), f => f.Name == "shop-sheet.pdf");
        Assert.Contains(PatternFiles.Of(PlannedSamples.With(bare)), f => f.Name == "shop-sheet.pdf");
    }

    [Fact]
    public void No_panel_has_the_name_of_the_sheet()
    {
        Assert.NotNull(JobFile.Read(StarterJob.Text).Job);
        Assert.Null(JobFile.Read(StarterJob.Text.Replace("\"name\": \"cover\"", "\"name\": \"Shop sheet\"", StringComparison.Ordinal)).Job);
    }

    [Fact]
    public void The_report_has_the_plan_tacks_and_stock()
    {
        Development cover = Cover();
        using JsonDocument report = JsonDocument.Parse(ReportJson.Write(cover));
        for (int i = 0; i < cover.Panels.Length; i++)
        {
            FormingPlan plan = cover.Panels[i].Plan!;
            JsonElement json = report.RootElement.GetProperty("panels")[i].GetProperty("plan");
            Assert.Equal(plan.Blank.Mass, json.GetProperty("blank").GetProperty("massKg").GetDouble(), 1e-9);
            Assert.Equal(plan.Tapes.Select(t => t.OnPart), json.GetProperty("tapes").EnumerateArray().Select(t => t.GetProperty("onPart").GetDouble()), (a, b) => Math.Abs(a - b) < 1e-6);
            Assert.Equal(plan.Bends.Select(b => b.BendTo * 180 / Math.PI), json.GetProperty("bends").EnumerateArray().Select(b => b.GetProperty("bendToDeg").GetDouble()), (a, b) => Math.Abs(a - b) < 1e-6);
            if (plan.Rolls is not { } rolls) Assert.Equal(JsonValueKind.Null, json.GetProperty("rolls").ValueKind);
            else Assert.Equal(rolls.Lines.Length, json.GetProperty("rolls").GetProperty("lines").GetArrayLength());
        }
        Assert.Equal(cover.Tacks[0].Tacks[3].At, report.RootElement.GetProperty("tacks")[0].GetProperty("tacks")[3].GetProperty("at").GetDouble(), 1e-6);
        Assert.Equal(2500, report.RootElement.GetProperty("nest").GetProperty("stock")[0].GetProperty("length").GetDouble());
    }

    [Fact]
    public void A_piece_whose_readings_have_errors_says_how_far_its_edges_may_be_off()
    {
        Development read = PlannedSamples.Of("read-with-errors");
        PanelDevelopment cover = read.Panels[0], plate = read.Panels[1];
        (string Name, string Value)[] rows = [.. PieceWords.Errors(cover, LengthUnit.Millimetre)];
        Assert.Equal(["front", "rear", "First"], rows.Select(r => r.Name));
        // Of the cover it is in the cut line, of the plate's free edge it is still to be left on.
        Assert.Matches("^±[0-9.]+ to ±[0-9.]+ mm: left on: [0-9]+ mm \\(0–[0-9]+ mm from the left\\), ", rows[0].Value);
        Assert.Contains(": leave ", PieceWords.Errors(plate, LengthUnit.Millimetre)[0].Value, StringComparison.Ordinal);
        Assert.StartsWith("measure again point 3 of “rear”", rows[2].Value, StringComparison.Ordinal);
        Assert.Empty(PieceWords.Errors(PlannedSamples.Of("trike-tail-cover").Panels[0], LengthUnit.Millimetre));
        // A trim is scribed; without a joint of two edges nothing is tacked.
        Assert.Contains(WorkWords.Order(read), step => step.Contains("scribe", StringComparison.Ordinal));
        Assert.DoesNotContain(WorkWords.Order(read), step => step.Contains("tack", StringComparison.Ordinal));
        Assert.Contains(WorkWords.Order(PlannedSamples.Cover), step => step.Contains("tack", StringComparison.Ordinal));
    }
}
