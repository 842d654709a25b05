namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>Curves read from files, with one fault each in the job. What is wrong in the files themselves has tests of its own.</summary>
internal static class BrokenFiles
{
    public static (string, string, string, string)[] All =>
    [
        ("curve file of another kind", Front("\"file\": ¶\"front.step\""), "curve-file-kind", "curves.front.file"),
        ("curve file not there", Front("\"file\": ¶\"front.dxf\""), "curve-file", "curves.front.file"),
        ("curve file not a name", Front("\"file\": ¶7"), "wrong-type", "curves.front.file"),
        ("columns of a drawing", Front("\"file\": \"front.dxf\", \"columns\": ¶[1, 2]"), "key-misplaced", "curves.front.columns"),
        ("one column", Front("\"file\": \"front.csv\", \"columns\": ¶[1]"), "csv-columns", "curves.front.columns"),
        ("unit of a file not known", Front("\"file\": \"front.csv\", \"fileUnits\": ¶\"yd\""), "choice-unknown", "curves.front.fileUnits"),
        ("zero neither place nor ends", Front("\"file\": \"front.dxf\", \"zero\": ¶\"end\""), "choice-unknown", "curves.front.zero"),
        ("piece number nought", Front("\"file\": \"front.dxf\", \"pick\": ¶0"), "number-range", "curves.front.pick"),
        ("layer without a file", Front("\"points\": [[0, 0], [9, 9]], ¶\"layer\": \"a\""), "key-misplaced", "curves.front.layer"),
        ("section with a place", Front("\"section\": { \"mesh\": \"wide.obj\", \"plane\": {} }, ¶\"at\": {}"), "key-misplaced", "curves.front.at"),
        ("section without a plane", Front("\"section\": ¶{ \"mesh\": \"scan.stl\" }"), "key-missing", "curves.front.section.plane"),
        ("section of no mesh", Front("\"section\": ¶{ \"plane\": {} }"), "key-missing", "curves.front.section.mesh"),
        ("section a name", Front("\"section\": ¶\"scan.stl\""), "wrong-type", "curves.front.section"),
    ];

    private static string Front(string inner) =>
        "{ \"units\": \"mm\", \"curves\": { \"front\": { " + inner + " }, \"rear\": { \"chord\": 9, \"rise\": 1 } }, \"panels\": [ { \"name\": \"a\", \"loft\": [\"front\", \"rear\"] } ] }";
}
