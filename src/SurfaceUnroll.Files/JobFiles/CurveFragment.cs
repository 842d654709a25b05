using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads one curve of a job by itself, so that it can be shown while other parts of the job are still to be mended.</summary>
public static class CurveFragment
{
    /// <summary>Reads the value of one curve that names no file.</summary>
    /// <param name="json">What stands under the curve's name.</param>
    /// <param name="units">What its plain numbers are in.</param>
    /// <returns>What was measured; null if there is any fault, which reading the whole job tells. Never throws for what the text holds.</returns>
    public static CurveSpec? Read(string json, LengthUnit units)
    {
        ArgumentNullException.ThrowIfNull(json);
        (JsonTree? tree, _) = JsonTreeReader.Read(json);
        if (tree is null) return null;
        var faults = new FaultList();
        CurveSpec? spec = new CurveReader(new Measures(faults, units), _ => FileReading.Absent).Read(tree, "curve");
        return faults.Count == 0 ? spec : null;
    }
}
