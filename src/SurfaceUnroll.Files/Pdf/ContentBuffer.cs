using System.Buffers;
using System.Buffers.Text;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Operators of a page's content stream (ISO 32000-2, 8.5), with numbers to a thousandth.</summary>
/// <remarks>
/// A thousandth of a millimetre is a tenth of the tolerance that a pattern is checked to. Numbers are written as whole thousandths with
/// the point put in: formatting a double took most of the time of a document.
/// </remarks>
internal sealed class ContentBuffer
{
    private const int LongestNumber = 24;   // sign, 19 digits of a long, point, space

    private readonly ArrayBufferWriter<byte> _bytes = new(1 << 15);

    /// <summary>What was written.</summary>
    public ReadOnlySpan<byte> Bytes => _bytes.WrittenSpan;

    /// <summary>Text as it stands: operators, spaces, numbers known beforehand.</summary>
    public ContentBuffer Raw(ReadOnlySpan<byte> text)
    {
        _bytes.Write(text);
        return this;
    }

    /// <summary>A number and a space.</summary>
    public ContentBuffer Number(double value)
    {
        Span<byte> target = _bytes.GetSpan(LongestNumber);
        long thousandths = checked((long)Math.Round(value * 1000, MidpointRounding.AwayFromZero));
        int length = 0;
        if (thousandths < 0) target[length++] = (byte)'-';
        (long whole, long part) = Math.DivRem(Math.Abs(thousandths), 1000);
        Utf8Formatter.TryFormat(whole, target[length..], out int digits);
        length += digits;
        if (part != 0)
        {
            target[length++] = (byte)'.';
            for (long unit = 100; part != 0; part %= unit, unit /= 10) target[length++] = (byte)('0' + (part / unit));
        }
        target[length++] = (byte)' ';
        _bytes.Advance(length);
        return this;
    }

    /// <summary>A path of straight lines, not yet painted.</summary>
    public ContentBuffer Path(ReadOnlySpan<Vec2> points)
    {
        for (int i = 0; i < points.Length; i++)
            Number(points[i].X).Number(points[i].Y).Raw(i == 0 ? "m\n"u8 : "l\n"u8);
        return this;
    }
}
