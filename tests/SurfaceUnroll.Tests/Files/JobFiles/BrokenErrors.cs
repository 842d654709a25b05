namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>Jobs with one fault each in how well something was read, marked like <see cref="BrokenJobs"/>.</summary>
internal static class BrokenErrors
{
    /// <summary>Name, text with the mark, code, path.</summary>
    public static IEnumerable<(string Name, string Text, string Code, string Path)> All =>
    [
        ("error a text", Curve("\"chord\": 240, \"rise\": 120, \"error\": ¶true"), "wrong-type", "curves.front.error"),
        ("error below zero", Curve("\"chord\": 240, \"rise\": 120, \"error\": ¶-0.5"), "length-negative", "curves.front.error"),
        ("error of a decimetre", Curve("\"chord\": 240, \"rise\": 120, \"error\": ¶100"), "error-range", "curves.front.error"),
        ("error of a point as a number", Curve("\"points\": [[-120, 0], ¶[0, 120, 2, 0.5], [120, 0]]"), "point-shape", "curves.front.points[1]"),
        ("error of a point misspelt", Curve("\"points\": [[-120, 0], [0, 120, { ¶\"eror\": 2, \"error\": 1 }], [120, 0]]"), "key-unknown", "curves.front.points[1][2].eror"),
        ("empty error of a corner", Curve("\"points\": [[-120, 0], [0, 120, \"corner\", ¶{ }], [120, 0]]"), "key-missing", "curves.front.points[1][3].error"),
        ("error of a point below zero", Curve("\"xyz\": [[0, -120, 0], [0, 0, 120, { \"error\": ¶-1 }], [0, 120, 0]]"), "length-negative", "curves.front.xyz[1][3].error"),
        ("turn error of a line", Curve("\"run\": [ { \"arc\": 120, \"turn\": 90 }, { \"line\": 55, ¶\"turnError\": 1 } ]"), "key-misplaced", "curves.front.run[1].turnError"),
        ("turn error of a quarter turn", Curve("\"run\": [ { \"arc\": 120, \"turn\": 180, \"turnError\": ¶90 } ]"), "error-range", "curves.front.run[0].turnError"),
        ("error of a placement past use", Curve("\"chord\": 240, \"rise\": 120, \"at\": { \"angleError\": ¶-1 }"), "error-range", "curves.front.at.angleError"),
        ("error of a plane", Panel("\"loft\": [\"front\", \"rear\"], \"trims\": [ { \"plane\": { ¶\"error\": 1 }, \"keep\": \"up\" } ]"), "key-unknown", "panels[0].trims[0].plane.error"),
        ("error of a bent plate a list", Panel("\"bent\": { \"width\": 90, \"side\": [[0, 0], [90, 20]], \"error\": ¶[1] }"), "wrong-type", "panels[0].bent.error"),
        ("built a text", Built("¶\"all right\""), "wrong-type", "built"),
        ("built of an absent panel", Built("{ \"panel\": ¶\"b\", \"blank\": { \"a-b\": 100 } }"), "panel-absent", "built.panel"),
        ("built without a panel", Built("[ ¶{ \"blank\": { \"a-b\": 100 } } ]"), "key-missing", "built[0].panel"),
        ("built of nothing", Built("¶{ \"panel\": \"a\", \"error\": 1 }"), "built-nothing", "built"),
        ("built of one letter", Built("{ \"panel\": \"a\", \"blank\": { ¶\"a\": 100 } }"), "built-pair", "built.blank.a"),
        ("built of one letter twice", Built("{ \"panel\": \"a\", \"part\": { ¶\"c-c\": 100 } }"), "built-pair", "built.part.c-c"),
        ("built of no length", Built("{ \"panel\": \"a\", \"sheet\": { \"a-b\": ¶0 } }"), "length-not-positive", "built.sheet.a-b"),
        ("built of an absent edge", Built("{ \"panel\": \"a\", \"edges\": { \"frunt\": ¶100 } }"), "edge-absent", "built.edges.frunt"),
        ("built by no tape", Built("{ \"panel\": \"a\", \"edges\": { \"front\": 100 }, \"error\": ¶0 }"), "length-not-positive", "built.error"),
        ("built by a rod", Built("{ \"panel\": \"a\", \"edges\": { \"front\": 100 }, \"error\": ¶90 }"), "error-range", "built.error"),
        ("trim of a panel that is no word", Panel("\"loft\": [\"front\", \"rear\"], \"trim\": ¶2"), "wrong-type", "panels[0].trim"),
        ("trim of a mesh", Panel("\"mesh\": \"sheet.obj\", ¶\"trim\": \"auto\""), "key-misplaced", "panels[0].trim"),
        ("extra that is no length", Panel("\"loft\": [\"front\", \"rear\"]", ", \"joints\": [ { \"edges\": [\"a/front\"], \"kind\": \"trim\", \"extra\": ¶\"some\" } ]"), "length-unreadable", "joints[0].extra"),
    ];

    private static string Built(string built) => Panel("\"loft\": [\"front\", \"rear\"]", $", \"built\": {built}");

    private static string Curve(string front) => $"{{ \"units\": \"mm\", \"curves\": {{ \"front\": {{ {front} }}, \"rear\": {{ \"chord\": 200, \"rise\": 90 }} }}, \"panels\": [ {{ \"name\": \"a\", \"loft\": [\"front\", \"rear\"] }} ] }}";

    private static string Panel(string panel, string more = "") =>
        $"{{ \"units\": \"mm\", \"curves\": {{ \"front\": {{ \"chord\": 240, \"rise\": 120 }}, \"rear\": {{ \"chord\": 200, \"rise\": 90 }} }}, \"panels\": [ {{ \"name\": \"a\", {panel} }} ]{more} }}";
}
