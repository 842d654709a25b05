using System.Globalization;
using System.Text;

namespace SurfaceUnroll.Units;

/// <summary>Reads one length; used once.</summary>
internal sealed class LengthParser(string text, LengthUnit plain)
{
    private const string Examples = "Write it like 175, \"175 mm\", \"2.5 cm\", \"6 7/8 in\" or \"1' 2 1/2\\\"\".";

    private readonly string _text = Plain(text);
    private int _at;

    private readonly record struct Problem(string What, string Mend = Examples);

    private sealed record Unit(string Name, double Millimetres, bool IsInch, string[] Spellings);

    // Largest first, so that a compound length is one that goes down this list.
    private static readonly Unit[] Units =
    [
        new("m", 1000, false, ["m", "metre", "metres", "meter", "meters"]),
        new("cm", 10, false, ["cm"]),
        new("mm", 1, false, ["mm"]),
        new("ft", 12 * ShopLength.MillimetresPerInch, true, ["ft", "foot", "feet", "'"]),
        new("in", ShopLength.MillimetresPerInch, true, ["in", "inch", "inches", "\""]),
    ];

    private static readonly Unit Inch = Units[^1], Millimetre = Units[2];

    public LengthReading Read()
    {
        SkipSpace();
        if (_at == _text.Length) return Fail(new("There is no length in this text."));
        bool negative = Take('-');
        if (!negative) Take('+');
        double sum = 0;
        Unit? last = null;
        do
        {
            if (Number(last, out double value, out bool fraction) is { } badNumber) return Fail(badNumber);
            if (UnitAfter(value, last, fraction, out Unit unit) is { } badUnit) return Fail(badUnit);
            (sum, last) = (sum + value * unit.Millimetres, unit);
            SkipSpace();
            if (_at < _text.Length && last.Name == "ft" && Take('-')) SkipSpace(); // 1'-2 1/2"
        }
        while (_at < _text.Length);
        return double.IsFinite(sum) ? new(negative ? -sum : sum, null, null) : Fail(new("This number is too large to read."));
    }

    private static LengthReading Fail(Problem problem) => new(0, problem.What, problem.Mend);

    // A whole or decimal number, a fraction, or a whole number with a fraction: 6, 6.5, 7/8, 6 7/8, 6-7/8.
    private Problem? Number(Unit? before, out double value, out bool fraction)
    {
        (value, fraction) = (0, false);
        SkipSpace();
        if (Digits() is not { Length: > 0 } first) return NotANumber();
        if (NextIs('/')) return Fraction(first, null, ref value, ref fraction);
        if (NextIs('.') || NextIs(','))
        {
            char mark = _text[_at];
            if (mark == ',' && Thousands(first) is { } ambiguous) return ambiguous;
        }
        string number = first + DecimalPart();
        if (!double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value)) return NotANumber();
        if (NextIs('e') || NextIs('E')) return new($"\"{text}\" has a power of ten in it.", "Write the number out in full, such as 0.9 or 1500.");
        return before is null or { IsInch: true } ? MixedFraction(number, ref value, ref fraction) : null;
    }

    private Problem? MixedFraction(string whole, ref double value, ref bool fraction)
    {
        int back = _at;
        SkipSpace();
        bool joined = Take('-');
        SkipSpace();
        string over = _at == back ? "" : Digits();
        if (over.Length > 0 && NextIs('/')) return Fraction(over, whole, ref value, ref fraction);
        if (joined && over.Length > 0 && _at == _text.Length)
            return new($"\"{text}\" could be a range or a sum: it is not one length.", "Give one number, such as 6.5, or a fraction such as 6-7/8.");
        _at = back;
        return null;
    }

    private Problem? Fraction(string over, string? whole, ref double value, ref bool fraction)
    {
        _at++;
        string under = Digits();
        if (under.Length == 0 || NextIs('.') || NextIs(',')) return new($"The fraction in \"{text}\" is not whole.", "Write it like 7/8: two whole numbers.");
        double top = double.Parse(over, CultureInfo.InvariantCulture), bottom = double.Parse(under, CultureInfo.InvariantCulture);
        if (bottom == 0) return new($"The fraction {over}/{under} divides by zero.", "Check the lower number: 2, 4, 8, 16, 32 or 64 on a tape.");
        if (whole is not null && top >= bottom)
            return new($"{whole} {over}/{under} has a fraction of one or more beside a whole number.", "Check the fraction: the upper number is the smaller one.");
        if (whole is not null && whole.Contains('.', StringComparison.Ordinal))
            return new($"\"{text}\" has both decimals and a fraction.", "Use one of the two: 6.875 or 6 7/8.");
        fraction = true;
        value += top / bottom;
        return null;
    }

    private Problem? UnitAfter(double value, Unit? before, bool fraction, out Unit unit)
    {
        SkipSpace();
        int from = _at;
        while (_at < _text.Length && (char.IsLetter(_text[_at]) || _text[_at] is '\'' or '"')) _at++;
        string word = _text[from.._at];
        unit = Array.Find(Units, u => u.Spellings.Contains(word, StringComparer.OrdinalIgnoreCase)) ?? Inch;
        if (word.Length == 0) return NoUnit(before, fraction, out unit);
        if (!unit.Spellings.Contains(word, StringComparer.OrdinalIgnoreCase)) return UnknownUnit(word, value);
        if (before is null) return null;
        bool descends = before.IsInch == unit.IsInch && before.Millimetres > unit.Millimetres;
        return descends ? null : new($"\"{text}\" is more than one length.", "Give one length; only feet and inches, or metres, cm and mm from large to small, go together.");
    }

    private Problem? NoUnit(Unit? before, bool fraction, out Unit unit)
    {
        unit = before is not null || fraction || plain == LengthUnit.Inch ? Inch : Millimetre;
        if (_at < _text.Length && (before is null || !char.IsAsciiDigit(_text[_at])))
            return char.IsAsciiDigit(_text[_at]) ? TwoNumbers() : new Problem($"\"{_text[_at]}\" in \"{text}\" is not part of a length.");
        if (_at < _text.Length) return TwoNumbers();
        return before is null or { Name: "ft" } ? null : new($"The last number of \"{text}\" has no unit.", "Write its unit after it, or give the length as one number.");
    }

    private Problem TwoNumbers() => new($"\"{text}\" holds two numbers, and no unit between them.", Examples);

    private static Problem UnknownUnit(string word, double value) => new(
        $"\"{word}\" is not a unit of length known here.",
        string.Create(CultureInfo.InvariantCulture, $"Use mm, cm, m, in or ft, such as \"{value:0.####} mm\"."));

    private Problem NotANumber() => new($"\"{text}\" is not a length.");

    // 1,250 is 1250 to one reader and 1.25 to another: a factor of a thousand is not to be guessed. 0,125 can only be a decimal.
    private Problem? Thousands(string whole)
    {
        int digits = 0;
        while (_at + 1 + digits < _text.Length && char.IsAsciiDigit(_text[_at + 1 + digits])) digits++;
        if (digits != 3 || whole.All(c => c == '0')) return null;
        string after = _text.Substring(_at + 1, digits);
        return new($"\"{whole},{after}\" can be read in two ways.", $"Write {whole}{after} or {whole}.{after}.");
    }

    private string DecimalPart()
    {
        if (!NextIs('.') && !NextIs(',')) return "";
        _at++;
        return "." + Digits();
    }

    private string Digits()
    {
        int from = _at;
        while (_at < _text.Length && char.IsAsciiDigit(_text[_at])) _at++;
        // ".5" is a number too.
        if (_at == from && NextIs('.') && _at + 1 < _text.Length && char.IsAsciiDigit(_text[_at + 1])) return "0";
        return _text[from.._at];
    }

    private bool NextIs(char c) => _at < _text.Length && _text[_at] == c;

    private bool Take(char c)
    {
        if (!NextIs(c)) return false;
        _at++;
        return true;
    }

    private void SkipSpace()
    {
        while (_at < _text.Length && char.IsWhiteSpace(_text[_at])) _at++;
    }

    // Typeset quotes, primes, dashes and fractions as their plain keyboard forms.
    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            int fraction = "¼½¾⅛⅜⅝⅞".IndexOf(c, StringComparison.Ordinal);
            if (fraction >= 0) plain.Append(' ').Append(VulgarFractions[fraction]);
            else plain.Append(c switch { '\u2033' or '\u201C' or '\u201D' => '"', '\u2032' or '\u2018' or '\u2019' => '\'', '\u2212' or '\u2010' or '\u2011' or '\u2013' => '-', '\u2044' => '/', _ => c });
        }
        return plain.Replace("''", "\"").ToString();
    }

    private static readonly string[] VulgarFractions = ["1/4", "1/2", "3/4", "1/8", "3/8", "5/8", "7/8"];
}
