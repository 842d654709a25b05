using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Cli;

/// <summary>What the command line says about the files for cutting machines.</summary>
/// <param name="Kerf">Full width of the cut; null: as the job has it.</param>
/// <param name="Dxf">Version of the DXF; null: as the job has it.</param>
internal sealed record CuttingOption(string? Kerf, DxfVersion? Dxf)
{
    private const string KerfMend = "Write a number in the units of the job, or a length with its unit, such as 0.2mm.";

    /// <summary>The options read; null with a fault on standard error.</summary>
    public static CuttingOption? Read(string? kerf, string? dxf, Screen screen)
    {
        if (kerf is not null && !ShopLength.Parse(kerf, LengthUnit.Millimetre).IsLength)
        {
            FaultText.Write(screen.Error, "--kerf", $"“{kerf}” is no length.", KerfMend);
            return null;
        }
        DxfVersion? version = dxf switch { "r2000" => DxfVersion.R2000, "r12" => DxfVersion.R12, _ => null };
        if (dxf is null || version is not null) return new CuttingOption(kerf, version);
        FaultText.Write(screen.Error, "--dxf", $"There is no version of DXF called “{dxf}” here.", "Write r2000, or r12 for an old machine.");
        return null;
    }

    /// <summary>Steps that develop every job with these options in place of its own.</summary>
    public Pipeline Over(Pipeline pipeline) => pipeline with
    {
        Develop = (job, progress) => In(job) is { Cutting.Kerf: >= 0 and <= CuttingSpec.WidestKerf } changed
            ? pipeline.Develop(changed, progress)
            : new Development(job, [], [new Notice("kerf-too-wide", Severity.Error, "cutting.kerf", $"--kerf {Kerf} is no width of a cut from 0 to {CuttingSpec.WidestKerf:0} mm.", KerfMend)]),
    };

    /// <summary>A job with these options in place of its own.</summary>
    public Job In(Job job) => job with { Cutting = job.Cutting.With(Kerf is null ? null : ShopLength.Parse(Kerf, job.Units).Millimetres, Dxf) };
}
