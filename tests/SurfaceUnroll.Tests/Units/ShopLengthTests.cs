using FsCheck.Xunit;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Units;

public class ShopLengthTests
{
    // An inch is 25.4 mm by definition; every expected value is that multiplication, written out.
    [Theory]
    [InlineData("175", LengthUnit.Millimetre, 175)]
    [InlineData("175", LengthUnit.Inch, 4445)]
    [InlineData("175 mm", LengthUnit.Inch, 175)]
    [InlineData("175mm", LengthUnit.Inch, 175)]
    [InlineData("2.5 cm", LengthUnit.Millimetre, 25)]
    [InlineData("2,5 cm", LengthUnit.Millimetre, 25)]
    [InlineData("1.2 m", LengthUnit.Millimetre, 1200)]
    [InlineData("1 m 20 cm", LengthUnit.Millimetre, 1200)]
    [InlineData(".5 in", LengthUnit.Millimetre, 12.7)]
    [InlineData("0,125 in", LengthUnit.Millimetre, 3.175)]
    [InlineData("6 7/8 in", LengthUnit.Millimetre, 174.625)]
    [InlineData("6-7/8", LengthUnit.Inch, 174.625)]
    [InlineData("6 - 7/8 in", LengthUnit.Inch, 174.625)]
    [InlineData("6⅞\"", LengthUnit.Millimetre, 174.625)]
    [InlineData("7/16", LengthUnit.Inch, 11.1125)]
    [InlineData("9/8 in", LengthUnit.Inch, 28.575)]
    [InlineData("1' 2 1/2\"", LengthUnit.Millimetre, 368.3)]
    [InlineData("1'2-1/2\"", LengthUnit.Millimetre, 368.3)]
    [InlineData("1'-2 1/2\"", LengthUnit.Millimetre, 368.3)]
    [InlineData("1′ 2 1/2″", LengthUnit.Millimetre, 368.3)]
    [InlineData("1’ 2 1/2”", LengthUnit.Millimetre, 368.3)]
    [InlineData("1' 2 1/2''", LengthUnit.Millimetre, 368.3)]
    [InlineData("1' 2 1/2", LengthUnit.Millimetre, 368.3)]
    [InlineData("1 ft 2.5 in", LengthUnit.Millimetre, 368.3)]
    [InlineData("3 feet", LengthUnit.Millimetre, 914.4)]
    [InlineData("-6 7/8 in", LengthUnit.Millimetre, -174.625)]
    [InlineData("−1' 2 1/2\"", LengthUnit.Millimetre, -368.3)]
    [InlineData("- 12.5", LengthUnit.Millimetre, -12.5)]
    [InlineData("+12.5", LengthUnit.Millimetre, 12.5)]
    [InlineData("12 MM", LengthUnit.Inch, 12)]
    public void Reads_what_shops_write(string text, LengthUnit unit, double mm)
    {
        LengthReading reading = ShopLength.Parse(text, unit);
        Assert.Null(reading.Problem);
        Assert.Equal(mm, reading.Millimetres, 1e-9); // Room for the rounding of one multiplication and one sum.
    }

    [Fact]
    public void Bare_fraction_is_inches_even_in_a_job_in_millimetres() =>
        Assert.Equal(174.625, ShopLength.Parse("6-7/8", LengthUnit.Millimetre).Millimetres, 1e-9);

    [Theory]
    [InlineData("", "no length")]
    [InlineData("   ", "no length")]
    [InlineData("abc", "not a length")]
    [InlineData("-", "not a length")]
    [InlineData("NaN", "not a length")]
    [InlineData("Infinity", "not a length")]
    [InlineData("5 parsec", "\"parsec\" is not a unit")]
    [InlineData("5 mn", "\"mn\" is not a unit")]
    [InlineData("6 7/0 in", "divides by zero")]
    [InlineData("6 8/8 in", "one or more beside a whole number")]
    [InlineData("7/", "not whole")]
    [InlineData("7/8.5", "not whole")]
    [InlineData("6.5 7/8", "both decimals and a fraction")]
    [InlineData("1,250", "two ways")]
    [InlineData("1,250.5", "two ways")]
    [InlineData("6 7", "two numbers")]
    [InlineData("6-7", "not one length")]
    [InlineData("6--7/8", "not part of a length")]
    [InlineData("5 mm 3 cm", "more than one length")]
    [InlineData("5 in 3 mm", "more than one length")]
    [InlineData("1 m 20", "no unit")]
    [InlineData("1e3", "power of ten")]
    [InlineData("1.2.3", "not part of a length")]
    [InlineData("5 mm!", "not a length")]
    [InlineData("10 %", "not part of a length")]
    public void Unreadable_text_says_what_is_wrong_and_how_to_mend_it(string text, string expected)
    {
        LengthReading reading = ShopLength.Parse(text, LengthUnit.Millimetre);
        Assert.False(reading.IsLength);
        Assert.Contains(expected, reading.Problem, StringComparison.Ordinal);
        Assert.False(string.IsNullOrWhiteSpace(reading.Mend));
    }

    [Theory]
    [InlineData(174.625, LengthUnit.Inch, "6 7/8\"")]
    [InlineData(25.4, LengthUnit.Inch, "1\"")]
    [InlineData(11.1125, LengthUnit.Inch, "7/16\"")]
    [InlineData(-174.625, LengthUnit.Inch, "-6 7/8\"")]
    [InlineData(0, LengthUnit.Inch, "0\"")]
    [InlineData(-0.01, LengthUnit.Inch, "0\"")]
    [InlineData(25.3, LengthUnit.Inch, "1\"")] // 63.75/64 rounds up to the whole inch.
    [InlineData(0.396875, LengthUnit.Inch, "1/64\"")]
    [InlineData(174.625, LengthUnit.Millimetre, "174.6 mm")]
    [InlineData(174.65, LengthUnit.Millimetre, "174.7 mm")]
    [InlineData(175, LengthUnit.Millimetre, "175 mm")]
    [InlineData(-0.01, LengthUnit.Millimetre, "0 mm")]
    [InlineData(12345.6, LengthUnit.Millimetre, "12345.6 mm")]
    public void Prints_in_the_units_of_the_job(double mm, LengthUnit unit, string expected) =>
        Assert.Equal(expected, ShopLength.Print(mm, unit));

    [Theory]
    [InlineData(0, "175 mm")]
    [InlineData(2, "174.63 mm")]
    [InlineData(3, "174.625 mm")]
    public void Decimals_of_a_millimetre_can_be_asked_for(int decimals, string expected) =>
        Assert.Equal(expected, ShopLength.Print(174.625, LengthUnit.Millimetre, decimals));

    // The range is the one a job may hold, ±100 m, in steps of a micrometre.
    [Property(MaxTest = 2000, StartSize = 10, EndSize = 100_000_000)]
    public void Printed_inches_read_back_to_half_a_sixty_fourth(int raw)
    {
        double mm = raw % 100_000_000 / 1000.0;
        LengthReading back = ShopLength.Parse(ShopLength.Print(mm, LengthUnit.Inch), LengthUnit.Millimetre);
        Assert.True(back.IsLength);
        Assert.InRange(back.Millimetres - mm, -25.4 / 128 - 1e-9, 25.4 / 128 + 1e-9);
    }

    [Property(MaxTest = 2000, StartSize = 10, EndSize = 100_000_000)]
    public void Printed_millimetres_read_back_to_half_the_last_decimal(int raw, byte places)
    {
        int decimals = places % 5;
        double mm = raw % 100_000_000 / 1000.0, half = 0.5 * Math.Pow(10, -decimals);
        LengthReading back = ShopLength.Parse(ShopLength.Print(mm, LengthUnit.Millimetre, decimals), LengthUnit.Inch);
        Assert.True(back.IsLength);
        Assert.InRange(back.Millimetres - mm, -half - 1e-9, half + 1e-9);
    }

    [Property(MaxTest = 2000)]
    public void Any_text_at_all_is_read_or_refused_but_never_thrown_at(string? text)
    {
        LengthReading reading = ShopLength.Parse(text ?? "", LengthUnit.Inch);
        Assert.Equal(reading.IsLength, reading.Mend is null);
        Assert.True(double.IsFinite(reading.Millimetres));
    }
}
