using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Tests.Files.JobFiles;
using static SurfaceUnroll.Tests.Files.CurveFiles.DxfCurveTests;

namespace SurfaceUnroll.Tests.Files.CurveFiles;

/// <summary>Files that cannot be used say why, where and what to do.</summary>
public class BrokenFileTests
{
    private const string Line = "0\nLINE\n8\na\n10\n0\n20\n0\n11\n30\n21\n0\n", Other = "0\nLINE\n8\nb\n10\n0\n20\n9\n11\n40\n21\n9\n";

    private static string Svg(string inner) => $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9mm\" height=\"9mm\" viewBox=\"0 0 9 9\">\n{inner}\n</svg>";

    public static TheoryData<string, string, string, string, string> Broken => new()
    {
        { "a.dxf", "", "", "dxf-broken", "nothing in the file" },
        { "a.dxf", "\0\0\0 binary", "", "dxf-broken", "binary" },
        { "a.dxf", "solid part\nfacet", "", "dxf-broken", "line 1: This is no DXF" },
        { "a.dxf", "0\nSECTION\n2\nENTITIES\n" + Line + "0\nENDSEC\n", "", "dxf-broken", "breaks off" },
        { "a.dxf", Text(Line + "x\n5\n"), "", "dxf-broken", "line 17: Here should be a group code" },
        { "a.dxf", Text("0\nLINE\n10\n1,5\n20\n0\n11\n30\n21\n0\n"), "", "dxf-broken", "line 8: “1,5” is no number" },
        { "a.dxf", Text("0\nSPLINE\n71\n3\n40\n0\n40\n1\n10\n0\n20\n0\n10\n1\n20\n0\n10\n2\n20\n3\n10\n5\n20\n0\n"), "", "dxf-broken", "knots" },
        { "a.dxf", Text("0\nARC\n10\n0\n20\n0\n40\n9\n50\n0\n51\n90\n210\n1\n220\n0\n230\n0\n"), "", "drawing-not-flat", "does not lie in the plane" },
        { "a.dxf", Text("0\nLINE\n10\n0\n20\n0\n30\n0\n11\n9\n21\n0\n31\n4\n"), "", "drawing-not-flat", "does not lie in the plane" },
        { "a.dxf", Text(Line, 3), "", "drawing-unit", "INSUNITS 3" },
        { "a.dxf", Text("0\nTEXT\n1\nhello\n0\nHATCH\n8\n0\n"), "", "drawing-empty", "1 HATCH" },
        { "a.dxf", Text(Line + Other), "", "drawing-several", "2 curves: layer \"b\", line 18, 40 mm long; layer \"a\", line 6, 30 mm long" },
        { "a.dxf", Text(Line + Line.Replace("0\n20\n0\n11\n30", "30.4\n20\n0\n11\n60", StringComparison.Ordinal)), "", "drawing-gap", "end 0.4 mm from each other at across 30 mm, up 0 mm" },
        { "a.dxf", Text(Line + Line.Replace("11\n30\n21\n0", "11\n0\n21\n9", StringComparison.Ordinal) + Line.Replace("11\n30", "11\n-9", StringComparison.Ordinal)), "", "drawing-fork", "3 lines meet at across 0 mm, up 0 mm" },
        { "a.dxf", Text(Line), ", \"layer\": \"aa\"", "drawing-layer", "layer \"aa\"" },
        { "a.dxf", Text(Line), ", \"pick\": 2", "drawing-pick", "no number 2" },
        { "a.dxf", Text(Line), ", \"path\": \"p\"", "key-misplaced", "use \"layer\"" },
        { "a.dxf", Text(Line), ", \"columns\": [1, 2]", "key-misplaced", ".csv" },
        { "a.dxf", Text("0\nARC\n10\n0\n20\n0\n40\n9\n50\n0\n51\n90\n"), ", \"fit\": \"smooth\"", "drawing-fit", "arcs or splines" },
        { "a.dxf", Text(Line.Replace("30", "300000", StringComparison.Ordinal)), "", "drawing-too-much", "100 m" },
        { "a.svg", "<svg><path", "", "svg-broken", "not right XML" },
        { "a.svg", "<html/>", "", "svg-broken", "no SVG" },
        { "a.svg", Svg("<path d=\"M0 0 L 5\"/>"), "", "svg-broken", "line 2: This path cannot be read: at sign 9" },
        { "a.svg", Svg("<path d=\"L 5 5\"/>"), "", "svg-broken", "begins with M" },
        { "a.svg", Svg("<path d=\"M 0 0 X 5 5\"/>"), "", "svg-broken", "“X” is no command" },
        { "a.svg", Svg("<path d=\"M 0 0 A 5 5 0 2 0 5 5\"/>"), "", "svg-broken", "a flag of an arc" },
        { "a.svg", Svg("<path transform=\"turn(5)\" d=\"M0 0H5\"/>"), "", "svg-broken", "transform" },
        { "a.svg", Svg("<circle r=\"5em\"/>"), "", "svg-broken", "no length that can be used" },
        { "a.svg", Svg("<polyline points=\"0 0 5\"/>"), "", "svg-broken", "pairs" },
        { "a.svg", Svg("<path id=\"p\" d=\"M0 0H5\"/>"), ", \"path\": \"q\"", "drawing-path", "\"q\"" },
        { "a.svg", Svg("<text>hello</text><use href=\"#p\"/>"), "", "drawing-empty", "1 use" },
        { "a.csv", "", "", "csv-broken", "nothing" },
        { "a.csv", "0;0\n1;x\n2;0\n", "", "csv-broken", "line 2: “x” is no number" },
        { "a.csv", "0;0\n1\n2;0\n", "", "csv-broken", "line 2: Here is no column 2" },
        { "a.csv", "across,up\n0,0\n", "", "csv-broken", "two points" },
        { "a.csv", "0,0\n5,5\n5,5\n9,9", "", "csv-broken", "line 3: This is the same place as in line 2" },
        { "a.csv", "0,0\n5,500000\n", "", "csv-broken", "line 2: This point lies farther out than 100 m" },
        { "a.csv", "a,b,c,d\n0,0,0,0\n1,1,1,1", "", "csv-columns", "a, b, c, d" },
        { "a.csv", "a,b\n0,0\n1,1", ", \"columns\": [\"a\", \"z\"]", "csv-columns", "“z”" },
        { "a.csv", "0,0,0\n1,1,1", ", \"mirror\": true", "csv-broken", "not mirrored" },
        { "a.csv", "0,0\n1,1", ", \"layer\": \"a\"", "key-misplaced", "drawing" },
        { "a.txt", "0,0\n1,1", "", "curve-file-kind", "a.txt" },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void Broken_file_says_what_is_wrong_and_where(string file, string text, string more, string code, string says)
    {
        Fault fault = FileJob.Fault(file, text, more);
        Assert.Equal(code, fault.Code);
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fault_is_explained_in_the_guide() =>
        Assert.All(Broken.Select(row => (string)row[3]).Append("curve-file"), code => Assert.Contains($"`{code}`", Fixtures.Guide, StringComparison.Ordinal));

    [Fact]
    public void File_that_is_not_there_is_a_fault()
    {
        JobReading reading = FileJob.Job("front.dxf", null!, "", "mm");
        Assert.Equal("curve-file", Assert.Single(reading.Faults).Code);
    }

    // A right file cut short anywhere, or with one sign changed: read or refused, never thrown at.
    [Theory]
    [InlineData('x')]
    [InlineData('-')]
    [InlineData('\n')]
    [InlineData('9')]
    [InlineData('<')]
    public void Files_with_one_slip_are_read_or_refused(char slip)
    {
        string dxf = Text(Line + "0\nARC\n8\na\n10\n30\n20\n5\n40\n5\n50\n270\n51\n0\n0\nSPLINE\n71\n2\n40\n0\n40\n0\n40\n0\n40\n1\n40\n1\n40\n1\n10\n35\n20\n5\n10\n35\n20\n9\n10\n40\n20\n9\n", 4);
        string svg = Svg("<g transform=\"scale(2)\"><path id=\"p\" d=\"M0 0c1 2 3 4 5 0a2 2 0 0 1 4 0\"/></g>");
        foreach ((string name, string text) in new[] { ("a.dxf", dxf), ("a.svg", svg), ("a.csv", "across;up\n0;1,5\n2;2,5;corner\n") })
        {
            for (int i = 0; i < text.Length; i++)
            {
                foreach (string broken in new[] { text[..i], text[..i] + slip + text[(i + 1)..] })
                {
                    JobReading reading = FileJob.Job(name, System.Text.Encoding.UTF8.GetBytes(broken), "", "mm");
                    Assert.Equal(reading.Job is null, reading.Faults.Length > 0);
                }
            }
        }
    }
}
