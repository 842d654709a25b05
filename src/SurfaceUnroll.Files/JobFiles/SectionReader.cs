using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads a plane's cut through a scan.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="open">Opens a file by its name in the job.</param>
internal sealed class SectionReader(Measures measures, Func<string, FileReading> open)
{
    private const string Example = "{ \"mesh\": \"scan.stl\", \"plane\": { \"origin\": [120, 0, 0] } }";

    private const double LeastNoise = 0.001;

    /// <summary>The section of a curve; null with faults.</summary>
    public SectionSpec? Read(JobBlock curve)
    {
        if (JobBlock.Of(curve.Find("section")!, curve.PathOf("section"), curve.Faults, Example) is not { } block) return null;
        block.CheckKeys(["mesh", "plane", "meshUnits", "noise", "join", "pick"]);
        if (block.Need("mesh", "Name the file of the scan, an .obj or .stl mesh.") is null || block.Need("plane", $"Say where the scan is cut, like {Example}.") is null) return null;
        Placement plane = new PlacementReader(measures).Read(block, "plane");
        double noise = block.Find("noise") is { } n ? measures.Length(n, block.PathOf("noise"), Allowed.Positive) : 0.1;
        if (noise < LeastNoise) curve.Faults.Add("number-range", block.PathOf("noise"), block.Find("noise")!.Place, $"A scan that is good to less than {measures.Show(LeastNoise)} is not to be had.", $"Write {measures.Show(LeastNoise)} or more.");
        double join = block.Find("join") is { } j ? measures.Length(j, block.PathOf("join"), Allowed.NotNegative) : 1;
        int pick = FileCurveReader.Pick(block, measures) ?? 1;
        if (new MeshReader(measures, open).ReadScan(block) is not { } scan) return null;
        return new SectionSpec(scan, plane) { Noise = noise, Join = join, Pick = pick, Reverse = measures.Flag(curve, "reverse") };
    }
}
