using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Photos.MarkNames;

namespace SurfaceUnroll.Photos;

/// <summary>Whether marks agree with each other, and which of them could be the wrong one. Each mark, or each distance, is left out in turn: it could be the wrong one where all others then agree about as well as they do
/// at best. Only if that is one alone is it accused.</summary>
/// <param name="marks">Marks.</param>
/// <param name="all">Fit to all of them.</param>
/// <param name="places">As measured, mm.</param>
/// <param name="fit">Fits to some of the marks, and without a distance.</param>
internal sealed class MarkAgreement(MarkReference marks, MarkFit all, Vec2[] places, Func<bool[], int?, MarkFit?> fit)
{
    // Of seven marks six are left that check each other; of six five, which hardly do.
    private const int MayLeaveOut = 7, MostNamed = 4;

    /// <summary>What is left is more than hands as careful as was told leave once in a thousand.</summary>
    public static bool IsApart(LeastSquaresFit errors) => errors.Free > 0 && errors.Sum > ChiSquare.Hardly(errors.Free);

    /// <summary>What is to be said, and the cameras without each mark or distance that could be the wrong one; nothing if they agree.</summary>
    public (Notice? Finding, ImmutableArray<PlaneCamera> Others) Judged()
    {
        if (all.Errors.Free <= 0) return (null, []);
        Suspect[] suspects = marks.IsTaped ? Distances() : Places();
        int fewer = marks.IsTaped ? 1 : 2;
        if (!Alarm(suspects, fewer)) return (null, []);
        Suspect[] likely = Likely(suspects, fewer);
        return (marks.IsTaped ? OfDistances(suspects, likely) : OfPlaces(likely), [.. likely.Where(s => s.Fit is not null).Select(s => s.Fit!.Camera)]);
    }

    // One mark or distance, the fit without it, and how far it is off then, mm; nothing where the others alone settle no camera, so that it can neither be accused nor cleared.
    private readonly record struct Suspect(int Index, MarkFit? Fit, Vec2 Off)
    {
        public LeastSquaresFit? Without => Fit?.Errors;
    }

    private Suspect[] Places() => [.. Enumerable.Range(0, places.Length).Select(i => fit([.. places.Select((_, k) => k != i)], null) is { } without
        ? new Suspect(i, without, without.Camera.ToPlane(marks.Marks[i].Tap) - places[i])
        : new Suspect(i, null, default))];

    private Suspect[] Distances() => [.. marks.Distances.Select((taped, d) => fit([.. places.Select(_ => true)], d) is { } without
        ? new Suspect(d, without, new Vec2(taped.Length - (without.Places[taped.From] - without.Places[taped.To]).Length, 0))
        : new Suspect(d, null, default))];

    private Notice OfPlaces(Suspect[] likely)
    {
        int n = places.Length;
        string apart = $"{Mm(marks.Marks.Select((m, i) => (all.Camera.ToPlane(m.Tap) - all.Places[i]).Length).Max())} apart at most";
        // One mark more than four names none: each may be left out, and the others then agree.
        if (n == 5) return new Notice("photo-marks-apart", Severity.Warning, "marks", $"The five marks do not agree: {apart}. One of them is wrong, but five cannot tell which.", "Measure them again, and add three.");
        if (likely is [{ Without: not null } one])
            return new Notice("photo-mark-bad", Severity.Warning, $"marks.{Name(one)}",
                $"Mark {Name(one)} lies {Mm(one.Off.Length)} from where the others put it ({Mm(Math.Abs(one.Off.X))} to the {(one.Off.X < 0 ? "left" : "right")}, {Mm(Math.Abs(one.Off.Y))} {(one.Off.Y < 0 ? "down" : "up")}).",
                n >= MayLeaveOut ? "Tap it again, measure it again, or leave it out." : "Tap it again and measure it again. Leave it in: five marks are too few to check each other.");
        return likely.Length is > 1 and <= MostNamed && likely.Length < n
            ? new Notice("photo-marks-apart", Severity.Warning, "marks",
                $"The marks do not agree: {apart}. {Joined([.. likely.OrderBy(s => s.Index).Select(Name)], "or")} is wrong; which of them cannot be told ({string.Join(", ", likely.Where(s => s.Without is not null).OrderBy(s => s.Index).Select(s => $"{Name(s)} by {Mm(s.Off.Length)}"))}).",
                "Tap and measure each of these again, and leave none out. Eight marks, no three in a row, would tell which.")
            : new Notice("photo-marks-apart", Severity.Warning, "marks", $"The marks do not agree with each other: {apart}, more than taps and {Measures} explain. Which are wrong cannot be told.", "Tap and measure all again. Eight marks, no three in a row, would tell which is wrong.");
    }

    private Notice OfDistances(Suspect[] suspects, Suspect[] likely)
    {
        int n = places.Length, spare = marks.Distances.Length - (2 * n - 3) + Math.Max(0, 2 * (n - 4));
        if (spare > 1 && likely is [{ Without: not null } one])
            return new Notice("photo-mark-bad", Severity.Warning, "marks", $"The distance from {From(one)} to {To(one)} is {Mm(Math.Abs(one.Off.X))} {(one.Off.X > 0 ? "more" : "less")} than the others make it.", "Measure it again, or leave it out.");
        if (spare > 1 && (likely.Length is < 2 or > MostNamed))
            return new Notice("photo-distances-unlike", Severity.Warning, "marks", $"The distances and the taps do not agree: more is left between them than taps and {Measures} explain. Which is wrong cannot be told.", "Tap and measure all again.");
        Suspect say = likely.FirstOrDefault(s => s.Without is not null, suspects.FirstOrDefault(s => s.Without is not null));
        string said = say.Without is null ? "" : $": from {From(say)} to {To(say)}, say, the others make it {Mm(Math.Abs(say.Off.X))} {(say.Off.X > 0 ? "less" : "more")}";
        return new Notice("photo-distances-unlike", Severity.Warning, "marks",
            spare > 1 ? $"The distances do not fit each other{said}. {Joined([.. likely.OrderBy(s => s.Index).Select(s => Between(marks, marks.Distances[s.Index]))], "or")} is wrong; which of them cannot be told." : $"The distances do not fit each other{said}. Which is wrong cannot be told from so few.",
            "Measure them again, or measure one distance more.");
    }

    // Left as a whole beyond what hands leave, or one of them so that chance hardly explains how much better the others agree.
    private bool Alarm(Suspect[] suspects, int fewer) => IsApart(all.Errors) || suspects.Any(s => Gain(s, fewer, suspects.Length) >= 1);

    // Those without which the others agree about as well as they do at best: the wrong one is among them but once in a thousand. None where even at best they do not agree.
    private Suspect[] Likely(Suspect[] suspects, int fewer)
    {
        if (suspects.Where(s => s.Without is not null).MinBy(s => s.Without!.Sum) is not { Without: { } best } least) return [];
        if (IsApart(best) && Gain(least, fewer, suspects.Length) < 1) return [];
        double care = Math.Max(1, (HandErrors.Seen + best.Sum) / (HandErrors.Seen + best.Free));
        return [.. suspects.Where(s => s.Without is null || s.Without.Sum - best.Sum <= ChiSquare.Hardly(fewer) * care).OrderBy(s => s.Without?.Sum ?? double.PositiveInfinity)];
    }

    // How much better the others agree, over what one in a thousand sets of so many good marks would show by chance (Fisher's F; its quantile for two has the closed form d/2 (p^(-2/d) - 1),
    // and for one is no more than twice that).
    private double Gain(Suspect suspect, int fewer, int candidates)
    {
        if (suspect.Without is not { } without) return 0;
        double d = HandErrors.Seen + Math.Max(without.Free, 0), least = (HandErrors.Seen + without.Sum) / d;
        double limit = (fewer == 1 ? d : 0.5 * d) * (Math.Pow(0.001 / candidates, -2 / d) - 1);
        return (all.Errors.Sum - without.Sum) / fewer / least / limit;
    }

    private string Measures => string.Create(CultureInfo.InvariantCulture, $"measures that are good to {marks.Spread:0.##} mm");

    private string Name(Suspect s) => marks.Marks[s.Index].Name;

    private string From(Suspect s) => marks.Marks[marks.Distances[s.Index].From].Name;

    private string To(Suspect s) => marks.Marks[marks.Distances[s.Index].To].Name;
}
