namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>Jobs with one fault each. The sign ¶ stands just before the place at which the fault must be reported.</summary>
internal static class BrokenJobs
{
    private const string Curves = """{ "front": { "chord": 240, "rise": 120 }, "rear": { "chord": 200, "rise": 90, "at": { "origin": [400, 0, 0] } } }""";
    private const string Panels = """[ { "name": "cover", "loft": ["front", "rear"] } ]""";

    /// <summary>Name, text with the mark, code, path.</summary>
    public static IEnumerable<(string Name, string Text, string Code, string Path)> All =>
        [.. WholeFile, .. Heads, .. Points, .. Kinds, .. Runs, .. Placements, .. SideViews, .. PanelFaults, .. BrokenPanels.All, .. BrokenPlates.All, .. BrokenJoints.All, .. BrokenShops.All, .. BrokenFiles.All, .. BrokenErrors.All, .. Papers];

    private static (string, string, string, string)[] WholeFile =>
    [
        ("empty file", "¶", "file-empty", ""),
        ("only spaces", "¶  \n \n", "file-empty", ""),
        ("only a comment", "// nothing yet¶", "json-ends-early", ""),
        ("not JSON at all", "¶solid cover\nfacet normal 0 0 1", "json-broken", ""),
        ("binary", "¶\u0000\u0001PK", "json-broken", ""),
        ("cut short", "{ \"units\": \"mm\", \"curves\": {¶", "json-ends-early", ""),
        ("comma missing", "{ \"units\": \"mm\"\n  ¶\"curves\": {} }", "json-broken", ""),
        ("single quotes", "{ ¶'units': 'mm' }", "json-broken", ""),
        ("text after the end", Job() + "\n¶}", "json-goes-on", ""),
        ("two jobs in one file", Job() + "\n¶" + Job(), "json-goes-on", ""),
        ("a list", "¶[ 1, 2 ]", "job-not-block", ""),
        ("a number", "\n  ¶12", "job-not-block", ""),
        ("nested without end", string.Concat(Enumerable.Repeat("[", 32)) + "¶" + string.Concat(Enumerable.Repeat("[", 5000)), "json-too-deep", ""),
        ("half a character", "{ \"job\": ¶\"\\ud800\" }", "json-broken", ""),
    ];

    private static (string, string, string, string)[] Heads =>
    [
        ("unknown key", Job(more: ", ¶\"pannels\": []"), "key-unknown", "pannels"),
        ("key twice", Job(more: ", ¶\"units\": \"in\""), "key-twice", "units"),
        ("units missing", "¶{ \"curves\": " + Curves + ", \"panels\": " + Panels + " }", "key-missing", "units"),
        ("unknown unit", Job(units: "¶\"cm\""), "choice-unknown", "units"),
        ("unit in capitals", Job(units: "¶\"MM\""), "choice-unknown", "units"),
        ("units a number", Job(units: "¶25.4"), "wrong-type", "units"),
        ("job name a number", Job(more: ", \"job\": ¶7"), "wrong-type", "job"),
        ("unknown face", Job(more: ", \"measured\": ¶\"outer\""), "choice-unknown", "measured"),
        ("face not said", "¶" + Job(more: ", \"sheet\": { \"thickness\": 1 }"), "key-missing", "measured"),
        ("negative thickness", Job(more: ", \"measured\": \"outside\", \"sheet\": { \"thickness\": ¶-0.9 }"), "length-negative", "sheet.thickness"),
        ("thickness of plate", Job(more: ", \"measured\": \"outside\", \"sheet\": { \"thickness\": ¶90 }"), "sheet-too-thick", "sheet.thickness"),
        ("sheet a text", Job(more: ", \"sheet\": ¶\"mild steel\""), "wrong-type", "sheet"),
        ("unknown key of the sheet", Job(more: ", \"sheet\": { ¶\"thikness\": 0 }"), "key-unknown", "sheet.thikness"),
        ("no curves", "¶{ \"units\": \"mm\", \"panels\": [] }", "key-missing", "curves"),
        ("curves empty", Job(curves: "¶{}"), "curves-none", "curves"),
        ("curves a list", Job(curves: "¶[]"), "wrong-type", "curves"),
        ("curve without a name", Job(front: "{ \"chord\": 9, \"rise\": 1 }, ¶\"\": { \"chord\": 9, \"rise\": 1 }"), "name-empty", "curves."),
        ("two curves of one name", Job(front: "{ \"chord\": 9, \"rise\": 1 }, ¶\"front\": { \"chord\": 9, \"rise\": 2 }"), "key-twice", "curves.front"),
    ];

    private static (string, string, string, string)[] Points =>
    [
        ("fair without a bound", Job(front: "¶{ \"points\": [[0, 1], [2, 3]], \"fit\": \"fair\" }"), "key-missing", "curves.front.within"),
        ("bound without fair", Front("\"points\": [[0, 1], [2, 3]], \"within\": ¶1"), "key-misplaced", "curves.front.within"),
        ("bound of nothing", Front("\"points\": [[0, 1], [2, 3]], \"fit\": \"fair\", \"within\": ¶0"), "length-not-positive", "curves.front.within"),
        ("bound too small", Front("\"points\": [[0, 1], [2, 3]], \"fit\": \"fair\", \"within\": ¶0.0001"), "number-range", "curves.front.within"),
        ("no point", Front("\"points\": ¶[]"), "curve-too-few-points", "curves.front.points"),
        ("one point", Front("\"points\": ¶[[0, 1]]"), "curve-too-few-points", "curves.front.points"),
        ("points not a list", Front("\"points\": ¶5"), "wrong-type", "curves.front.points"),
        ("point not a pair", Front("\"points\": [[0, 1], ¶7, [3, 4]]"), "wrong-type", "curves.front.points[1]"),
        ("point of one measure", Front("\"points\": [[0, 1], ¶[7], [3, 4]]"), "point-shape", "curves.front.points[1]"),
        ("point of three measures", Front("\"points\": [[0, 1], ¶[7, 8, 9], [3, 4]]"), "point-shape", "curves.front.points[1]"),
        ("corner misspelt", Front("\"points\": [[0, 1], [7, 8, ¶\"cornr\"], [3, 4]]"), "choice-unknown", "curves.front.points[1][2]"),
        ("NaN", Front("\"points\": [[0, ¶NaN], [7, 8], [3, 4]]"), "not-a-number", "curves.front.points[0][1]"),
        ("Infinity", Front("\"points\": [[0, ¶Infinity], [7, 8], [3, 4]]"), "number-too-large", "curves.front.points[0][1]"),
        ("minus Infinity", Front("\"points\": [[0, ¶-Infinity], [7, 8], [3, 4]]"), "number-too-large", "curves.front.points[0][1]"),
        ("NaN as a text", Front("\"points\": [[0, ¶\"NaN\"], [7, 8], [3, 4]]"), "length-unreadable", "curves.front.points[0][1]"),
        ("huge number", Front("\"points\": [[0, ¶1e9], [7, 8], [3, 4]]"), "number-too-large", "curves.front.points[0][1]"),
        ("number past all range", Front("\"points\": [[0, ¶1e999], [7, 8], [3, 4]]"), "number-too-large", "curves.front.points[0][1]"),
        ("longer than 100 m by its unit", Front("\"points\": [[0, ¶\"100.1 m\"], [7, 8], [3, 4]]"), "number-too-large", "curves.front.points[0][1]"),
        ("unknown unit of a length", Front("\"points\": [[0, ¶\"12 furlong\"], [7, 8], [3, 4]]"), "length-unreadable", "curves.front.points[0][1]"),
        ("null for a length", Front("\"points\": [[0, ¶null], [7, 8], [3, 4]]"), "wrong-type", "curves.front.points[0][1]"),
        ("same point twice", Front("\"points\": [[0, 1], [7, 8], ¶[7, 8], [3, 4]]"), "curve-points-repeat", "curves.front.points[2]"),
        ("same point in other units", Front("\"points\": [[0, 1], [25.4, 8], ¶[\"1 in\", \"0.8 cm\"], [3, 4]]"), "curve-points-repeat", "curves.front.points[2]"),
        ("mirror off the centreline", Front("\"points\": [¶[5, 100], [60, 80], [90, 0]], \"mirror\": true"), "curve-not-on-centreline", "curves.front.points[0]"),
        ("mirror past the centreline", Front("\"points\": [[0, 100], ¶[-60, 80], [90, 0]], \"mirror\": true"), "curve-not-on-centreline", "curves.front.points[1]"),
        ("mirror in quotes", Front("\"points\": [[0, 100], [60, 80]], \"mirror\": ¶\"true\""), "wrong-type", "curves.front.mirror"),
        ("unknown fit", Front("\"points\": [[0, 100], [60, 80]], \"fit\": ¶\"smoth\""), "choice-unknown", "curves.front.fit"),
        ("points in space of two measures", Front("\"xyz\": [[0, 0, 0], ¶[1, 2]]"), "point-shape", "curves.front.xyz[1]"),
        ("same point in space twice", Front("\"xyz\": [[0, 0, 0], ¶[0, 0, 0]]"), "curve-points-repeat", "curves.front.xyz[1]"),
    ];

    private static (string, string, string, string)[] Kinds =>
    [
        ("curve a list", Job(front: "¶[[0, 1], [2, 3]]"), "wrong-type", "curves.front"),
        ("curve of no kind", Job(front: "¶{}"), "curve-no-kind", "curves.front"),
        ("curve placed, but of no kind", Job(front: "¶{ \"at\": { \"lean\": 3 } }"), "curve-no-kind", "curves.front"),
        ("kind misspelt", Front("¶\"point\": [[0, 1], [2, 3]]"), "key-unknown", "curves.front.point"),
        ("two kinds", Front("\"chord\": 240, \"rise\": 120, ¶\"points\": [[0, 1], [2, 3]]"), "curve-two-kinds", "curves.front.points"),
        ("key of another kind", Front("\"chord\": 240, \"rise\": 120, ¶\"mirror\": true"), "key-misplaced", "curves.front.mirror"),
        ("chord without rise", Job(front: "¶{ \"chord\": 240 }"), "key-missing", "curves.front.rise"),
        ("rise without chord", Job(front: "¶{ \"rise\": 240 }"), "key-missing", "curves.front.chord"),
        ("rise of zero", Front("\"chord\": 240, \"rise\": ¶0"), "curve-step-size", "curves.front.rise"),
        ("chord of zero", Front("\"chord\": ¶0, \"rise\": 10"), "length-not-positive", "curves.front.chord"),
        ("chord negative", Front("\"chord\": ¶\"-9 1/2 in\", \"rise\": 10"), "length-not-positive", "curves.front.chord"),
    ];

    private static (string, string, string, string)[] Runs =>
    [
        ("run without steps", Front("\"run\": ¶[]"), "curve-too-few-points", "curves.front.run"),
        ("run not a list", Front("\"run\": ¶{ \"line\": 5 }"), "wrong-type", "curves.front.run"),
        ("step a number", Front("\"run\": [¶55]"), "wrong-type", "curves.front.run[0]"),
        ("step empty", Front("\"run\": [¶{}]"), "step-no-kind", "curves.front.run[0]"),
        ("step of two kinds", Front("\"run\": [¶{ \"line\": 5, \"arc\": 5 }]"), "step-two-kinds", "curves.front.run[0]"),
        ("line that turns", Front("\"run\": [{ \"line\": 5, ¶\"turn\": 5 }]"), "key-misplaced", "curves.front.run[0].turn"),
        ("line of zero", Front("\"run\": [{ \"line\": ¶0 }]"), "length-not-positive", "curves.front.run[0].line"),
        ("radius negative", Front("\"run\": [{ \"arc\": ¶-120, \"turn\": 90 }]"), "length-not-positive", "curves.front.run[0].arc"),
        ("arc without turn", Front("\"run\": [¶{ \"arc\": 120 }]"), "key-missing", "curves.front.run[0].turn"),
        ("turn of zero", Front("\"run\": [{ \"arc\": 120, \"turn\": ¶0 }]"), "curve-step-size", "curves.front.run[0].turn"),
        ("turn more than once round", Front("\"run\": [{ \"arc\": 120, \"turn\": ¶400 }]"), "angle-too-large", "curves.front.run[0].turn"),
        ("turn with its unit", Front("\"run\": [{ \"arc\": 120, \"turn\": ¶\"90°\" }]"), "wrong-type", "curves.front.run[0].turn"),
        ("start of three measures", Front("\"run\": [{ \"line\": 9 }], \"start\": ¶[1, 2, 3]"), "point-shape", "curves.front.start"),
    ];

    private static (string, string, string, string)[] Placements =>
    [
        ("placement a list", Front("\"chord\": 9, \"rise\": 1, \"at\": ¶[0, 0, 0]"), "wrong-type", "curves.front.at"),
        ("placement misspelt", Front("\"chord\": 9, \"rise\": 1, \"at\": { ¶\"leen\": 25 }"), "key-unknown", "curves.front.at.leen"),
        ("origin of two measures", Front("\"chord\": 9, \"rise\": 1, \"at\": { \"origin\": ¶[0, 0] }"), "point-shape", "curves.front.at.origin"),
        ("lean past once round", Front("\"chord\": 9, \"rise\": 1, \"at\": { \"lean\": ¶2500 }"), "angle-too-large", "curves.front.at.lean"),
        ("lean NaN", Front("\"chord\": 9, \"rise\": 1, \"at\": { \"lean\": ¶NaN }"), "not-a-number", "curves.front.at.lean"),
    ];

    private static (string, string, string, string)[] SideViews =>
    [
        ("side without plan", Job(front: "¶{ \"side\": [[0, 0], [9, 1]] }"), "key-missing", "curves.front.plan"),
        ("plan without side", Job(front: "¶{ \"plan\": { \"chord\": 9, \"rise\": 1 } }"), "key-missing", "curves.front.side"),
        ("side of one place", Front("\"plan\": { \"chord\": 9, \"rise\": 1 }, \"side\": ¶[[0, 0]]"), "curve-too-few-points", "curves.front.side"),
        ("side not going aft", Front("\"plan\": { \"chord\": 9, \"rise\": 1 }, \"side\": [[0, 0], [9, 1], ¶[9, 2]]"), "curve-side-range", "curves.front.side[2]"),
        ("plan in space", Front("\"plan\": { \"xyz\": ¶[[0, 0, 0], [1, 1, 1]] }, \"side\": [[0, 0], [9, 1]]"), "curve-plan-kind", "curves.front.plan.xyz"),
        ("plan of a plan", Front("\"plan\": { \"plan\": ¶{} }, \"side\": [[0, 0], [9, 1]]"), "curve-plan-kind", "curves.front.plan.plan"),
        ("plan placed", Front("\"plan\": { \"chord\": 9, \"rise\": 1, \"at\": ¶{} }, \"side\": [[0, 0], [9, 1]]"), "plan-placed", "curves.front.plan.at"),
        ("unknown fit of the side", Front("\"plan\": { \"chord\": 9, \"rise\": 1 }, \"side\": [[0, 0], [9, 1]], \"sideFit\": ¶\"round\""), "choice-unknown", "curves.front.sideFit"),
    ];

    private static (string, string, string, string)[] PanelFaults =>
    [
        ("no panels", "¶{ \"units\": \"mm\", \"curves\": " + Curves + " }", "key-missing", "panels"),
        ("panels empty", Job(panels: "¶[]"), "panels-none", "panels"),
        ("panels a block", Job(panels: "¶{}"), "wrong-type", "panels"),
        ("panel a text", Job(panels: "[¶\"cover\"]"), "wrong-type", "panels[0]"),
        ("panel without name", Job(panels: "[¶{ \"loft\": [\"front\", \"rear\"] }]"), "key-missing", "panels[0].name"),
        ("panel name a number", Job(panels: "[{ \"name\": ¶7, \"loft\": [\"front\", \"rear\"] }]"), "wrong-type", "panels[0].name"),
        ("panel name of signs", Named("¶\"***\""), "panel-name", "panels[0].name"),
        ("panel name kept by Windows", Named("¶\"Con\""), "panel-name", "panels[0].name"),
        ("port as panel name", Named("¶\"LPT1\""), "panel-name", "panels[0].name"),
        ("panel name too long", Named("¶\"" + new string('a', 300) + "\""), "panel-name", "panels[0].name"),
        ("panel name twice", Named("\"cover\"", "¶\"cover\""), "panel-name-twice", "panels[1].name"),
        ("files of one name", Named("\"Cover 1\"", "¶\"cover-1!\""), "panel-name-twice", "panels[1].name"),
        ("name of another's preview", Named("\"cover\"", "¶\"cover preview\""), "panel-name-twice", "panels[1].name"),
        ("panel of no kind", Job(panels: "[¶{ \"name\": \"cover\" }]"), "panel-no-kind", "panels[0]"),
        ("panel kind misspelt", Job(panels: "[{ \"name\": \"cover\", ¶\"lofted\": [\"front\", \"rear\"] }]"), "key-unknown", "panels[0].lofted"),
        ("panel of two kinds", Job(panels: "[{ \"name\": \"cover\", \"loft\": [\"front\", \"rear\"], ¶\"flat\": \"front\" }]"), "panel-two-kinds", "panels[0].flat"),
        ("loft empty", Loft("¶[]"), "loft-empty", "panels[0].loft"),
        ("loft of one curve", Loft("¶[\"front\"]"), "loft-one-curve", "panels[0].loft"),
        ("same curve twice in a loft of three", Loft("[\"front\", \"rear\", ¶\"front\"]"), "loft-same-curve", "panels[0].loft[2]"),
        ("loft a text", Loft("¶\"front\""), "wrong-type", "panels[0].loft"),
        ("loft of numbers", Loft("[\"front\", ¶2]"), "wrong-type", "panels[0].loft[1]"),
        ("absent curve", Loft("[\"front\", ¶\"raer\"]"), "curve-absent", "panels[0].loft[1]"),
        ("same curve twice", Loft("[\"front\", ¶\"front\"]"), "loft-same-curve", "panels[0].loft[1]"),
        ("unknown matching", Job(panels: "[{ \"name\": \"cover\", \"loft\": [\"front\", \"rear\"], \"elements\": ¶\"bendonly\" }]"), "choice-unknown", "panels[0].elements"),
    ];

    private static (string, string, string, string)[] Papers =>
    [
        ("unknown paper", Job(more: ", \"paper\": ¶\"A11\""), "paper-size", "paper"),
        ("unknown paper in a block", Job(more: ", \"paper\": { \"size\": ¶\"lettre 2\" }"), "paper-size", "paper.size"),
        ("roll without width", Job(more: ", \"paper\": { \"size\": ¶\"roll\" }"), "paper-size", "paper.size"),
        ("roll of no key", Job(more: ", \"paper\": { \"size\": ¶{ } }"), "key-missing", "paper.size.roll"),
        ("roll as wide as a hall", Job(more: ", \"paper\": { \"size\": ¶{ \"roll\": 6000 } }"), "paper-size", "paper.size"),
        ("paper of one side", Job(more: ", \"paper\": { \"size\": ¶[300] }"), "point-shape", "paper.size"),
        ("paper without width", Job(more: ", \"paper\": { \"size\": ¶[0, 300] }"), "length-not-positive", "paper.size"),
        ("paper size a flag", Job(more: ", \"paper\": { \"size\": ¶true }"), "wrong-type", "paper.size"),
        ("paper too small", Job(more: ", \"paper\": ¶\"A9\""), "paper-margin", "paper"),
        ("paper too small in a block", Job(more: ", \"paper\": { \"size\": ¶\"B8\" }"), "paper-margin", "paper.size"),
        ("one margin eats the paper", Job(more: ", \"paper\": { \"margin\": ¶{ \"left\": 130 } }"), "paper-margin", "paper.margin"),
        ("unknown margin", Job(more: ", \"paper\": { \"margin\": { ¶\"foot\": 13 } }"), "key-unknown", "paper.margin.foot"),
        ("roll on its side", Job(more: ", \"paper\": { \"size\": \"roll 610\", \"orientation\": ¶\"landscape\" }"), "paper-roll-orientation", "paper.orientation"),
        ("turn of two circles", Job(more: ", \"paper\": { \"turn\": ¶720 }"), "number-range", "paper.turn"),
        ("turn of an unknown word", Job(more: ", \"paper\": { \"turn\": ¶\"least\" }"), "choice-unknown", "paper.turn"),
        ("together a word", Job(more: ", \"paper\": { \"together\": ¶\"yes\" }"), "wrong-type", "paper.together"),
        ("paper a number", Job(more: ", \"paper\": ¶4"), "wrong-type", "paper"),
        ("paper twice", Job(more: ", \"paper\": \"A4\", ¶\"paper\": \"Letter\""), "key-twice", "paper"),
        ("unknown orientation", Job(more: ", \"paper\": { \"orientation\": ¶\"upright\" }"), "choice-unknown", "paper.orientation"),
        ("margin negative", Job(more: ", \"paper\": { \"margin\": ¶-1 }"), "length-negative", "paper.margin"),
        ("margin eats the paper", Job(more: ", \"paper\": { \"margin\": ¶65 }"), "paper-margin", "paper.margin"),
        ("overlap eats the paper", Job(more: ", \"paper\": { \"overlap\": ¶90 }"), "paper-overlap", "paper.overlap"),
    ];

    private static string Front(string keys) => Job(front: "{ " + keys + " }");

    private static string Loft(string loft) => Job(panels: "[{ \"name\": \"cover\",\n  \"loft\": " + loft + " }]");

    private static string Named(params string[] names) =>
        Job(panels: "[" + string.Join(",\n", names.Select(n => "{ \"name\": " + n + ", \"loft\": [\"front\", \"rear\"] }")) + "]");

    private static string Job(string units = "\"mm\"", string? front = null, string? curves = null, string panels = Panels, string more = "")
    {
        // A panel of curves that are not there would be a second fault.
        bool noCurves = curves is not null;
        curves ??= front is null ? Curves : "{ \"front\": " + front + ",\n  \"rear\": { \"chord\": 200, \"rise\": 90 } }";
        string job = "{ \"units\": " + units + ",\n  \"curves\": " + curves;
        return noCurves ? job + ",\n  \"panels\": [] }" : job + ",\n  \"panels\": " + panels + more + " }";
    }
}
