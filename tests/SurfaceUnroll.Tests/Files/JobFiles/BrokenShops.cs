namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>Jobs with one fault each in materials, gauges, machines or sheets, marked like <see cref="BrokenJobs"/>.</summary>
internal static class BrokenShops
{
    private const string Whole = "\"yield\": 240, \"tensile\": 340, \"elongation\": 28, \"uniformElongation\": 20, \"modulus\": 210, \"density\": 7850, \"minimumRadius\": 1";

    /// <summary>Name, text with the mark, code, path.</summary>
    public static IEnumerable<(string Name, string Text, string Code, string Path)> All => [.. OwnMaterials, .. Gauges, .. Shops, .. Stocks, .. Cuttings];

    private static (string, string, string, string)[] OwnMaterials =>
    [
        ("materials a list", Job("\"materials\": ¶[]"), "wrong-type", "materials"),
        ("material a number", Job("\"materials\": { \"ours\": ¶240 }"), "wrong-type", "materials.ours"),
        ("material without a name", Job("\"materials\": { ¶\"\": { \"like\": \"steel\" } }"), "name-empty", "materials."),
        ("two materials of one name", Job("\"materials\": { \"ours\": { \"like\": \"steel\" }, ¶\"ours\": { \"like\": \"brass\" } }"), "key-twice", "materials.ours"),
        ("material like none that is listed", Own("\"like\": ¶\"unobtainium\""), "material-unlisted", "materials.ours.like"),
        ("material like a number", Own("\"like\": ¶304"), "wrong-type", "materials.ours.like"),
        ("material like nothing and not whole", Job("\"materials\": { \"ours\": ¶{ " + Whole + " } }"), "key-missing", "materials.ours.like"),
        ("yield a text", Like("\"yield\": ¶\"240 MPa\""), "wrong-type", "materials.ours.yield"),
        ("yield of nothing", Like("\"yield\": ¶0"), "number-range", "materials.ours.yield"),
        ("tensile in pascals", Like("\"tensile\": ¶340000000"), "number-range", "materials.ours.tensile"),
        ("elongation as a fraction", Like("\"elongation\": ¶0.3"), "number-range", "materials.ours.elongation"),
        ("uniform elongation as a fraction", Like("\"uniformElongation\": ¶0.2"), "number-range", "materials.ours.uniformElongation"),
        ("modulus in MPa", Like("\"modulus\": ¶210000"), "number-range", "materials.ours.modulus"),
        ("density in grams", Like("\"density\": ¶7.85"), "number-range", "materials.ours.density"),
        ("K of a material past the middle", Like("\"k\": ¶0.6"), "number-range", "materials.ours.k"),
        ("least radius negative", Like("\"minimumRadius\": ¶-1"), "number-range", "materials.ours.minimumRadius"),
        ("unknown key of a material", Like("¶\"yeild\": 240"), "key-unknown", "materials.ours.yeild"),
        ("material that yields past its strength", Like("\"yield\": ¶400"), "material-strengths", "materials.ours.yield"),
        ("material that breaks before it necks", Like("\"elongation\": ¶10"), "material-elongation", "materials.ours.elongation"),
        ("sheet of a material that is not there", Job("\"materials\": { \"ours\": { \"like\": \"steel\" } }, \"sheet\": { \"material\": ¶\"yours\", \"thickness\": \"20 ga\" }"), "material-absent", "sheet.material"),
    ];

    private static (string, string, string, string)[] Cuttings =>
    [
        ("cutting a number", Job("\"cutting\": ¶0.2"), "wrong-type", "cutting"),
        ("kerf negative", Job("\"cutting\": { \"kerf\": ¶-0.2 }"), "length-negative", "cutting.kerf"),
        ("kerf of eleven millimetres", Job("\"cutting\": { \"kerf\": ¶11 }"), "kerf-too-wide", "cutting.kerf"),
        ("kerf a list", Job("\"cutting\": { \"kerf\": ¶[] }"), "wrong-type", "cutting.kerf"),
        ("dxf of a version that is not written", Job("\"cutting\": { \"dxf\": ¶\"r14\" }"), "choice-unknown", "cutting.dxf"),
        ("lettering misspelt", Job("\"cutting\": { \"lettering\": ¶\"stroke\" }"), "choice-unknown", "cutting.lettering"),
        ("unknown key of cutting", Job("\"cutting\": { ¶\"kurf\": 0.2 }"), "key-unknown", "cutting.kurf"),
    ];

    private static (string, string, string, string)[] Gauges =>
    [
        ("gauge of stainless", Sheet("\"material\": \"stainless\", \"thickness\": ¶\"20 ga\""), "gauge-no-table", "sheet.thickness"),
        ("gauge of an unknown metal", Sheet("\"material\": \"unobtainium\", \"thickness\": ¶\"20 ga\""), "gauge-no-table", "sheet.thickness"),
        ("gauge of no metal", Sheet("\"thickness\": ¶\"20 gauge\""), "gauge-no-table", "sheet.thickness"),
        ("gauge past the table", Sheet("\"material\": \"mild steel\", \"thickness\": ¶\"40 ga\""), "gauge-unknown", "sheet.thickness"),
        ("half a gauge", Sheet("\"material\": \"mild steel\", \"thickness\": ¶\"20.5 ga\""), "gauge-unknown", "sheet.thickness"),
        ("negative gauge", Sheet("\"material\": \"mild steel\", \"thickness\": ¶\"-20 ga\""), "gauge-unknown", "sheet.thickness"),
        ("gauge misspelt", Sheet("\"material\": \"mild steel\", \"thickness\": ¶\"20 gs\""), "length-unreadable", "sheet.thickness"),
    ];

    private static (string, string, string, string)[] Shops =>
    [
        ("shop a text", Job("\"shop\": ¶\"ours\""), "wrong-type", "shop"),
        ("unknown key of the shop", Job("\"shop\": { ¶\"rollwidth\": 900 }"), "key-unknown", "shop.rollwidth"),
        ("roll of no width", Job("\"shop\": { \"rollWidth\": ¶0 }"), "length-not-positive", "shop.rollWidth"),
        ("roll of a negative radius", Job("\"shop\": { \"rollMinRadius\": ¶-40 }"), "length-not-positive", "shop.rollMinRadius"),
        ("brake a list", Job("\"shop\": { \"brakeLength\": ¶[1] }"), "wrong-type", "shop.brakeLength"),
        ("shear of no thickness", Job("\"shop\": { \"shearThickness\": ¶0 }"), "length-not-positive", "shop.shearThickness"),
        ("lines too close", Job("\"shop\": { \"linePitch\": ¶3 }"), "pitch-too-small", "shop.linePitch"),
        ("tacks too close", Job("\"shop\": { \"tackPitch\": ¶1 }"), "pitch-too-small", "shop.tackPitch"),
    ];

    private static (string, string, string, string)[] Stocks =>
    [
        ("stock a number", Job("\"stock\": ¶2000"), "wrong-type", "stock"),
        ("sheet of the stock a pair", Job("\"stock\": [¶[2000, 1000]]"), "wrong-type", "stock[0]"),
        ("sheet without size", Job("\"stock\": ¶{ \"count\": 2 }"), "key-missing", "stock.size"),
        ("sheet of one side", Job("\"stock\": [{ \"size\": ¶[2000] }]"), "point-shape", "stock[0].size"),
        ("sheet of no width", Job("\"stock\": [{ \"size\": [2000, ¶0] }]"), "length-not-positive", "stock[0].size[1]"),
        ("half a sheet", Job("\"stock\": [{ \"size\": [2000, 1000], \"count\": ¶1.5 }]"), "number-range", "stock[0].count"),
        ("grain across", Job("\"stock\": [{ \"size\": [2000, 1000], \"grain\": ¶\"across\" }]"), "choice-unknown", "stock[0].grain"),
        ("nest a number", Job("\"nest\": ¶5"), "wrong-type", "nest"),
        ("gap below nothing", Job("\"nest\": { \"gap\": ¶-1 }"), "length-negative", "nest.gap"),
        ("gap past the widest", Job("\"nest\": { \"gap\": ¶100.5 }"), "nest-gap", "nest.gap"),
        ("half a turn", Job("\"nest\": { \"turns\": ¶\"half\" }"), "choice-unknown", "nest.turns"),
        ("unknown key of the nest", Job("\"nest\": { ¶\"distance\": 5 }"), "key-unknown", "nest.distance"),
        ("unknown key of a sheet of the stock", Job("\"stock\": { \"size\": [2000, 1000], ¶\"number\": 3 }"), "key-unknown", "stock.number"),
    ];

    private static string Like(string more) => Own("\"like\": \"mild steel\", " + more);

    private static string Own(string inside) => Job("\"materials\": { \"ours\": { " + inside + " } }");

    private static string Sheet(string inside) => Job("\"sheet\": { " + inside + " }");

    private static string Job(string more) =>
        "{ \"units\": \"mm\", \"measured\": \"outside\", \"curves\": { \"front\": { \"chord\": 240, \"rise\": 120 }, \"rear\": { \"chord\": 200, \"rise\": 90 } }, \"panels\": [{ \"name\": \"p\", \"loft\": [\"front\", \"rear\"] }], " + more + " }";
}
