using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Tests.Desk;

public sealed class JobDeskTests : IDisposable
{
    private readonly OpenDesk _open = new(StarterJob.Text);
    private readonly JobShelf _shelf;
    private readonly JobDesk _desk;
    private readonly string _path;

    public JobDeskTests() => (_shelf, _desk, _path) = (_open.Shelf, _open.Desk, _open.Path);

    public void Dispose() => _open.Dispose();

    [Fact]
    public async Task Every_change_is_in_the_file_with_its_comments()
    {
        _desk.Apply(JobEdit.Type("curves.front.run[1].arc", "125"));
        await _desk.SavedAsync();
        Assert.Equal(StarterJob.Text.Replace("\"arc\": 120", "\"arc\": 125", StringComparison.Ordinal), await File.ReadAllTextAsync(_path));
    }

    [Fact]
    public async Task What_cannot_be_read_is_saved_and_told_at_its_place()
    {
        await Waiting.Until(() => _desk.State.IsSound);
        _desk.Apply(JobEdit.Type("curves.front.run[1].arc", "12 tons"));
        await Waiting.Until(() => _desk.State.Looked == _desk.State.Version);
        await _desk.SavedAsync();
        Assert.Contains("12 tons", await File.ReadAllTextAsync(_path), StringComparison.Ordinal);
        Assert.Equal("curves.front.run[1].arc", Assert.Single(_desk.State.Faults).Path);
        Assert.NotNull(_desk.State.Development); // The last sheet stays to be seen.
        Assert.False(_desk.State.IsSound);
    }

    [Fact]
    public async Task Change_is_developed()
    {
        await Waiting.Until(() => _desk.State.IsSound);
        double before = _desk.State.Development!.Panels[0].FlatArea;
        _desk.Apply(JobEdit.Type("curves.front.run[1].arc", "125"));
        await Waiting.Until(() => _desk.State.IsSound);
        Assert.True(_desk.State.Development!.Panels[0].FlatArea > before);
        await Waiting.Until(() => _desk.State.Papers.Length == 1);
    }

    [Fact]
    public async Task Errors_of_edges_are_worked_out_when_the_job_is_left_alone()
    {
        using var open = new OpenDesk(StarterJob.Text.Replace("\"lean\": 25 }", "\"lean\": 25 }, \"error\": 0.5", StringComparison.Ordinal));
        JobDesk desk = open.Desk;
        await Waiting.Until(() => desk.State.IsWhole);
        Assert.NotEmpty(desk.State.Development!.Panels[0].Error!.Readings);
        var seen = new List<DeskState>();
        desk.Changed += () => seen.Add(desk.State);
        double before = desk.State.Development.Panels[0].Error!.Largest;
        desk.Apply(JobEdit.Type("curves.front.error", "2"));
        await Waiting.Until(() => desk.State.IsWhole);
        // First the sheet with the errors of before, then with its own.
        Assert.Contains(seen, s => s.IsSound && !s.IsWhole && s.Development!.Panels[0].Error!.Largest == before);
        Assert.True(desk.State.Development.Panels[0].Error!.Largest > 2 * before);
        await Waiting.Until(() => desk.State.Papers.Length == 1);
        Assert.Null(desk.State.Working);
    }

    [Fact]
    public async Task What_only_the_whole_work_finds_is_told_and_the_sheet_is_not_taken_for_good()
    {
        // Readings of another curve have errors; no band is known for the sheet that should be trimmed by it.
        using var open = new OpenDesk(StarterJob.Text
            .Replace("\"curves\": {", "\"curves\": {\n    \"spare\": { \"chord\": 100, \"rise\": 20, \"error\": 1 },", StringComparison.Ordinal)
            .Replace("\"loft\":", "\"trim\": \"auto\", \"loft\":", StringComparison.Ordinal));
        await Waiting.Until(() => open.Desk.State.Faults.Any());
        Assert.Contains("no band is known", Assert.Single(open.Desk.State.Faults).Message, StringComparison.Ordinal);
        Assert.False(open.Desk.State.IsSound);
        Assert.NotNull(open.Desk.State.Development);
    }

    [Fact]
    public async Task Thousand_changes_in_a_row_end_in_the_last_one()
    {
        for (int i = 0; i < 1000; i++) _desk.Apply(JobEdit.Type("curves.front.run[0].line", $"{50 + i % 20}"), "drag");
        await _desk.SavedAsync();
        await Waiting.Until(() => _desk.State.IsSound);
        Assert.Equal(_desk.State.Text.Text, await File.ReadAllTextAsync(_path));
        Assert.Equal("69", _desk.State.Text.Shown("curves.front.run[0].line"));
    }

    [Fact]
    public void Undo_goes_back_to_the_start_and_redo_to_the_end()
    {
        string[] texts = [.. Enumerable.Range(0, 300).Select(i =>
        {
            _desk.Apply(JobEdit.Type("sheet.thickness", $"1.{i}"));
            return _desk.State.Text.Text;
        })];
        for (int i = texts.Length - 2; i >= 0; i--)
        {
            _desk.Undo();
            Assert.Equal(texts[i], _desk.State.Text.Text);
        }
        _desk.Undo();
        Assert.Equal(StarterJob.Text, _desk.State.Text.Text);
        Assert.False(_desk.State.CanUndo);
        foreach (string text in texts)
        {
            _desk.Redo();
            Assert.Equal(text, _desk.State.Text.Text);
        }
        Assert.False(_desk.State.CanRedo);
    }

    [Fact]
    public void Keys_of_one_word_are_undone_together()
    {
        foreach (string typed in new[] { "1", "1.", "1.2" }) _desk.Apply(JobEdit.Type("sheet.thickness", typed), "sheet.thickness");
        _desk.EndStrand();
        _desk.Apply(JobEdit.Type("sheet.thickness", "1.25"), "sheet.thickness");
        _desk.Undo();
        Assert.Equal("1.2", _desk.State.Text.Shown("sheet.thickness"));
        _desk.Undo();
        Assert.Equal("0.9", _desk.State.Text.Shown("sheet.thickness"));
    }

    [Fact]
    public async Task File_changed_by_another_program_is_followed_and_can_be_undone()
    {
        await _desk.SavedAsync();
        await File.WriteAllTextAsync(_path, StarterJob.Text.Replace("0.9", "1.5", StringComparison.Ordinal));
        _desk.LookAtFile();
        await Waiting.Until(() => _desk.State.Text.Shown("sheet.thickness") == "1.5");
        Assert.NotNull(_desk.State.News);
        _desk.Undo();
        await _desk.SavedAsync();
        Assert.Equal(StarterJob.Text, await File.ReadAllTextAsync(_path));
    }

    [Fact]
    public void Changes_of_other_places_are_merged()
    {
        string theirs = StarterJob.Text.Replace("\"lean\": 25", "\"lean\": 30", StringComparison.Ordinal);
        string merged = Merge.Of(StarterJob.Text, theirs, [JobEdit.Type("sheet.thickness", "1.2")])!;
        Assert.Equal(theirs.Replace("0.9", "1.2", StringComparison.Ordinal), merged);
    }

    [Fact]
    public void Changes_of_the_same_place_are_not()
    {
        string theirs = StarterJob.Text.Replace("0.9", "1.5", StringComparison.Ordinal);
        Assert.Null(Merge.Of(StarterJob.Text, theirs, [JobEdit.Type("sheet.thickness", "1.2")]));
        // A row put in moves those behind it, so the whole list is one place.
        string moved = StarterJob.Text.Replace("[62, 272]", "[63, 272]", StringComparison.Ordinal);
        Assert.Null(Merge.Of(StarterJob.Text, moved, [JobEdit.Insert("curves.rear.points", 1, "[30, 290]")]));
    }

    [Fact]
    public async Task Last_fifty_states_are_kept_and_can_be_brought_back()
    {
        for (int i = 0; i < 60; i++) _desk.History.Keep(StarterJob.Text + new string('\n', i + 1), apart: true);
        Assert.Equal(JobHistory.Most, _desk.History.States.Length);
        string oldest = _desk.History.Text(_desk.History.States[^1])!;
        _desk.Replace(oldest);
        await _desk.SavedAsync();
        Assert.Equal(oldest, await File.ReadAllTextAsync(_path));
        Assert.True(_desk.State.CanUndo);
    }

    [Fact]
    public void Only_jobs_of_the_folder_are_opened()
    {
        Assert.Null(_shelf.Open("../cover"));
        Assert.Null(_shelf.Open("nothing"));
        Assert.Null(_shelf.Open(""));
        Assert.Same(_desk, _shelf.Open("cover"));
    }

    [Fact]
    public void New_job_never_takes_the_place_of_another()
    {
        (string? first, _) = _shelf.Add("Cover", "{}");
        Assert.Equal("cover-2", first);
        Assert.Equal(StarterJob.Text, File.ReadAllText(_path));
    }
}
