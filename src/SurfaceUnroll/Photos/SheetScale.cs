using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>The camera of a photo from a sheet of paper. Its four corners alone leave the bow of the lens unknown; its sides are straight, so the bow that draws them as they are is the lens's
/// (the plumb-line method: D. C. Brown, 1971; F. Devernay &amp; O. Faugeras, Straight lines have to be straight, 2001). Sides, corners and what sizes of paper are worth go into one least squares.</summary>
internal sealed class SheetScale
{
    private static readonly string[] Sides = ["bottom side", "right side", "top side", "left side"];

    private readonly SheetReference _sheet;
    private readonly ImmutableArray<SheetSide?> _sides;
    private readonly double _tap, _reach;

    private SheetScale(SheetReference sheet, ImmutableArray<SheetSide?> sides, double tap, double reach) => (_sheet, _sides, _tap, _reach) = (sheet, sides, tap, reach);

    /// <summary>The camera; null with the reason where there is none.</summary>
    /// <param name="sheet">Free of the faults of <see cref="ReferenceChecks"/>.</param>
    /// <param name="photo">Photo.</param>
    public static (PhotoScale? Scale, Notice? Fault) Of(SheetReference sheet, GreyPhoto photo)
    {
        double tap = HandErrors.Tap(photo.HalfDiagonal);
        var own = new SheetScale(sheet, SheetSides.Of(photo, sheet.Corners, HandErrors.Reach(photo.HalfDiagonal)), tap, HandErrors.Reach(photo.HalfDiagonal));
        if (own.Fit(photo) is not { } scale)
            return (null, new Notice("photo-corners-crossed", Severity.Error, "corners", "The four corners are not those of a sheet seen by a camera.", "Tap lower left, lower right, upper right, upper left, each on its corner."));
        return SheetShape.Of(sheet, scale) switch
        {
            null => (scale, null),
            { Severity: Severity.Error } fault => (null, fault),
            var warning => (scale with { Findings = [warning, .. scale.Findings] }, null),
        };
    }

    private PhotoScale? Fit(GreyPhoto photo)
    {
        (double w, double h) = (_sheet.Width, _sheet.Height);
        var camera = new PlaneCamera(default, 0, new Vec2(0.5 * w, 0.5 * h), 0.5 * Math.Max(w, h), new Vec2(0.5 * photo.Width, 0.5 * photo.Height), photo.HalfDiagonal);
        ImmutableArray<Vec2> corners = Corners(w, h);
        if (Homography.Linear([.. corners.Select(p => (1 / camera.Size) * (p - camera.Origin))], [.. _sheet.Corners.Select(camera.WithoutBow)]) is not { } start) return null;
        camera = camera with { Seen = start };
        double[][] shares = [.. _sides.Select((side, i) => side is null ? [] : side.Picks.Select(p => PixelsAcross(camera, p, i) / side.Scatter).ToArray())];

        double[] Residuals(double[] v)
        {
            PlaneCamera own = camera.With(v);
            (double width, double height) = (w + _sheet.Spread * v[PlaneCamera.Count], h + _sheet.Spread * v[PlaneCamera.Count + 1]);
            ImmutableArray<Vec2> at = Corners(width, height);
            var all = new List<double>(PlaneCamera.LensResiduals(v)) { v[PlaneCamera.Count], v[PlaneCamera.Count + 1] };
            for (int i = 0; i < 4; i++)
            {
                if (TapCounts(i))
                {
                    Vec2 miss = own.ToPhoto(at[i]) - _sheet.Corners[i];
                    all.Add(miss.X / _tap);
                    all.Add(miss.Y / _tap);
                }
                for (int k = 0; k < shares[i].Length; k++) all.Add(shares[i][k] * Inside(own.ToPlane(_sides[i]!.Picks[k]), i, width, height));
            }
            return [.. all];
        }
        if (LeastSquares.Solve(Residuals, [.. camera.Numbers, 0, 0]) is not { } fit || Math.Abs(fit.Values[8]) >= PlaneCamera.StrongestBow) return null;
        PlaneCamera found = camera.With(fit.Values);
        // Picks tell their own scatter, and paper is not made better by a sharp photo; sides that no lens of this kind draws count against it. Taps are as sure as hands are.
        double spread = fit.Free > 0 ? Math.Max(1, Math.Sqrt(fit.Sum / fit.Free)) : 1;
        int freedom = _sides.All(s => s is not null) ? fit.Free : HandErrors.Seen;
        ImmutableArray<Vec2> real = Corners(w + _sheet.Spread * fit.Values[PlaneCamera.Count], h + _sheet.Spread * fit.Values[PlaneCamera.Count + 1]);
        return new PhotoScale(found, PhotoScale.Errors(fit, spread), freedom, Told(found, real), _sides.Any(s => s is not null), Findings(found, real));
    }

    private ImmutableArray<ReferenceResidual> Told(PlaneCamera camera, ImmutableArray<Vec2> corners) =>
        [.. _sheet.Corners.Select((c, i) => new ReferenceResidual(string.Create(CultureInfo.InvariantCulture, $"corner {i + 1}"), camera.ToPlane(c) - corners[i], TapCounts(i))),
        .. _sides.Select((s, i) => (s, i)).Where(x => x.s is not null).Select(x =>
            new ReferenceResidual(Sides[x.i], new Vec2(Math.Sqrt(x.s!.Picks.Average(p => Square(Inside(camera.ToPlane(p), x.i, corners[2].X, corners[2].Y)))), 0), OneWay: true))];

    private ImmutableArray<Notice> Findings(PlaneCamera camera, ImmutableArray<Vec2> corners)
    {
        var found = ImmutableArray.CreateBuilder<Notice>();
        string[] lost = [.. Sides.Where((_, i) => _sides[i] is null)];
        if (lost.Length > 0)
            found.Add(new Notice("photo-sheet-side", Severity.Warning, "corners",
                lost.Length == 4 ? "No side of the sheet stands out from its ground, so its corners count as they were tapped and the bow of the lens stays unknown." : $"The sheet's {string.Join(", ", lost)} cannot be followed; what is known is less.",
                "Lay the sheet on something darker, all sides free, and take the photo again."));
        for (int i = 0; i < 4; i++)
        {
            double off = (camera.ToPhoto(corners[i]) - _sheet.Corners[i]).Length;
            // A thumb's width does no harm; farther off, another sheet or another edge may be what was followed.
            if (!TapCounts(i) && off > 1.5 * _reach)
                found.Add(new Notice("photo-mark-bad", Severity.Warning, "corners", string.Create(CultureInfo.InvariantCulture, $"Corner {i + 1} was tapped {off:0} pixels from where the two sides cross."), "See whether all corners belong to one sheet; the sides count, not the tap."));
        }
        return found.ToImmutable();
    }

    // A tap between two followed sides adds nothing; it is not let spoil what they say.
    private bool TapCounts(int corner) => _sides[corner] is null || _sides[(corner + 3) % 4] is null;

    private static ImmutableArray<Vec2> Corners(double w, double h) => [new(0, 0), new(w, 0), new(w, h), new(0, h)];

    // How far a place lies inside a side, mm.
    private static double Inside(Vec2 p, int side, double w, double h) => side switch { 0 => p.Y, 1 => w - p.X, 2 => h - p.Y, _ => p.X };

    // Pixels, square to the side as the photo shows it, of a millimetre square to it on the sheet.
    private static double PixelsAcross(PlaneCamera camera, Vec2 pick, int side)
    {
        Vec2 at = camera.ToPlane(pick), along = side % 2 == 0 ? new Vec2(1, 0) : new Vec2(0, 1);
        Vec2 x = camera.ToPhoto(at + 0.5 * along) - camera.ToPhoto(at - 0.5 * along), y = camera.ToPhoto(at + 0.5 * along.Left) - camera.ToPhoto(at - 0.5 * along.Left);
        return Math.Abs(x.Unit.Cross(y));
    }

    private static double Square(double x) => x * x;
}
