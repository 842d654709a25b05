using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.JobFiles;

/// <summary>Keys of materials, gauges, machines and sheets.</summary>
public class ShopKeysTests
{
    private const double Inch = 25.4;

    // In: the rows of published gauge tables.
    [Theory]
    [InlineData("mild steel", "20 ga", .0359)]
    [InlineData("mild steel", "20 Gauge", .0359)]
    [InlineData("steel", "18ga", .0478)]
    [InlineData("DC04", "18-ga", .0478)]
    [InlineData("galvanized steel", "20 ga.", .0396)]
    [InlineData("aluminium 5052-H32", " 16 ga ", .0508)]
    [InlineData("mild steel", ".0359 in", .0359)]
    public void A_gauge_is_looked_up_by_the_material(string material, string thickness, double inches)
    {
        SheetStock sheet = Read($"\"sheet\": {{ \"material\": \"{material}\", \"thickness\": \"{thickness}\" }}").Sheet;
        Assert.Equal(inches * Inch, sheet.Thickness, 1e-9);
        Assert.Equal(material, sheet.Material);
    }

    [Fact]
    public void A_gauge_without_table_names_the_tables_that_there_are()
    {
        Fault fault = Assert.Single(JobFile.Read(Text("\"sheet\": { \"material\": \"stainless\", \"thickness\": \"20 ga\" }")).Faults);
        Assert.Contains("Gauges are known for sheet steel (8 to 28), galvanized (8 to 28) and aluminium (1 to 36).", fault.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_defines_a_material_like_another()
    {
        Job job = Read("""
            "materials": { "Shop steel": { "like": "mild steel", "yield": 240, "tensile": 360, "elongation": 30, "uniformElongation": 24, "modulus": 205, "density": 7800, "k": 0.41, "minimumRadius": 0.8 },
                           "soft": { "like": "brass", "yield": 90 } },
            "sheet": { "material": "shop steel", "thickness": "20 ga" }
            """);
        Material metal = job.Sheet.Metal;
        Assert.Equal(("Shop steel", true), (metal.Name, metal.IsOwn));
        Assert.Equal((240, 360, 205_000, 7800, 0.8), (metal.Yield.Value, metal.Tensile.Value, metal.Modulus.Value, metal.Density.Value, metal.MinimumRadius.Value));
        Assert.Equal(0.30, metal.Elongation.Value, 1e-12);
        Assert.Equal(0.24, metal.UniformElongation, 1e-12);
        Assert.Equal("given in the job", metal.Yield.Source);
        // The table of another strength does not hold for it; where strength and modulus are left out it does.
        Assert.Empty(metal.Springback);
        Assert.Equal(Materials.All[0].Springback.AsEnumerable(), Read("""
            "materials": { "shop steel": { "like": "mild steel", "elongation": 30 } }, "sheet": { "material": "shop steel", "thickness": 1 }
            """).Sheet.Metal.Springback);
        Assert.Equal(.0359 * Inch, job.Sheet.Thickness, 1e-9);
        BendLength bend = BendAllowance.Of(job.Sheet, 3, 1);
        Assert.Equal((0.41, "given for the job's own material"), (bend.K, bend.Source));
    }

    [Fact]
    public void What_a_material_leaves_out_is_as_of_the_one_it_is_like_and_says_so()
    {
        Material metal = Read("\"materials\": { \"ours\": { \"like\": \"brass\", \"yield\": 90 } }, \"sheet\": { \"material\": \"ours\" }").Sheet.Metal, brass = Materials.Of("brass").Material;
        Assert.Equal((brass.Density.Value, brass.UniformElongation, brass.Bending), (metal.Density.Value, metal.UniformElongation, metal.Bending));
        Assert.Equal("like brass CuZn37, soft: from memory", metal.Density.Source);
    }

    [Fact]
    public void A_material_with_all_its_numbers_need_not_be_like_another()
    {
        Job job = Read("""
            "materials": { "mild steel": { "yield": 240, "tensile": 340, "elongation": 28, "uniformElongation": 20, "modulus": 210, "density": 7850, "k": 0.4, "minimumRadius": 1 } },
            "sheet": { "material": "mild steel" }
            """);
        // The job's own comes before the one of the list.
        Assert.True(job.Sheet.Metal.IsOwn);
        Assert.Equal(0.20, job.Sheet.Metal.UniformElongation, 1e-12);
        Assert.Null(job.Sheet.Metal.Gauges);
    }

    [Fact]
    public void The_verdict_goes_by_the_jobs_own_material_and_does_not_call_it_unknown()
    {
        const string twisted = "\"curves\": { \"front\": { \"points\": [[-50, 0], [50, 0]] }, \"rear\": { \"points\": [[-50, 0], [50, 0]], \"at\": { \"origin\": [100, 0, 0], \"roll\": 60 } } }";
        string text = "{ \"units\": \"mm\", " + twisted + ", \"panels\": [{ \"name\": \"p\", \"loft\": [\"front\", \"rear\"] }], "
            + "\"materials\": { \"paper tin\": { \"like\": \"steel\", \"uniformElongation\": 1 } }, \"sheet\": { \"material\": \"paper tin\" } }";
        Development development = Developer.Develop(JobFile.Read(text).Job!);
        Assert.Equal(0.01, Assert.Single(development.Panels).Limit);
        Notice notice = Assert.Single(development.Notices, n => n.Code == "past-the-limit");
        Assert.Contains("the uniform elongation of paper tin.", notice.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Machines_and_sheets_are_read_in_the_units_of_the_job()
    {
        Job job = Read("""
            "shop": { "rollWidth": 1050, "rollMinRadius": "1 1/2 in", "brakeLength": 1250, "shearThickness": 2, "linePitch": 30, "tackPitch": 40 },
            "stock": [ { "size": [1000, 2000], "count": 3, "grain": "short" }, { "size": ["8 ft", "4 ft"] } ]
            """);
        Assert.Equal(new ShopSpec(1050, 38.1, 1250, 2, 30, 40), job.Shop with { RollMinRadius = Math.Round(job.Shop.RollMinRadius!.Value, 9) });
        Assert.Equal(2, job.Stock.Length);
        Assert.Equal(new StockSheet(2000, 1000, 3, true), job.Stock[0]);
        Assert.Equal((2438.4, 1219.2), (Math.Round(job.Stock[1].Length, 9), Math.Round(job.Stock[1].Width, 9)));
        Assert.Equal((null, false), (job.Stock[1].Count, job.Stock[1].GrainAcross));
    }

    [Fact]
    public void Gap_and_turns_of_the_nest_are_read()
    {
        Assert.Equal(new NestSpec(5, NestTurns.Quarter), Read("\"nest\": {}").Nest);
        Assert.Equal(new NestSpec(6.35, NestTurns.Any), Read("\"nest\": { \"gap\": \"1/4 in\", \"turns\": \"any\" }").Nest);
        Assert.Equal(new NestSpec(100, NestTurns.None), Read("\"nest\": { \"gap\": 100, \"turns\": \"none\" }").Nest);
    }

    [Fact]
    public void A_single_sheet_needs_no_list_and_nothing_said_is_nothing_known()
    {
        Assert.Equal(new StockSheet(2500, 1250, null, false), Assert.Single(Read("\"stock\": { \"size\": [2500, 1250] }").Stock));
        Job job = Read("\"shop\": {}");
        Assert.Equal(ShopSpec.Unknown, job.Shop);
        Assert.Empty(job.Stock);
    }

    // Arcs of radius 300 over a straight run of 600: the front edge is a half circle, 942 mm.
    [Theory]
    [InlineData("", 33)]
    [InlineData("\"linePitch\": 25", 39)]
    [InlineData("\"linePitch\": 50", 19)]
    [InlineData("\"linePitch\": 200", 5)]
    [InlineData("\"linePitch\": 5000", 3)]
    public void Lines_are_numbered_at_the_pitch_of_the_shop(string pitch, int lines)
    {
        string text = "{ \"units\": \"mm\", \"curves\": { \"front\": { \"chord\": 600, \"rise\": 300 }, \"rear\": { \"chord\": 600, \"rise\": 300, \"at\": { \"origin\": [400, 0, 0] } } }, "
            + "\"panels\": [{ \"name\": \"p\", \"loft\": [\"front\", \"rear\"] }], \"shop\": { " + pitch + " } }";
        PanelDevelopment panel = Assert.Single(Developer.Develop(JobFile.Read(text).Job!).Panels);
        Assert.Equal(lines, panel.Elements.Count(e => e.Number > 0));
    }

    // A roll of 90 degrees, 471 mm long.
    [Theory]
    [InlineData("", 20)]
    [InlineData("\"linePitch\": 100", 6)]
    public void Lines_of_a_rolled_plate_stand_at_the_pitch_of_the_shop(string pitch, int lines)
    {
        string text = "{ \"units\": \"mm\", \"panels\": [{ \"name\": \"p\", \"bent\": { \"width\": 300, \"side\": { \"run\": [{ \"line\": 50 }, { \"arc\": 300, \"turn\": 90 }, { \"line\": 50 }] } } }], \"shop\": { " + pitch + " } }";
        PanelDevelopment panel = Assert.Single(Developer.Develop(JobFile.Read(text).Job!).Panels);
        Assert.Equal(lines, panel.Elements.Max(e => e.Number));
    }

    private static Job Read(string more)
    {
        JobReading reading = JobFile.Read(Text(more));
        Assert.Empty(reading.Faults);
        return reading.Job!;
    }

    private static string Text(string more) =>
        "{ \"units\": \"mm\", \"measured\": \"outside\", \"curves\": { \"front\": { \"chord\": 240, \"rise\": 120 }, \"rear\": { \"chord\": 200, \"rise\": 90 } }, \"panels\": [{ \"name\": \"p\", \"loft\": [\"front\", \"rear\"] }], " + more + " }";
}
