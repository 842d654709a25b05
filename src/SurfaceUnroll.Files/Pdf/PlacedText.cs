using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>A text in the font of the printed pages, its size and left end settled.</summary>
/// <param name="Printable">Only characters of the font; may be empty.</param>
/// <param name="Size">Font size, mm.</param>
/// <param name="Width">Sum of the advances, mm.</param>
/// <param name="Start">Left end of the baseline, mm from the lower left corner of the page.</param>
/// <param name="Angle">Direction of writing, radians counter-clockwise.</param>
internal readonly record struct PlacedText(string Printable, double Size, double Width, Vec2 Start, double Angle)
{
    // White beyond the letters, in parts of the cap height.
    private const double HaloMargin = 0.3;

    /// <summary>Corners of the white behind the letters.</summary>
    public Vec2[] Halo
    {
        get
        {
            double cap = InterFont.Instance.CapHeight * Size, margin = HaloMargin * cap;
            double low = Printable.Any(char.IsLetter) ? -InterFont.Instance.Descent * Size : -margin;
            double left = -margin, right = Width + margin, high = cap + margin;
            return [At(left, low), At(right, low), At(right, high), At(left, high)];
        }
    }

    /// <summary>Settles a text.</summary>
    public static PlacedText Of(PageText text)
    {
        string printable = InterFont.Instance.Printable(text.Text);
        double size = text.Height / InterFont.Instance.CapHeight, width = InterFont.Instance.Width(printable) * size;
        double before = text.Anchor switch { Anchor.Middle => width / 2, Anchor.Right => width, _ => 0 };
        var anchored = new PlacedText(printable, size, width, text.At, text.Angle);
        return anchored with { Start = anchored.At(-before, 0) };
    }

    /// <summary>A place given along the writing and up from the baseline, from the left end; mm.</summary>
    public Vec2 At(double along, double up)
    {
        (double sin, double cos) = Math.SinCos(Angle);
        return new Vec2(Start.X + (along * cos) - (up * sin), Start.Y + (along * sin) + (up * cos));
    }
}
