using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>What a reference cannot be, whatever the photo shows.</summary>
internal static class ReferenceChecks
{
    /// <summary>Marks that would cost minutes and tell nothing more.</summary>
    public const int MostMarks = 60;

    // Of the diagonal of the photo: taps nearer than this are one tap made twice, and a reference narrower than that tells nothing of its other side.
    private const double TooNear = 0.005, TooNarrow = 0.02;

    /// <summary>Every fault.</summary>
    public static ImmutableArray<Notice> Of(PhotoReference reference, GreyPhoto photo)
    {
        var faults = ImmutableArray.CreateBuilder<Notice>();
        ImmutableArray<Vec2> taps = reference.Taps;
        string where = reference is MarkReference ? "marks" : "corners";
        string[] names = reference is MarkReference m
            ? [.. m.Marks.Select(k => $"mark {k.Name}")]
            : [.. Enumerable.Range(1, taps.Length).Select(i => string.Create(CultureInfo.InvariantCulture, $"corner {i}"))];
        faults.AddRange(Outside(taps, names, photo, where));
        if (reference is MarkReference marks) faults.AddRange(Counts(marks));
        if (faults.Count > 0) return faults.ToImmutable();

        double diagonal = 2 * photo.HalfDiagonal;
        for (int i = 0; i < taps.Length; i++)
            for (int j = 0; j < i; j++)
                if ((taps[i] - taps[j]).Length < TooNear * diagonal)
                    faults.Add(new Notice("photo-taps-repeat", Severity.Error, where, $"{Capital(names[j])} and {names[i]} were tapped at one place.", "Tap each where it is."));
        if (faults.Count > 0) return faults.ToImmutable();
        if (Width(taps) < TooNarrow * diagonal)
            faults.Add(new Notice("photo-marks-in-line", Severity.Error, where, "All of them lie on one line, or nearly so.", "Put marks to both sides of the edge: three on one line tell nothing of what lies beside it."));
        else if (reference is SheetReference sheet) faults.AddRange(Turn(sheet));
        return faults.ToImmutable();
    }

    /// <summary>Faults of taps that lie outside the photo.</summary>
    public static IEnumerable<Notice> Outside(ImmutableArray<Vec2> taps, string[] names, GreyPhoto photo, string where) =>
        taps.Select((t, i) => (t, i)).Where(x => !photo.Holds(x.t.X, x.t.Y)).Select(x => new Notice("photo-tap-outside", Severity.Error, where,
            string.Create(CultureInfo.InvariantCulture, $"{Capital(names[x.i])}, at {x.t.X:0.#},{x.t.Y:0.#}, lies outside the photo, which is {photo.Width} by {photo.Height} pixels."),
            "Count pixels to the right and down from the upper left corner, as the photo is shown upright."));

    private static IEnumerable<Notice> Counts(MarkReference marks)
    {
        int count = marks.Marks.Length;
        if (count < 4)
            yield return new Notice("photo-marks-few", Severity.Error, "marks", string.Create(CultureInfo.InvariantCulture, $"There are {count} marks; a photo taken at an angle needs four."), "Put down four marks or more, and measure them.");
        if (count > MostMarks)
            yield return new Notice("photo-marks-many", Severity.Error, "marks", string.Create(CultureInfo.InvariantCulture, $"There are {count} marks, more than {MostMarks}."), "A dozen well-measured ones do.");
        if (!marks.IsTaped) yield break;
        string[] placed = [.. marks.Marks.Where(m => m.Place is not null).Select(m => m.Name)];
        if (placed.Length > 0)
            yield return new Notice("photo-marks-mixed", Severity.Error, "marks", $"Some marks have places ({string.Join(", ", placed)}) and others have not.", "Give places to all marks, or to none and the distances between them.");
        else if (count >= 4 && marks.Distances.Length < 2 * count - 3)
            yield return new Notice("photo-distances-few", Severity.Error, "marks",
                string.Create(CultureInfo.InvariantCulture, $"{marks.Distances.Length} distances do not settle the shape of {count} marks: that takes {2 * count - 3}."),
                "Of four marks measure the four sides and both diagonals; one more distance than needed shows a slip.");
        if (MarkFaults.Triangles(marks) is { } apart) yield return apart;
    }

    private static IEnumerable<Notice> Turn(SheetReference sheet)
    {
        ImmutableArray<Vec2> c = sheet.Corners;
        double[] turns = [.. Enumerable.Range(0, 4).Select(i => (c[(i + 1) % 4] - c[i]).Cross(c[(i + 2) % 4] - c[(i + 1) % 4]))];
        const string mend = "Tap lower left, lower right, upper right, upper left, as you see the sheet.";
        // Pixels count down, so a way round against the clock turns to the negative.
        if (turns.All(t => t > 0)) yield return new Notice("photo-corners-mirrored", Severity.Error, "corners", "The corners go round with the clock: the curve would come out as its mirror image.", mend);
        else if (turns.Any(t => t >= 0)) yield return new Notice("photo-corners-crossed", Severity.Error, "corners", "The four corners, in this order, are not the outline of a sheet.", mend);
    }

    // Least width of the taps between two parallel lines along two of them.
    private static double Width(ImmutableArray<Vec2> taps)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < taps.Length; i++)
            for (int j = 0; j < i; j++)
            {
                Vec2 along = (taps[i] - taps[j]).Unit;
                double[] beside = [.. taps.Select(t => along.Cross(t - taps[j]))];
                least = Math.Min(least, beside.Max() - beside.Min());
            }
        return least;
    }

    private static string Capital(string name) => char.ToUpperInvariant(name[0]) + name[1..];
}
