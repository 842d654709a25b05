using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.Proof;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>verify</c>.</summary>
internal static class Verifying
{
    /// <summary>Compares the files of a folder.</summary>
    /// <param name="folder">Into which a job was developed.</param>
    /// <param name="screen">Where to write.</param>
    public static int Run(string folder, Screen screen)
    {
        (ImmutableArray<ProvenPiece> pieces, string? problem) = screen.WithProgress("Reading " + folder, _ => Prover.Of(folder));
        if (problem is not null)
        {
            FaultText.Write(screen.Error, folder, problem, "Name the folder that “develop” wrote into, or develop the job again.");
            return ExitStatus.CannotUse;
        }
        TextTable.Write(screen, ["piece", "file", "off, mm", ""], [.. pieces.SelectMany(p => p.Files.Select((f, i) => (string[])[i == 0 ? p.Piece : "", f.File, double.IsNaN(f.Off) ? "–" : f.Off.ToString("0.000", CultureInfo.InvariantCulture), f.Problem ?? ""]))]);
        bool holds = pieces.All(p => p.Holds);
        screen.Out.WriteLine();
        screen.Out.WriteLine(holds
            ? string.Create(CultureInfo.InvariantCulture, $"Print, DXF, SVG and OBJ of every piece show one line at 1:1, within {Prover.Limit} mm.")
            : "NOT THE SAME: do not cut by these files. Develop the job again; if that does not mend it, report it with the job file.");
        return holds ? ExitStatus.Done : ExitStatus.Failed;
    }
}
