using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Tests.Files.JobTexts;

public class JobTextTests
{
    private const string Job = """
        // Invented.
        {
          "job": "Cover", // on the front door
          "units": "mm",
          "curves": {
            // the arch
            "front": { "points": [ [0, 120], [85, 85], [120, 0] ], "mirror": true },
            "rear": {
              "points": [
                [0, 100], // crown
                [60, 80],
                [95, 0] // foot
              ]
            } /* the hoop */
          },
          "panels": [ { "name": "cover", "loft": ["front", "rear"] } ],
        }
        """;

    private static readonly string[] Comments = ["// Invented.", "// on the front door", "// the arch", "// crown", "// foot", "/* the hoop */"];

    private static JobText Edited(JobEdit edit)
    {
        JobText text = JobText.Of(Job).With(edit);
        Assert.True(text.IsJson, text.Text);
        Assert.All(Comments, comment => Assert.Contains(comment, text.Text, StringComparison.Ordinal));
        return text;
    }

    [Theory]
    [InlineData("job", "Cover", JobValueKind.Text)]
    [InlineData("curves.front.points[1][0]", "85", JobValueKind.Number)]
    [InlineData("curves.front.mirror", "true", JobValueKind.Word)]
    [InlineData("panels[0].loft[1]", "rear", JobValueKind.Text)]
    public void Value_is_found_by_its_path(string path, string shown, JobValueKind kind)
    {
        JobValue value = JobText.Of(Job).Find(path)!;
        Assert.Equal((shown, kind), (value.Shown, value.Kind));
    }

    [Fact]
    public void Paths_are_those_of_faults()
    {
        JobText text = JobText.Of(Job).With(JobEdit.Type("curves.rear.points[1][0]", "six"));
        Fault fault = Assert.Single(JobFile.Read(text.Text.Replace("\"panels\"", "\"sheet\": { \"material\": \"mild steel\", \"thickness\": 0.9 }, \"measured\": \"middle\", \"panels\"", StringComparison.Ordinal)).Faults);
        Assert.Equal("six", text.Shown(fault.Path));
    }

    [Fact]
    public void Set_replaces_the_value_alone()
    {
        Assert.Equal(Job.Replace("[85, 85]", "[86.5, 85]", StringComparison.Ordinal), Edited(JobEdit.Type("curves.front.points[1][0]", "86.5")).Text);
    }

    [Theory]
    [InlineData("120", "120")]
    [InlineData(" -3.5 ", "-3.5")]
    [InlineData("6 7/8", "\"6 7/8\"")]
    [InlineData("120.", "\"120.\"")]
    [InlineData("1,5", "\"1,5\"")]
    [InlineData("+5", "\"+5\"")]
    [InlineData("NaN", "\"NaN\"")]
    [InlineData("1e999", "\"1e999\"")]
    [InlineData("", "\"\"")]
    [InlineData("5\"", "\"5\\\"\"")]
    [InlineData("0x10", "\"0x10\"")]
    public void What_is_typed_is_a_number_only_where_it_is_one(string typed, string json) => Assert.Equal(json, JobPath.Typed(typed));

    [Fact]
    public void Blocks_that_are_missing_are_made()
    {
        JobText text = Edited(JobEdit.Set("curves.front.at.lean", "25"));
        Assert.Equal("25", text.Shown("curves.front.at.lean"));
        Assert.Contains("\"mirror\": true, \"at\": { \"lean\": 25 } }", text.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void New_row_stands_on_a_line_of_its_own_where_the_others_do()
    {
        Assert.Contains("        [60, 80],\n        [80, 50],\n        [95, 0] // foot", Edited(JobEdit.Insert("curves.rear.points", 2, "[80, 50]")).Text, StringComparison.Ordinal);
        Assert.Contains("        [95, 0], // foot\n        [96, -5]\n", Edited(JobEdit.Insert("curves.rear.points", 9, "[96, -5]")).Text, StringComparison.Ordinal);
        Assert.Contains("[ [0, 120], [40, 110], [85, 85],", Edited(JobEdit.Insert("curves.front.points", 1, "[40, 110]")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Trailing_comma_serves_a_new_item()
    {
        JobText text = Edited(JobEdit.Insert("panels", 1, "{}")).With(JobEdit.Set("paper", "\"A3\""));
        Assert.Contains("],\n  \"paper\": \"A3\"\n}", text.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void List_that_is_missing_is_made() => Assert.Equal("lip", Edited(JobEdit.Insert("joints", 0, """{ "kind": "lip" }""")).Shown("joints[0].kind"));

    [Theory]
    [InlineData("curves.rear.points[0]")]
    [InlineData("curves.rear.points[1]")]
    [InlineData("curves.rear.points[2]")]
    [InlineData("curves.front.mirror")]
    [InlineData("curves.front")]
    [InlineData("job")]
    [InlineData("panels")]
    [InlineData("panels[0]")]
    public void Value_taken_out_leaves_a_job_with_all_else(string path)
    {
        JobText before = JobText.Of(Job), after = before.With(JobEdit.Remove(path));
        Assert.True(after.IsJson, after.Text);
        string list = path.EndsWith(']') ? path[..path.LastIndexOf('[')] : "";
        if (list.Length > 0) Assert.Equal(before.Find(list)!.Count - 1, after.Find(list)!.Count);
        else Assert.Null(after.Find(path));
        // Comments beside a value go nowhere, even if it goes itself.
        Assert.All(Comments, comment => Assert.Contains(comment, after.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Key_gets_another_name_in_its_place()
    {
        JobText text = Edited(JobEdit.Rename("curves.front", "arch \"A\""));
        Assert.Equal("arch \"A\", rear", string.Join(", ", text.Find("curves")!.Keys));
    }

    [Fact]
    public void What_is_no_JSON_is_left_alone()
    {
        JobText text = JobText.Of("{ \"job\": ");
        Assert.False(text.IsJson);
        Assert.Same(text, text.With(JobEdit.Set("job", "1")));
    }

    [Fact]
    public void Edit_without_a_place_changes_nothing()
    {
        JobText text = JobText.Of(Job);
        Assert.Equal(Job, text.With(JobEdit.Set("curves.rear.points[7][0]", "1")).Text);
        Assert.Equal(Job, text.With(JobEdit.Remove("nothing")).Text);
        Assert.Equal(Job, text.With(JobEdit.Insert("job", 0, "1")).Text);
    }

    [Fact]
    public void Byte_order_mark_and_letters_of_several_bytes_move_nothing()
    {
        JobText text = JobText.Of("\uFEFF{ \"job\": \"Ø – 𝛼\", \"units\": \"mm\" }").With(JobEdit.Set("units", "\"in\""));
        Assert.Equal("\uFEFF{ \"job\": \"Ø – 𝛼\", \"units\": \"in\" }", text.Text);
    }

    // Any row of inserts and removals keeps the list that the same row gives on a plain list, whatever the layout.
    [Property(MaxTest = 200)]
    public Property List_edits_do_what_they_do_to_a_list() => Prop.ForAll(
        Gen.Choose(0, 5).Two().Select(t => (Remove: t.Item1 < 2, At: t.Item2)).ArrayOf(12).ToArbitrary(),
        Gen.Elements("[1, 2, 3]", "[\n  1,\n  2, // two\n  3\n]", "[ 1, 2,\n 3, ]", "[]", "[\n]").ToArbitrary(),
        (steps, start) =>
        {
            JobText text = JobText.Of($"{{ \"list\": {start} }}");
            List<string> list = [.. text.Inside("list").Select(v => v.Shown)];
            int next = 10;
            foreach ((bool remove, int at) in steps)
            {
                if (remove)
                {
                    if (at < list.Count) list.RemoveAt(at);
                    text = text.With(JobEdit.Remove($"list[{at}]"));
                }
                else
                {
                    list.Insert(Math.Min(at, list.Count), $"{++next}");
                    text = text.With(JobEdit.Insert("list", at, $"{next}"));
                }
                if (!text.IsJson) return false.Label(text.Text);
            }
            return list.SequenceEqual(text.Inside("list").Select(v => v.Shown)).Label(text.Text);
        });
}
