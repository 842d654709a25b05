using System.Globalization;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>Whether the sheet in a photo has the shape of the one that was told. Its size no photo tells: a sheet of A5 nearby is one of A4 farther off.</summary>
internal static class SheetShape
{
    // Shares to which shapes are held: an error only where paper that lies a little bent would not explain it; a warning sooner.
    private const double Sure = 0.01, Likely = 0.004;

    // Least and largest guess of a shape nearer to each other than this are told as one.
    private const double Same = 1.04;

    /// <summary>An error where no lens sees such a sheet, a warning where no usual one does, otherwise null.</summary>
    public static Notice? Of(SheetReference sheet, PhotoScale scale)
    {
        bool never = !PlausibleView.Explains(scale, PlausibleView.AnyLens, 1, Sure);
        if (!never && PlausibleView.Explains(scale, PlausibleView.UsualLens, 1, Likely)) return null;
        (double Least, double Most) lens = never ? PlausibleView.AnyLens : PlausibleView.UsualLens;
        double told = sheet.Width / sheet.Height;
        string size = string.Create(CultureInfo.InvariantCulture, $"the one that was told, {sheet.Width:0.#} by {sheet.Height:0.#} mm, is {Shape(told)}");
        Severity severity = never ? Severity.Error : Severity.Warning;
        string zoom = never ? "" : " Only with much zoom, or if a part was cut out of the photo, could it be that one.";
        if (PlausibleView.Stretch(scale, lens, Likely) is not var (least, most))
            return new Notice("photo-sheet-shape", severity, "corners", $"The four corners are not those of a rectangle that a camera sees.{zoom}", "Tap the corners of one sheet that lies flat, on a photo as the camera took it: neither cut nor straightened.");
        string seen = most / least < Same ? $"about {Shape(told * Math.Sqrt(least * most))}" : Between(told * least, told * most);
        bool swapped = PlausibleView.Explains(scale, lens, sheet.Height / sheet.Width / told, Sure);
        return new Notice("photo-sheet-shape", severity, "corners", $"The sheet in the photo is {seen}; {size}.{zoom}",
            swapped
                ? string.Create(CultureInfo.InvariantCulture, $"Its sides look changed round: say first how long it is across, “{sheet.Height:0.#} x {sheet.Width:0.#}”.")
                : "Name the size of the sheet that lies there, or measure its bottom and its left side.");
    }

    private static string Between(double least, double most) =>
        least >= 1 ? string.Create(CultureInfo.InvariantCulture, $"between {least:0.00} and {Shape(most)}")
        : most < 1 ? string.Create(CultureInfo.InvariantCulture, $"between {1 / most:0.00} and {Shape(least)}")
        : $"between {Shape(least)} and {Shape(most)}";

    private static string Shape(double ratio) => ratio >= 1
        ? string.Create(CultureInfo.InvariantCulture, $"{ratio:0.00} times as wide as high")
        : string.Create(CultureInfo.InvariantCulture, $"{1 / ratio:0.00} times as high as wide");
}
