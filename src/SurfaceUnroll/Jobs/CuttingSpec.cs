namespace SurfaceUnroll.Jobs;

/// <summary>What the files for cutting machines are to be.</summary>
/// <param name="Kerf">Full width of the cut, mm, 0 to <see cref="WidestKerf"/>: their cut lines are moved by half of it into the waste.</param>
/// <param name="Dxf">Version of the DXF.</param>
/// <param name="Lettering">How words are written.</param>
public sealed record CuttingSpec(double Kerf, DxfVersion Dxf, CutLettering Lettering)
{
    /// <summary>No cut of sheet metal is wider, mm.</summary>
    public const double WidestKerf = 10;

    /// <summary>The finished line itself, DXF R2000, words as text.</summary>
    public static CuttingSpec Default { get; } = new(0, DxfVersion.R2000, CutLettering.Text);

    /// <summary>With what a command line says in place of what the job says.</summary>
    /// <param name="kerf">mm; null: as the job has it.</param>
    /// <param name="dxf">Null: as the job has it.</param>
    public CuttingSpec With(double? kerf, DxfVersion? dxf) => this with { Kerf = kerf ?? Kerf, Dxf = dxf ?? Dxf };
}

/// <summary>Versions of DXF.</summary>
public enum DxfVersion
{
    /// <summary>R2000, AC1015.</summary>
    R2000,

    /// <summary>R11 and R12, AC1009: what old machines read.</summary>
    R12,
}

/// <summary>How the words of a cut file are written.</summary>
public enum CutLettering
{
    /// <summary>As text, which the reader sets in a face of its own.</summary>
    Text,

    /// <summary>Marks and notes as lines that a machine can scribe.</summary>
    Strokes,
}
