namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>Jobs with one fault each in a joint, marked like <see cref="BrokenJobs"/>.</summary>
internal static class BrokenJoints
{
    /// <summary>Name, text with the mark, code, path.</summary>
    public static IEnumerable<(string Name, string Text, string Code, string Path)> All =>
    [
        ("joints a block", Job("¶{}"), "wrong-type", "joints"),
        ("joint a text", Job("[¶\"butt\"]"), "wrong-type", "joints[0]"),
        ("joint of no kind", Joint("¶{ \"edges\": [\"p/front\", \"q/rear\"] }"), "key-missing", "joints[0].kind"),
        ("joint of an unknown kind", Joint("{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": ¶\"hinge\" }"), "choice-unknown", "joints[0].kind"),
        ("lip misspelt, its width right", Joint("{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": ¶\"lipp\", \"width\": 9 }"), "choice-unknown", "joints[0].kind"),
        ("edge misspelt, its carrier right", Joint("{ \"edges\": [\"p/front\", ¶\"qq/rear\"], \"kind\": \"lap\", \"width\": 9, \"on\": \"q\" }"), "panel-absent", "joints[0].edges[1]"),
        ("joint without edges", Joint("¶{ \"kind\": \"butt\" }"), "key-missing", "joints[0].edges"),
        ("joint of one edge", Joint("{ \"edges\": ¶[\"p/front\"], \"kind\": \"butt\" }"), "joint-edges", "joints[0].edges"),
        ("lap of one edge", Joint("{ \"edges\": ¶[\"p/front\"], \"kind\": \"lap\", \"width\": 9 }"), "joint-edges", "joints[0].edges"),
        ("joint of three edges", Joint("{ \"edges\": ¶[\"p/front\", \"q/rear\", \"q/chord\"], \"kind\": \"butt\" }"), "joint-edges", "joints[0].edges"),
        ("joint of one edge twice", Joint("{ \"edges\": [\"p/front\", ¶\"p/front\"], \"kind\": \"butt\" }"), "joint-same-edge", "joints[0].edges[1]"),
        ("joint of a panel", Joint("{ \"edges\": [\"p/front\", ¶\"q\"], \"kind\": \"butt\" }"), "edge-shape", "joints[0].edges[1]"),
        ("joint with an absent panel", Joint("{ \"edges\": [\"p/front\", ¶\"r/rear\"], \"kind\": \"butt\" }"), "panel-absent", "joints[0].edges[1]"),
        ("lip without width", Joint("¶{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": \"lip\" }"), "key-missing", "joints[0].width"),
        ("trim without extra", Joint("¶{ \"edges\": [\"p/front\"], \"kind\": \"trim\" }"), "key-missing", "joints[0].extra"),
        ("lip of no width", Joint("{ \"edges\": [\"p/front\"], \"kind\": \"lip\", \"width\": ¶0 }"), "length-not-positive", "joints[0].width"),
        ("gap negative", Joint("{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": \"butt\", \"gap\": ¶-1 }"), "length-negative", "joints[0].gap"),
        ("width of a butt joint", Joint("{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": \"butt\", ¶\"width\": 9 }"), "key-misplaced", "joints[0].width"),
        ("angle of a lap", Joint("{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": \"lap\", \"width\": 9, ¶\"angle\": 9 }"), "key-misplaced", "joints[0].angle"),
        ("lap on a third piece", Joint("{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": \"lap\", \"width\": 9, \"on\": ¶\"r\" }"), "joint-on", "joints[0].on"),
        ("lap on either side of one piece", Joint("{ \"edges\": [\"p/front\", \"p/chord\"], \"kind\": \"lap\", \"width\": 9, \"on\": ¶\"p\" }"), "joint-on", "joints[0].on"),
        ("lip folded flat", Joint("{ \"edges\": [\"p/front\"], \"kind\": \"lip\", \"width\": 9, \"angle\": ¶180 }"), "bend-angle", "joints[0].angle"),
        ("lip bent sideways", Joint("{ \"edges\": [\"p/front\"], \"kind\": \"lip\", \"width\": 9, \"bend\": ¶\"left\" }"), "choice-unknown", "joints[0].bend"),
        ("relief of no pitch", Joint("{ \"edges\": [\"p/front\"], \"kind\": \"lip\", \"width\": 9, \"relief\": ¶0 }"), "length-not-positive", "joints[0].relief"),
        ("corners bevelled", Joint("{ \"edges\": [\"p/front\"], \"kind\": \"lip\", \"width\": 9, \"corners\": ¶\"bevel\" }"), "choice-unknown", "joints[0].corners"),
        ("marks a flag", Joint("{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": \"butt\", \"marks\": ¶false }"), "wrong-type", "joints[0].marks"),
        ("marks too close", Joint("{ \"edges\": [\"p/front\", \"q/rear\"], \"kind\": \"butt\", \"marks\": ¶4.9 }"), "pitch-too-small", "joints[0].marks"),
        ("notches too close", Joint("{ \"edges\": [\"p/front\"], \"kind\": \"lip\", \"width\": 9, \"relief\": ¶\"0.1 in\" }"), "pitch-too-small", "joints[0].relief"),
        ("joint of an absent edge", Joint("{ \"edges\": [\"p/front\", ¶\"q/raer\"], \"kind\": \"butt\" }"), "edge-absent", "joints[0].edges[1]"),
        ("joint of a second chord where there is one curve", Joint("{ \"edges\": [¶\"p/chord 2\"], \"kind\": \"trim\", \"extra\": 2 }"), "edge-absent", "joints[0].edges[0]"),
        ("joint named like a seam", Split("[{ \"name\": ¶\"B\", \"edges\": [\"cover/front\"], \"kind\": \"trim\", \"extra\": 2 }]"), "joint-name", "joints[0].name"),
        ("edge of a piece misspelt", Split("[{ \"edges\": [¶\"cover 1 of 2/frnt\"], \"kind\": \"trim\", \"extra\": 2 }]"), "edge-absent", "joints[0].edges[0]"),
        ("two joints of one name", Job("[{ \"name\": \"A\", \"edges\": [\"p/front\", \"q/rear\"], \"kind\": \"butt\" }, { \"name\": ¶\"A\", \"edges\": [\"p/chord\", \"q/chord\"], \"kind\": \"butt\" }]"), "joint-name-twice", "joints[1].name"),
    ];

    private static string Joint(string joint) => Job("[" + joint + "]");

    private static string Split(string joints) =>
        "{ \"units\": \"mm\", \"curves\": { \"front\": { \"chord\": 240, \"rise\": 120 }, \"rear\": { \"chord\": 200, \"rise\": 90 } }, "
        + "\"panels\": [{ \"name\": \"cover\", \"loft\": [\"front\", \"rear\"], \"pieces\": 2 }], \"joints\": " + joints + " }";

    private static string Job(string joints) =>
        "{ \"units\": \"mm\", \"curves\": { \"front\": { \"chord\": 240, \"rise\": 120 }, \"rear\": { \"chord\": 200, \"rise\": 90 } }, "
        + "\"panels\": [{ \"name\": \"p\", \"flat\": \"front\" }, { \"name\": \"q\", \"flat\": \"rear\" }], \"joints\": " + joints + " }";
}
