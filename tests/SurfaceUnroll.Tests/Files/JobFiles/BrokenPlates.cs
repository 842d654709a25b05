namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>Jobs with one fault each in a plate, its holes, openings or trims, marked like <see cref="BrokenJobs"/>.</summary>
internal static class BrokenPlates
{
    private const string Curves =
        """
        "curves": { "front": { "chord": 240, "rise": 120 }, "rear": { "chord": 200, "rise": 90 },
          "hoop": { "plan": { "chord": 200, "rise": 90 }, "side": [[0, 0], [90, 10]] } }
        """;

    /// <summary>Name, text with the mark, code, path.</summary>
    public static IEnumerable<(string Name, string Text, string Code, string Path)> All => [.. Sheets, .. Flats, .. Bents, .. Sides, .. Holes, .. Openings, .. Shared, .. Trims];

    private static (string, string, string, string)[] Sheets =>
    [
        ("unknown bend rule", Sheet("\"bendRule\": ¶\"din\""), "choice-unknown", "sheet.bendRule"),
        ("K of zero", Sheet("\"k\": ¶0"), "number-range", "sheet.k"),
        ("K past the middle", Sheet("\"k\": ¶0.6"), "number-range", "sheet.k"),
        ("K a text", Sheet("\"k\": ¶\"0.4\""), "wrong-type", "sheet.k"),
        ("own bend a number", Sheet("\"ownBend\": ¶1.7"), "wrong-type", "sheet.ownBend"),
        ("own bend without deduction", Sheet("\"ownBend\": ¶{ \"radius\": 1, \"angle\": 90 }"), "key-missing", "sheet.ownBend.deduction"),
        ("own bend folded flat", Sheet("\"ownBend\": { \"radius\": 1, \"angle\": ¶180, \"deduction\": 1 }"), "bend-angle", "sheet.ownBend.angle"),
        ("own bend whose fibre lies outside the sheet", Sheet("\"thickness\": 0.9, \"ownBend\": { \"radius\": 1, \"angle\": 90, \"deduction\": ¶1.3 }"), "own-bend-deduction", "sheet.ownBend.deduction"),
        ("own bend of the inside lengths", Sheet("\"thickness\": 0.9, \"ownBend\": { \"radius\": 1, \"angle\": 90, \"deduction\": ¶-0.1 }"), "own-bend-deduction", "sheet.ownBend.deduction"),
        ("own bend misread by a decimal", Sheet("\"thickness\": 0.9, \"ownBend\": { \"radius\": 1, \"angle\": 90, \"deduction\": ¶17 }"), "own-bend-deduction", "sheet.ownBend.deduction"),
        ("own bend of a negative radius", Sheet("\"ownBend\": { \"radius\": ¶-1, \"angle\": 90, \"deduction\": 1 }"), "length-negative", "sheet.ownBend.radius"),
    ];

    private static (string, string, string, string)[] Flats =>
    [
        ("flat a number", Panel("\"flat\": ¶3"), "wrong-type", "panels[0].flat"),
        ("flat of no curve", Panel("\"flat\": ¶[]"), "plate-no-curve", "panels[0].flat"),
        ("flat of an absent curve", Panel("\"flat\": ¶\"frunt\""), "curve-absent", "panels[0].flat"),
        ("flat of one curve twice", Panel("\"flat\": [\"front\", ¶\"front\"]"), "plate-same-curve", "panels[0].flat[1]"),
        ("outside to the north", Panel("\"flat\": \"front\", \"outside\": ¶\"north\""), "choice-unknown", "panels[0].outside"),
        ("pieces of a plate", Panel("\"flat\": \"front\", ¶\"pieces\": 2"), "key-misplaced", "panels[0].pieces"),
        ("outside of a loft", Panel("\"loft\": [\"front\", \"rear\"], ¶\"outside\": \"up\""), "key-misplaced", "panels[0].outside"),
        ("holes of a loft", Panel("\"loft\": [\"front\", \"rear\"], ¶\"holes\": []"), "key-misplaced", "panels[0].holes"),
        ("face of a mesh", Panel("\"mesh\": \"sheet.obj\", ¶\"measured\": \"inside\""), "key-misplaced", "panels[0].measured"),
        ("unknown face of a panel", Panel("\"flat\": \"front\", \"measured\": ¶\"outer\""), "choice-unknown", "panels[0].measured"),
    ];

    private static (string, string, string, string)[] Bents =>
    [
        ("bent a text", Panel("\"bent\": ¶\"hoop\""), "wrong-type", "panels[0].bent"),
        ("bent without plan", Panel("\"bent\": ¶{ \"side\": [[0, 0], [90, 9]] }"), "key-missing", "panels[0].bent.plan"),
        ("bent without side", Panel("\"bent\": ¶{ \"plan\": \"hoop\" }"), "key-missing", "panels[0].bent.side"),
        ("bent with plan and width", Panel("\"bent\": { \"plan\": ¶\"hoop\", \"width\": 30, \"side\": \"hoop\" }"), "plan-and-width", "panels[0].bent.plan"),
        ("bent of no width", Panel("\"bent\": { \"width\": ¶0, \"side\": [[0, 0], [90, 9]] }"), "length-not-positive", "panels[0].bent.width"),
        ("bent of an absent curve", Bent("\"plan\": ¶\"hop\", \"side\": \"hoop\""), "curve-absent", "panels[0].bent.plan"),
        ("plan measured in place that is none", Bent("\"plan\": ¶{}, \"side\": \"hoop\""), "curve-no-kind", "panels[0].bent.plan"),
        ("plan measured in place in space", Bent("\"plan\": { \"xyz\": ¶[[0, 0, 0], [1, 1, 1]] }, \"side\": \"hoop\""), "curve-plan-kind", "panels[0].bent.plan.xyz"),
        ("bend radius negative", Bent("\"plan\": \"hoop\", \"side\": \"hoop\", \"radius\": ¶-1"), "length-negative", "panels[0].bent.radius"),
        ("unknown key of a bent plate", Bent("\"plan\": \"hoop\", \"side\": \"hoop\", ¶\"bends\": 3"), "key-unknown", "panels[0].bent.bends"),
    ];

    private static (string, string, string, string)[] Sides =>
    [
        ("side a number", Side("¶3"), "wrong-type", "panels[0].bent.side"),
        ("side of one point", Side("¶[[0, 0]]"), "curve-too-few-points", "panels[0].bent.side"),
        ("side of a curve without side view", Side("¶\"front\""), "curve-no-side", "panels[0].bent.side"),
        ("side running forward", Side("[[0, 0], ¶[-5, 9]]"), "curve-side-range", "panels[0].bent.side[1]"),
        ("bend at the end of a side", Side("[[0, 0], [50, 0], [90, 9, ¶2]]"), "side-end-bend", "panels[0].bent.side[2][2]"),
        ("bend of another word", Side("[[0, 0], [50, 0, ¶\"sharp\"], [90, 9]]"), "length-unreadable", "panels[0].bent.side[1][2]"),
        ("bend misspelt", Side("[[0, 0], [50, 0, ¶\"bnd\"], [90, 9]]"), "choice-unknown", "panels[0].bent.side[1][2]"),
        ("bend of a negative radius", Side("[[0, 0], [50, 0, ¶-2], [90, 9]]"), "length-negative", "panels[0].bent.side[1][2]"),
        ("fit of a side that is a curve", Side("\"hoop\", ¶\"sideFit\": \"smooth\""), "key-misplaced", "panels[0].bent.sideFit"),
        ("side run without steps", Side("{ \"run\": ¶[] }"), "curve-too-few-points", "panels[0].bent.side.run"),
        ("side without run", Side("¶{ \"heading\": 3 }"), "key-missing", "panels[0].bent.side.run"),
        ("step of no kind in a side", Side("{ \"run\": [¶{}] }"), "step-no-kind", "panels[0].bent.side.run[0]"),
        ("step of two kinds in a side", Side("{ \"run\": [¶{ \"line\": 3, \"bend\": 9 }] }"), "step-two-kinds", "panels[0].bent.side.run[0]"),
        ("line of no length in a side", Side("{ \"run\": [{ \"line\": ¶0 }] }"), "length-not-positive", "panels[0].bent.side.run[0].line"),
        ("line that turns in a side", Side("{ \"run\": [{ \"line\": 3, ¶\"radius\": 9 }] }"), "key-misplaced", "panels[0].bent.side.run[0].radius"),
        ("bend through nothing", Side("{ \"run\": [{ \"bend\": ¶0 }] }"), "curve-step-size", "panels[0].bent.side.run[0].bend"),
        ("bend through half a turn", Side("{ \"run\": [{ \"bend\": ¶-180 }] }"), "bend-angle", "panels[0].bent.side.run[0].bend"),
        ("arc of a side without turn", Side("{ \"run\": [¶{ \"arc\": 9 }] }"), "key-missing", "panels[0].bent.side.run[0].turn"),
    ];

    private static (string, string, string, string)[] Holes =>
    [
        ("holes a block", Hole("¶{}", list: false), "wrong-type", "panels[0].holes"),
        ("hole a number", Hole("¶3"), "wrong-type", "panels[0].holes[0]"),
        ("hole of no shape", Hole("¶{ \"at\": [0, 9] }"), "opening-no-shape", "panels[0].holes[0]"),
        ("hole of two shapes", Hole("¶{ \"round\": 9, \"slot\": [9, 3] }"), "opening-two-shapes", "panels[0].holes[0]"),
        ("hole of no size", Hole("{ \"round\": ¶0 }"), "length-not-positive", "panels[0].holes[0].round"),
        ("hole at a number", Hole("{ \"round\": 3, \"at\": ¶9 }"), "wrong-type", "panels[0].holes[0].at"),
        ("hole along a direction", Hole("{ \"round\": 3, ¶\"along\": [0, 0, 1] }"), "key-misplaced", "panels[0].holes[0].along"),
        ("slot wider than long", Hole("{ \"slot\": ¶[3, 9] }"), "slot-size", "panels[0].holes[0].slot"),
        ("rectangle of one size", Hole("{ \"rectangle\": ¶[9] }"), "point-shape", "panels[0].holes[0].rectangle"),
        ("corner too round", Hole("{ \"rectangle\": [9, 4], \"corner\": ¶3 }"), "corner-radius", "panels[0].holes[0].corner"),
        ("corner of a round hole", Hole("{ \"round\": 9, \"corner\": ¶3 }"), "key-misplaced", "panels[0].holes[0].corner"),
        ("empty name of a hole", Hole("{ \"name\": ¶\" \", \"round\": 3 }"), "name-empty", "panels[0].holes[0].name"),
        ("pattern without pitch", Hole("{ \"round\": 3, \"pattern\": ¶{ \"across\": 3 } }"), "key-missing", "panels[0].holes[0].pattern.pitch"),
        ("pattern of one", Hole("{ \"round\": 3, \"pattern\": ¶{ \"pitch\": 9 } }"), "pattern-count", "panels[0].holes[0].pattern"),
        ("pattern of half a hole", Hole("{ \"round\": 3, \"pattern\": { \"across\": ¶2.5, \"up\": 2, \"pitch\": 9 } }"), "number-range", "panels[0].holes[0].pattern.across"),
        ("pattern with a stray diameter", Hole("{ \"round\": 3, \"pattern\": { \"across\": 3, \"pitch\": 9, ¶\"diameter\": 9 } }"), "key-misplaced", "panels[0].holes[0].pattern.diameter"),
        ("pattern past a thousand", Hole("{ \"round\": 3, \"pattern\": { \"across\": ¶1001, \"pitch\": 9 } }"), "number-range", "panels[0].holes[0].pattern.across"),
        ("ring of one", Hole("{ \"round\": 3, \"pattern\": { \"ring\": ¶1, \"diameter\": 9 } }"), "number-range", "panels[0].holes[0].pattern.ring"),
        ("ring without diameter", Hole("{ \"round\": 3, \"pattern\": ¶{ \"ring\": 4 } }"), "key-missing", "panels[0].holes[0].pattern.diameter"),
        ("two holes of one name", Job("\"name\": \"p\", \"flat\": \"front\", \"holes\": [{ \"name\": \"a\", \"round\": 3 }, { \"name\": \"a\", \"round\": 4 }]").Replace("[{ \"name\": \"p\"", "[¶{ \"name\": \"p\"", StringComparison.Ordinal), "opening-name-twice", "panels[0]"),
        ("hole named like one of a pattern", Clash("\"flat\": \"front\", \"holes\": [{ \"name\": \"row\", \"round\": 3, \"pattern\": { \"across\": 3, \"pitch\": 9 } }, { \"name\": \"row 2\", \"round\": 4 }]"), "opening-name-twice", "panels[0]"),
        ("two patterns of one name", Clash("\"flat\": \"front\", \"holes\": [{ \"name\": \"row\", \"round\": 3, \"pattern\": { \"across\": 3, \"pitch\": 9 } }, { \"name\": \"row\", \"round\": 4, \"pattern\": { \"ring\": 3, \"diameter\": 90 } }]"), "opening-name-twice", "panels[0]"),
        ("hole named like a second chord", Clash("\"flat\": [\"front\", \"rear\"], \"holes\": [{ \"name\": \"chord 2\", \"round\": 3 }]"), "opening-name-twice", "panels[0]"),
    ];

    private static (string, string, string, string)[] Openings =>
    [
        ("opening that stands nowhere", Opening("¶{ \"round\": 3 }"), "key-missing", "panels[0].openings[0].at"),
        ("opening of an absent curve", Opening("{ \"curve\": ¶\"lamp\" }"), "curve-absent", "panels[0].openings[0].curve"),
        ("curve placed anew", Opening("{ \"curve\": \"front\", ¶\"at\": {} }"), "key-misplaced", "panels[0].openings[0].at"),
        ("opening of a curve and a circle", Opening("¶{ \"curve\": \"front\", \"round\": 3 }"), "opening-two-shapes", "panels[0].openings[0]"),
        ("direction of nothing", Opening("{ \"curve\": \"front\", \"along\": ¶[0, 0, 0] }"), "direction-shape", "panels[0].openings[0].along"),
        ("direction of two numbers", Opening("{ \"curve\": \"front\", \"along\": ¶[0, 1] }"), "direction-shape", "panels[0].openings[0].along"),
        ("panels of an opening of one", Opening("{ \"round\": 3, \"at\": {}, ¶\"through\": [\"p\"] }"), "key-unknown", "panels[0].openings[0].through"),
    ];

    private static (string, string, string, string)[] Shared =>
    [
        ("shared opening of one panel", Job("\"name\": \"p\", \"flat\": \"front\"", ", \"openings\": [{ \"round\": 3, \"at\": {}, \"through\": ¶[\"p\"] }]"), "through-one", "openings[0].through"),
        ("shared opening of nobody", Job("\"name\": \"p\", \"flat\": \"front\"", ", \"openings\": [¶{ \"round\": 3, \"at\": {} }]"), "key-missing", "openings[0].through"),
        ("shared opening of an absent panel", Job("\"name\": \"p\", \"flat\": \"front\"", ", \"openings\": [{ \"round\": 3, \"at\": {}, \"through\": [\"p\", ¶\"q\"] }]"), "panel-absent", "openings[0].through[1]"),
        ("shared opening of one panel twice", Job("\"name\": \"p\", \"flat\": \"front\"", ", \"openings\": [{ \"round\": 3, \"at\": {}, \"through\": [\"p\", ¶\"p\"] }]"), "through-twice", "openings[0].through[1]"),
    ];

    private static (string, string, string, string)[] Trims =>
    [
        ("trims a block", Panel("\"flat\": \"front\", \"trims\": ¶{}"), "wrong-type", "panels[0].trims"),
        ("trim without side", Trim("¶{ \"plane\": {} }"), "key-missing", "panels[0].trims[0].keep"),
        ("trim that keeps a word", Trim("{ \"plane\": {}, \"keep\": ¶\"top\" }"), "choice-unknown", "panels[0].trims[0].keep"),
        ("trim by nothing", Trim("¶{ \"keep\": \"up\" }"), "trim-no-way", "panels[0].trims[0]"),
        ("trim by an absent panel", Trim("{ \"by\": ¶\"q\", \"keep\": \"up\" }"), "panel-absent", "panels[0].trims[0].by"),
        ("trim of an empty name", Trim("{ \"name\": ¶\" \", \"plane\": {}, \"keep\": \"up\" }"), "name-empty", "panels[0].trims[0].name"),
        ("plane of a trim misspelt", Trim("{ ¶\"plan\": {}, \"keep\": \"up\" }"), "key-unknown", "panels[0].trims[0].plan"),
        ("trims of one name on a panel without name", "{ \"units\": \"mm\", " + Curves + ", \"panels\": [¶{ \"flat\": \"front\", \"trims\": [{ \"name\": \"a\", \"plane\": {}, \"keep\": \"up\" }, { \"name\": \"a\", \"plane\": {}, \"keep\": \"up\" }] }] }", "key-missing", "panels[0].name"),
        ("trim named like an edge", Trim("{ \"name\": \"chord\", \"plane\": {}, \"keep\": \"up\" }").Replace("[{ \"name\": \"p\"", "[¶{ \"name\": \"p\"", StringComparison.Ordinal), "opening-name-twice", "panels[0]"),
        ("trim by itself", Trim("{ \"by\": ¶\"p\", \"keep\": \"up\" }"), "trim-by-itself", "panels[0].trims[0].by"),
    ];

    private static string Sheet(string more) => "{ \"units\": \"mm\", \"measured\": \"outside\", \"sheet\": { " + more + " }, " + Curves + ", \"panels\": [{ \"name\": \"p\", \"flat\": \"front\" }] }";

    private static string Panel(string more) => Job("\"name\": \"p\", " + more);

    private static string Clash(string more) => Panel(more).Replace("[{ \"name\": \"p\"", "[¶{ \"name\": \"p\"", StringComparison.Ordinal);

    private static string Bent(string inside) => Panel("\"bent\": { " + inside + " }");

    private static string Side(string side) => Bent("\"plan\": \"hoop\", \"side\": " + side);

    private static string Hole(string hole, bool list = true) => Panel("\"flat\": \"front\", \"holes\": " + (list ? "[" + hole + "]" : hole));

    private static string Opening(string opening) => Panel("\"flat\": \"front\", \"openings\": [" + opening + "]");

    private static string Trim(string trim) => Panel("\"flat\": \"front\", \"trims\": [" + trim + "]");

    private static string Job(string panel, string more = "") => "{ \"units\": \"mm\", " + Curves + ", \"panels\": [{ " + panel + " }]" + more + " }";
}
