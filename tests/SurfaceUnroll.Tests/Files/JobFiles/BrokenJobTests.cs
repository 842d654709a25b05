using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Tests.Files.JobFiles;

public class BrokenJobTests
{
    public static TheoryData<string> Names => [.. BrokenJobs.All.Select(j => j.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Broken_job_gives_no_job_but_the_place_and_the_mend(string name)
    {
        (_, string text, string code, string path) = BrokenJobs.All.Single(j => j.Name == name);
        int mark = text.IndexOf('¶', StringComparison.Ordinal);
        JobReading reading = JobFile.Read(text.Remove(mark, 1), BrokenPanels.Open);

        Assert.Null(reading.Job);
        Fault fault = Assert.Single(reading.Faults, f => f.Code == code);
        Assert.Equal(path, fault.Path);
        Assert.Equal(PlaceOf(text, mark), (fault.Line, fault.Column));
        Assert.All(reading.Faults, f => Assert.False(string.IsNullOrWhiteSpace(f.Message) || string.IsNullOrWhiteSpace(f.Mend)));
    }

    // A fault must not drag others behind it, or the list is of no use. Where there are no curves at all, there are no panels either.
    [Theory]
    [MemberData(nameof(Names))]
    public void One_fault_is_reported_once(string name)
    {
        (_, string text, string code, _) = BrokenJobs.All.Single(j => j.Name == name);
        JobReading reading = JobFile.Read(text.Replace("¶", "", StringComparison.Ordinal), BrokenPanels.Open);
        Assert.Equal([code], reading.Faults.Select(f => f.Code).Where(c => c == code || c != "panels-none"));
    }

    [Fact]
    public void There_are_at_least_sixty_broken_jobs_each_with_its_own_name()
    {
        Assert.True(Names.Count >= 60);
        Assert.Equal(Names.Count, BrokenJobs.All.Select(j => j.Name).Distinct().Count());
    }

    [Theory]
    [InlineData("{ \"unit\": \"mm\" }", "unit", "Did you mean \"units\"?")]
    [InlineData("{ \"pannels\": [] }", "pannels", "Did you mean \"panels\"?")]
    [InlineData("{ \"xyzzy\": [] }", "xyzzy", "The keys that can stand here are: job, units,")]
    [InlineData("{ \"curves\": { \"Hoop\": { \"chord\": 9, \"rise\": 1 } }, \"panels\": [{ \"name\": \"a\", \"loft\": [\"hoop\", \"x\"] }] }", "panels[0].loft[0]", "Did you mean \"Hoop\"?")]
    [InlineData("{ \"curves\": { \"Hoop\": { \"chord\": 9, \"rise\": 1 } }, \"panels\": [{ \"name\": \"a\", \"loft\": [\"hoop\", \"x\"] }] }", "panels[0].loft[1]", "The curves of the job are: Hoop.")]
    [InlineData("{ \"panels\": [{ \"name\": \"a\", \"bent\": { \"width\": 9, \"side\": [[0, 0], [9, 0, \"Bnd\"], [18, 9]] } }] }", "panels[0].bent.side[1][2]", "Did you mean \"bend\"?")]
    [InlineData("{ \"panels\": [{ \"name\": \"a\", \"bent\": { \"width\": 9, \"side\": [[0, 0], [9, 9]] } }], \"joints\": [{ \"edges\": [\"a/fron\"], \"kind\": \"trim\", \"extra\": 1 }] }", "joints[0].edges[0]", "Did you mean \"a/front\"?")]
    [InlineData("{ \"panels\": [{ \"name\": \"a\", \"bent\": { \"width\": 9, \"side\": [[0, 0], [9, 9]] }, \"holes\": [{ \"name\": \"row\", \"round\": 1, \"pattern\": { \"across\": 2, \"pitch\": 3 } }] }], \"joints\": [{ \"edges\": [\"a/lamp\"], \"kind\": \"trim\", \"extra\": 1 }] }", "joints[0].edges[0]", "Its edges are: front, right, rear, left, row 1, row 2.")]
    [InlineData("{ \"units\": \"inch\" }", "units", "\"mm\" or \"in\"")]
    public void Mistyped_word_gets_a_suggestion_or_the_list(string text, string path, string mend)
    {
        Fault fault = Assert.Single(JobFile.Read(text).Faults, f => f.Path == path);
        Assert.Contains(mend, fault.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_come_at_once_in_the_order_of_the_file()
    {
        const string text = """
            {
              "unitz": "mm",
              "curves": {
                "a": { "chord": -1, "rise": NaN },
                "b": { "points": [[0, 0], [0, 0]], "fit": "round" },
              },
              "panels": [ { "name": "!", "loft": ["a", "c"] } ]
            }
            """;
        Assert.Equal(
            ["1 key-missing", "2 key-unknown", "4 length-not-positive", "4 not-a-number", "5 curve-points-repeat", "5 choice-unknown", "7 panel-name", "7 curve-absent"],
            JobFile.Read(text).Faults.Select(f => $"{f.Line} {f.Code}"));
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n")]
    [InlineData("\r")]
    public void Lines_are_counted_whatever_ends_them(string end)
    {
        string text = string.Join(end, "{", "  // º", "  \"unitz\": 3 }");
        Fault fault = Assert.Single(JobFile.Read(text).Faults, f => f.Code == "key-unknown");
        Assert.Equal((3, 3), (fault.Line, fault.Column));
    }

    [Fact]
    public void Columns_count_characters_not_bytes()
    {
        Fault fault = Assert.Single(JobFile.Read("\uFEFF{ \"job\": \"Größe 7⅞″\", \"unitz\": 3 }").Faults, f => f.Code == "key-unknown");
        Assert.Equal((1, 23), (fault.Line, fault.Column));
    }

    // Everything before the last bracket is too little, and so is nothing at all.
    [Fact]
    public void Job_cut_short_anywhere_is_refused_with_a_place_in_it()
    {
        string text = StarterJob.Text;
        for (int length = 0; length <= text.LastIndexOf('}'); length++)
        {
            JobReading reading = JobFile.Read(text[..length]);
            Fault fault = Assert.Single(reading.Faults);
            Assert.Null(reading.Job);
            Assert.InRange(fault.Line, 1, text[..length].Count(c => c == '\n') + 1);
        }
    }

    // Every fourth character of a right job (all of them take long) changed into any of these: read or refused, never thrown at.
    [Theory]
    [InlineData('"')]
    [InlineData('{')]
    [InlineData(']')]
    [InlineData(',')]
    [InlineData('\\')]
    [InlineData('-')]
    [InlineData('9')]
    [InlineData('N')]
    [InlineData('/')]
    [InlineData('\0')]
    [InlineData('\ud800')]
    public void Job_with_one_slip_of_the_finger_is_read_or_refused(char slip)
    {
        string text = StarterJob.Text;
        for (int i = slip % 4; i < text.Length; i += 4)
        {
            JobReading reading = JobFile.Read(text[..i] + slip + text[(i + 1)..]);
            Assert.Equal(reading.Job is null, reading.Faults.Length > 0);
        }
    }

    private static (int, int) PlaceOf(string text, int mark)
    {
        string before = text[..mark];
        return (before.Count(c => c == '\n') + 1, mark - before.LastIndexOf('\n'));
    }
}
