using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads what the files for cutting machines are to be.</summary>
public static class CuttingReader
{
    private const string Example = "{ \"kerf\": 0.2, \"dxf\": \"r2000\", \"lettering\": \"text\" }";

    /// <summary>Versions of DXF in the words of a job.</summary>
    public static (string Word, DxfVersion Version)[] DxfWords { get; } = [("r2000", DxfVersion.R2000), ("r12", DxfVersion.R12)];

    /// <summary>The cutting of a job; the finished line as R2000 where it does not say.</summary>
    internal static CuttingSpec Read(JobBlock job, Measures measures)
    {
        CuttingSpec fallback = CuttingSpec.Default;
        if (job.Find("cutting") is not { } tree || JobBlock.Of(tree, "cutting", job.Faults, Example) is not { } block) return fallback;
        block.CheckKeys(["kerf", "dxf", "lettering"]);
        return new CuttingSpec(
            Kerf(block, measures),
            measures.Choice(block, "dxf", fallback.Dxf, DxfWords),
            measures.Choice(block, "lettering", fallback.Lettering, ("text", CutLettering.Text), ("strokes", CutLettering.Strokes)));
    }

    private static double Kerf(JobBlock block, Measures measures)
    {
        if (block.Find("kerf") is not { } tree) return CuttingSpec.Default.Kerf;
        double kerf = measures.Length(tree, block.PathOf("kerf"), Allowed.NotNegative);
        if (kerf > CuttingSpec.WidestKerf)
        {
            measures.Faults.Add("kerf-too-wide", block.PathOf("kerf"), tree.Place, $"A kerf of {measures.Show(kerf)} is wider than any cut of sheet metal; the most is {measures.Show(CuttingSpec.WidestKerf)}.",
                "Check the decimal point and the unit: a laser cuts 0.1 to 0.3 mm wide, plasma 1 to 3 mm.");
        }
        return kerf;
    }
}
