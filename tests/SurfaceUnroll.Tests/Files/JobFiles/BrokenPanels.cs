using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Flattening;

namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>Jobs with one fault each in how a panel is formed or in the mesh that it is given as, marked like <see cref="BrokenJobs"/>.</summary>
internal static class BrokenPanels
{
    private const string Curves = "\"curves\": { \"front\": { \"chord\": 240, \"rise\": 120 }, \"rear\": { \"chord\": 200, \"rise\": 90 } }";

    /// <summary>Name, text with the mark, code, path.</summary>
    public static IEnumerable<(string Name, string Text, string Code, string Path)> All => [.. Forming, .. Meshes, .. MeshFiles];

    private static (string, string, string, string)[] Forming =>
    [
        ("held edge a text", Loft("\"hold\": ¶\"front\""), "wrong-type", "panels[0].hold"),
        ("held edge unknown", Loft("\"hold\": [\"front\", ¶\"back\"]"), "choice-unknown", "panels[0].hold[1]"),
        ("held edge of a mesh", Loft("\"hold\": [¶\"rim\"]"), "choice-unknown", "panels[0].hold[0]"),
        ("held edge twice", Loft("\"hold\": [\"front\", \"left\", ¶\"front\"]"), "hold-twice", "panels[0].hold[2]"),
        ("shrinking cheaper than stretching", Loft("\"shrinkCost\": ¶0.5"), "shrink-cost", "panels[0].shrinkCost"),
        ("shrinking far too dear", Loft("\"shrinkCost\": ¶1000"), "shrink-cost", "panels[0].shrinkCost"),
        ("cost of shrinking NaN", Loft("\"shrinkCost\": ¶NaN"), "shrink-cost", "panels[0].shrinkCost"),
        ("cost of shrinking a text", Loft("\"shrinkCost\": ¶\"2\""), "wrong-type", "panels[0].shrinkCost"),
        ("panel named like a piece", Two("\"name\": \"cover\", \"pieces\": 2", "\"name\": ¶\"cover 1 of 2\""), "panel-name-twice", "panels[1].name"),
        ("panel with a piece named like another", Two("\"name\": \"Cover 2 of 3\"", "\"name\": ¶\"cover\", \"pieces\": 3"), "panel-name-twice", "panels[1].name"),
        ("no pieces", Loft("\"pieces\": ¶0"), "pieces-count", "panels[0].pieces"),
        ("seven pieces", Loft("\"pieces\": ¶7"), "pieces-count", "panels[0].pieces"),
        ("two and a half pieces", Loft("\"pieces\": ¶2.5"), "pieces-count", "panels[0].pieces"),
        ("pieces a text", Loft("\"pieces\": ¶\"2\""), "wrong-type", "panels[0].pieces"),
        ("seams misspelt", Loft("\"pieces\": 2, \"along\": ¶\"crosswise\""), "choice-unknown", "panels[0].along"),
        ("slits another word", Loft("\"slits\": ¶\"automatic\""), "choice-unknown", "panels[0].slits"),
        ("slits a number", Loft("\"slits\": ¶3"), "wrong-type", "panels[0].slits"),
        ("slit a number", Loft("\"slits\": [¶3]"), "wrong-type", "panels[0].slits[0]"),
        ("slit without edge", Loft("\"slits\": [¶{ \"at\": 3 }]"), "key-missing", "panels[0].slits[0].edge"),
        ("slit of an unknown edge", Loft("\"slits\": [{ \"edge\": ¶\"rim\" }]"), "choice-unknown", "panels[0].slits[0].edge"),
        ("slit before the edge begins", Loft("\"slits\": [{ \"edge\": \"front\", \"at\": ¶-3 }]"), "length-negative", "panels[0].slits[0].at"),
        ("slit without depth", Loft("\"slits\": [{ \"edge\": \"front\", \"at\": 3, \"depth\": ¶0 }]"), "length-not-positive", "panels[0].slits[0].depth"),
        ("unknown key of a slit", Loft("\"slits\": [{ \"edge\": \"front\", ¶\"length\": 3 }]"), "key-unknown", "panels[0].slits[0].length"),
        ("freedom a length", Loft("\"freedom\": ¶4"), "wrong-type", "panels[0].freedom"),
        ("freedom of no curve", Loft("\"freedom\": ¶{}"), "freedom-curves", "panels[0].freedom"),
        ("freedom of both curves", Loft("\"freedom\": ¶{ \"front\": 2, \"rear\": 4 }"), "freedom-curves", "panels[0].freedom"),
        ("freedom of none", Loft("\"freedom\": { \"rear\": ¶0 }"), "length-not-positive", "panels[0].freedom.rear"),
        ("freedom of another curve", Loft("\"freedom\": { ¶\"reer\": 4 }"), "freedom-curve", "panels[0].freedom.reer"),
        ("freedom with even lines", Loft("\"elements\": ¶\"even\", \"freedom\": { \"rear\": 4 }"), "freedom-even", "panels[0].elements"),
        ("curve moved by two sheets", Two("\"name\": \"a\", \"freedom\": { \"rear\": 4 }", "\"name\": \"b\", \"freedom\": { ¶\"rear\": 3 }"), "freedom-twice", "panels[1].freedom.rear"),
        ("curve moved by one sheet that another holds still", Two("\"name\": \"a\", \"freedom\": { \"rear\": 4 }", "\"name\": \"b\", \"freedom\": { ¶\"front\": 3 }"), "freedom-twice", "panels[1].freedom.front"),
        ("units of a mesh on a loft", Loft("¶\"meshUnits\": \"mm\""), "key-misplaced", "panels[0].meshUnits"),
    ];

    private static (string, string, string, string)[] Meshes =>
    [
        ("mesh misspelt", Job("\"name\": \"cover\", ¶\"mehs\": \"sheet.obj\""), "key-unknown", "panels[0].mehs"),
        ("mesh a number", Mesh("¶7"), "wrong-type", "panels[0].mesh"),
        ("mesh of another kind", Mesh("¶\"cover.ply\""), "mesh-file-kind", "panels[0].mesh"),
        ("mesh and loft", Mesh("\"sheet.obj\", ¶\"loft\": [\"front\", \"rear\"]"), "panel-two-kinds", "panels[0].loft"),
        ("mesh in metres", Mesh("\"sheet.obj\", \"meshUnits\": ¶\"m\""), "choice-unknown", "panels[0].meshUnits"),
        ("front edge of a mesh", Mesh("\"sheet.obj\", \"hold\": [¶\"front\"]"), "choice-unknown", "panels[0].hold[0]"),
        ("element lines of a mesh", Mesh("\"sheet.obj\", ¶\"elements\": \"even\""), "key-misplaced", "panels[0].elements"),
        ("pieces of a mesh", Mesh("\"sheet.obj\", ¶\"pieces\": 2"), "key-misplaced", "panels[0].pieces"),
        ("seams of a mesh", Mesh("\"sheet.obj\", ¶\"along\": \"across\""), "key-misplaced", "panels[0].along"),
        ("slits of a mesh", Mesh("\"sheet.obj\", ¶\"slits\": \"auto\""), "key-misplaced", "panels[0].slits"),
    ];

    private static (string, string, string, string)[] MeshFiles =>
    [
        .. new[]
        {
            ("absent.obj", "mesh-file"), ("empty.obj", "mesh-not-a-mesh"), ("empty.stl", "mesh-not-a-mesh"), ("points.obj", "mesh-no-faces"), ("number.obj", "mesh-number"),
            ("corners.obj", "mesh-corners"), ("index.obj", "mesh-index"), ("short.stl", "mesh-cut-short"), ("many.obj", "mesh-too-many"), ("huge.obj", "mesh-too-large"),
            ("closed.obj", "mesh-closed"), ("tube.obj", "mesh-tube"), ("hole.obj", "mesh-hole"), ("handle.obj", "mesh-handle"), ("pieces.obj", "mesh-pieces"),
            ("edge.obj", "mesh-edge-shared"), ("bow-tie.obj", "mesh-bow-tie"), ("twist.obj", "mesh-one-sided"), ("turned.obj", "mesh-face-turned"),
            ("repeats.obj", "mesh-face-repeats"), ("thin.obj", "mesh-face-thin"), ("seam.obj", "mesh-seam"),
        }.Select(m => ($"mesh {m.Item1}", Mesh($"¶\"{m.Item1}\""), m.Item2, "panels[0].mesh")),
        ("mesh too large in inches", Mesh("¶\"wide.obj\", \"meshUnits\": \"in\""), "mesh-too-large", "panels[0].mesh"),
    ];

    /// <summary>The files that these jobs name.</summary>
    public static byte[]? Open(string name) => name switch
    {
        "empty.obj" or "empty.stl" => [],
        "points.obj" => "v 0 0 0\nv 1 0 0\nv 0 1 0\n"u8.ToArray(),
        "number.obj" => "v 0 0 x\nv 1 0 0\nv 0 1 0\nf 1 2 3\n"u8.ToArray(),
        "corners.obj" => "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\nf 1 2\n"u8.ToArray(),
        "index.obj" => "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4\n"u8.ToArray(),
        "short.stl" => "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\n"u8.ToArray(),
        "many.obj" => Many.Value,
        "huge.obj" => "v 0 0 0\nv 200000 0 0\nv 0 1000 0\nf 1 2 3\n"u8.ToArray(),
        "wide.obj" => "v 0 0 0\nv 5000 0 0\nv 0 1000 0\nf 1 2 3\n"u8.ToArray(),
        _ => Shape(name) is { } mesh ? TestMeshes.Obj(mesh) : null,
    };

    private static TriangleMesh? Shape(string name) => name switch
    {
        "sheet.obj" => TestMeshes.Sheet(),
        "closed.obj" => TestMeshes.Ball,
        "tube.obj" => TestMeshes.Tube(),
        "hole.obj" => TestMeshes.Sheet().Without(90),
        "handle.obj" => TestMeshes.Torus().Without(0),
        "pieces.obj" => TestMeshes.Sheet().And(TestMeshes.Sheet(2), new Vec3(50, 0, 0)),
        "edge.obj" => TestMeshes.Leaves,
        "bow-tie.obj" => TestMeshes.BowTie,
        "twist.obj" => TestMeshes.Moebius(),
        "turned.obj" => TestMeshes.Sheet().Turned(f => f == 17),
        "repeats.obj" => TestMeshes.Sheet() with { Faces = [.. TestMeshes.Sheet().Faces, (3, 3, 4)] },
        "thin.obj" => TestMeshes.WithThinFace,
        "seam.obj" => TestMeshes.Sheet().Loose(),
        _ => null,
    };

    private static readonly Lazy<byte[]> Many = new(() =>
        [.. "v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\nf"u8, .. Enumerable.Repeat(" 1 2 3 4"u8.ToArray(), 500_001).SelectMany(corners => corners)]);

    private static string Loft(string keys) => Job("\"name\": \"cover\", \"loft\": [\"front\", \"rear\"],\n  " + keys);

    private static string Two(string first, string second) => Job($"\"loft\": [\"front\", \"rear\"], {first} }}, {{ \"loft\": [\"front\", \"rear\"], {second}");

    private static string Mesh(string mesh) => Job("\"name\": \"cover\",\n  \"mesh\": " + mesh);

    private static string Job(string panel) => "{ \"units\": \"mm\", " + Curves + ",\n \"panels\": [{ " + panel + " }] }";
}
