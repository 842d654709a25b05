using System.Globalization;
using SurfaceUnroll.Curves.Drawn;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>What the owner of a drawing should know about how it was read.</summary>
internal static class FileRemarks
{
    // Gaps up to this, mm, are the rounding of decimals.
    private const double Rounding = 0.001;

    /// <summary>Notes and warnings; their places are filled in when the curve is built.</summary>
    public static IEnumerable<Notice> Of(string file, DrawingReading drawing, bool isSvg, LengthUnit units, StrandChain chain, int twice, Func<double, string> show)
    {
        if (!drawing.SaysUnit)
        {
            string taken = isSvg ? "96 of its units are taken for an inch" : $"its numbers are taken for {(units == LengthUnit.Inch ? "inches" : "millimetres")}, as those of the job";
            yield return new Notice("file-no-unit", Severity.Warning, "", $"{file} does not say its unit; {taken}. So the curve is {show(chain.Length)} long.", "Check that length, and say what the numbers are: \"fileUnits\": \"mm\" or \"in\".");
        }
        if (chain.WidestGap > Rounding)
            yield return new Notice("file-joined", Severity.Note, "", $"{file}: ends up to {show(chain.WidestGap)} apart were put together.", "Nothing to do if they are one curve.");
        if (twice > 0)
            yield return new Notice("file-drawn-twice", Severity.Note, "", $"{file}: {twice.ToString(CultureInfo.InvariantCulture)} lines lie on others and were left out.", "Nothing to do.");
        if (!drawing.PassedOver.IsEmpty)
            yield return new Notice("file-passed-over", Severity.Note, "", $"{file}: {string.Join(", ", drawing.PassedOver.Select(p => $"{p.Count.ToString(CultureInfo.InvariantCulture)} {p.Kind}"))} were not read.", "Nothing to do if the curve is whole without them; else explode them and save again.");
    }
}
