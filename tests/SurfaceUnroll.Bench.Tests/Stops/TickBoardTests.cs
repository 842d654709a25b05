using SurfaceUnroll.Bench.Stops.Forming;

namespace SurfaceUnroll.Bench.Tests.Stops;

public sealed class TickBoardTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("ticks-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Ticks_are_remembered_beside_the_job_by_the_words_of_their_steps()
    {
        string job = Path.Combine(_folder, "cover.json");
        using (var board = new TickBoard(job))
        {
            board.Set("cover rolls: 6 | 60.1", true);
            board.Set("cover rolls: 7 | 81.1", true);
            board.Set("cover rolls: 6 | 60.1", false);
        }
        Assert.True(File.Exists(Path.Combine(_folder, ".surfaceunroll", "cover.json", "ticks.json")));
        using var again = new TickBoard(job);
        Assert.Equal(["cover rolls: 7 | 81.1"], again.Ticked);
        Assert.Null(again.Fault);
    }

    [Fact]
    public void Windows_of_one_job_share_a_board_and_are_told()
    {
        using var boards = new TickBoards();
        string job = Path.Combine(_folder, "cover.json");
        TickBoard board = boards.Of(job);
        int told = 0;
        board.Changed += () => told++;
        boards.Of(job).TickAll(["a", "b"]);
        Assert.Equal(["a", "b"], board.Ticked.Order());
        Assert.Equal(1, told);
        Assert.Empty(boards.Of(Path.Combine(_folder, "other.json")).Ticked);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[1, 2]")]
    [InlineData("{ \"ticked\": \"all\" }")]
    public void File_that_cannot_be_understood_ticks_nothing_and_is_written_anew(string text)
    {
        string job = Path.Combine(_folder, "cover.json"), file = Path.Combine(_folder, ".surfaceunroll", "cover.json", "ticks.json");
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
        using (var board = new TickBoard(job))
        {
            Assert.Empty(board.Ticked);
            board.Set("deburr", true);
        }
        Assert.Contains("deburr", File.ReadAllText(file), StringComparison.Ordinal);
    }
}
