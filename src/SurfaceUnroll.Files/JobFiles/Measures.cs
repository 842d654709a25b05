using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Which lengths may stand at a place.</summary>
internal enum Allowed
{
    /// <summary>Any, also negative.</summary>
    Any,

    /// <summary>Zero or more.</summary>
    NotNegative,

    /// <summary>More than zero.</summary>
    Positive,
}

/// <summary>Reads the single values of a job. A value that cannot be used gives a fault and NaN (or a default), so that reading goes on.</summary>
internal sealed class Measures(FaultList faults, LengthUnit units)
{
    /// <summary>Largest length in a job, mm: far above any sheet, and low enough to catch a slipped decimal or unit.</summary>
    public const double Longest = 100_000;

    private const string LengthExamples = "Write a number, or a length in quotes such as \"175 mm\" or \"6 7/8 in\".";

    public FaultList Faults => faults;

    /// <summary>Paths of all lengths that were read.</summary>
    public List<string> Lengths { get; } = [];

    /// <summary>Units of the job.</summary>
    public LengthUnit Units => units;

    /// <summary>A length for a message, to a micrometre.</summary>
    public string Show(double mm) => units == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{mm / ShopLength.MillimetresPerInch:0.####} in")
        : ShopLength.Print(mm, units, 3);

    /// <summary>A length, mm; NaN with a fault.</summary>
    public double Length(JsonTree tree, string path, Allowed allowed = Allowed.Any)
    {
        Lengths.Add(path);
        double mm = tree switch
        {
            JsonNumber number => Finite(number, path) * (units == LengthUnit.Inch ? ShopLength.MillimetresPerInch : 1),
            JsonText text => FromText(text, path),
            _ => Refuse(tree, path),
        };
        if (Math.Abs(mm) > Longest) return TooLarge(tree, path, Show(mm));
        if (mm < 0 && allowed == Allowed.NotNegative)
            return Fault("length-negative", path, tree, $"This length cannot be negative; it is {Show(mm)}.", "Measure it again, or take the minus sign out.");
        if (mm <= 0 && allowed == Allowed.Positive)
            return Fault("length-not-positive", path, tree, $"This length must be more than zero; it is {Show(mm)}.", "Measure it again, or take this part out.");
        return mm;
    }

    /// <summary>Degrees in the file, radians here; NaN with a fault.</summary>
    public double Angle(JsonTree tree, string path)
    {
        if (tree is not JsonNumber number)
        {
            faults.WrongType(path, tree, "an angle in degrees", "Write a plain number, such as 25.");
            return double.NaN;
        }
        double degrees = Finite(number, path);
        if (Math.Abs(degrees) > 360)
        {
            return Fault("angle-too-large", path, tree, string.Create(CultureInfo.InvariantCulture, $"An angle of {degrees:G6}° is more than once round."),
                "Give an angle between -360 and 360 degrees.");
        }
        return degrees * Math.PI / 180;
    }

    /// <summary>The angle in degrees that a sheet is bent through, radians here, more than 0 and less than 180; NaN with a fault.</summary>
    public double BendAngle(JobBlock block, string key, string mend)
    {
        if (block.Need(key, mend) is not { } tree) return double.NaN;
        double angle = Angle(tree, block.PathOf(key));
        if (angle is > 0 and < Math.PI || double.IsNaN(angle)) return angle;
        return Fault("bend-angle", block.PathOf(key), tree, "A sheet is bent through more than 0° and less than 180°.", "Give the angle that it is bent through, 90 for a square bend.");
    }

    /// <summary>One of the six directions of the job.</summary>
    public Way Way(JsonTree tree, string path) => Choice(tree, path, Jobs.Way.Up,
        ("forward", Jobs.Way.Forward), ("aft", Jobs.Way.Aft), ("left", Jobs.Way.Left), ("right", Jobs.Way.Right), ("up", Jobs.Way.Up), ("down", Jobs.Way.Down));

    /// <summary>A plain number that may be used; the fallback where the key is left out, or with a fault.</summary>
    /// <param name="block">Where the key stands.</param>
    /// <param name="key">The key.</param>
    /// <param name="fallback">In place of a number.</param>
    /// <param name="allowed">Which numbers may be used; not NaN.</param>
    /// <param name="wanted">Those in words, with an article.</param>
    /// <param name="mend">How to mend it.</param>
    /// <param name="code">Code of the fault of another number.</param>
    /// <param name="problem">Its message, where there is more to say than what should stand here.</param>
    public double Number(JobBlock block, string key, double fallback, Func<double, bool> allowed, string wanted, string mend, string code = "number-range", string? problem = null)
    {
        if (block.Find(key) is not { } tree) return fallback;
        if (tree is not JsonNumber number) faults.WrongType(block.PathOf(key), tree, wanted, mend);
        else if (allowed(number.Value)) return number.Value;
        else faults.Add(code, block.PathOf(key), tree.Place, problem ?? $"Here should be {wanted}.", mend);
        return fallback;
    }

    /// <summary>A whole number within limits; the fallback where the key is left out, or with a fault.</summary>
    public int Whole(JobBlock block, string key, int fallback, int least, int most, string? mend = null, string code = "number-range", string? problem = null)
    {
        string wanted = $"a whole number from {Count(least)} to {Count(most)}";
        return (int)Number(block, key, fallback, value => value >= least && value <= most && double.IsInteger(value), wanted, mend ?? $"Write {wanted}.", code, problem);
    }

    /// <summary>A name that an opening, a trim or a joint may have; null where it is left out, or with a fault.</summary>
    /// <param name="block">The block of what is named.</param>
    /// <param name="what">What is named.</param>
    public string? Name(JobBlock block, string what)
    {
        if (block.Find("name") is not { } tree || Text(tree, block.PathOf("name")) is not { } name) return null;
        if (!string.IsNullOrWhiteSpace(name)) return name.Trim();
        faults.Add("name-empty", block.PathOf("name"), tree.Place, $"This {what} has an empty name.", "Give it one, or leave \"name\" out.");
        return null;
    }

    /// <summary>A list of lengths of fixed count, mm, such as <c>[across, up]</c>; null with a fault.</summary>
    public ImmutableArray<double>? Tuple(JsonTree tree, string path, string shape, int count)
    {
        if (tree is not JsonList list)
        {
            faults.WrongType(path, tree, shape, $"Write {shape}, for example {Example(count)}.");
            return null;
        }
        if (list.Items.Length != count)
        {
            faults.Add("point-shape", path, list.Place, $"Here should be {shape}, but there are {Count(list.Items.Length)} values.",
                $"Write {shape}, for example {Example(count)}.");
            return null;
        }
        return [.. list.Items.Select((item, i) => Length(item, $"{path}[{Count(i)}]"))];
    }

    /// <summary>true or false; false where the key is left out.</summary>
    public bool Flag(JobBlock block, string key)
    {
        if (block.Find(key) is not { } tree) return false;
        if (tree is JsonFlag flag) return flag.Value;
        faults.WrongType(block.PathOf(key), tree, "true or false", "Write true or false, without quotes.");
        return false;
    }

    /// <summary>One of a few words; the fallback where the key is left out or the word is none of them.</summary>
    public T Choice<T>(JobBlock block, string key, T fallback, params (string Word, T Value)[] choices) =>
        block.Find(key) is { } tree ? Choice(tree, block.PathOf(key), fallback, choices) : fallback;

    /// <summary>One of a few words; the fallback, with a fault, if it is none of them.</summary>
    public T Choice<T>(JsonTree tree, string path, T fallback, params (string Word, T Value)[] choices)
    {
        string words = string.Join(" or ", choices.Select(c => $"\"{c.Word}\""));
        if (tree is not JsonText text)
        {
            faults.WrongType(path, tree, words, $"Write {words}.");
            return fallback;
        }
        foreach ((string word, T value) in choices)
        {
            if (text.Value == word) return value;
        }
        string mend = NearestWord.To(text.Value, choices.Select(c => c.Word)) is { } near ? $"Did you mean \"{near}\"? It can be {words}." : $"It can be {words}.";
        faults.Add("choice-unknown", path, text.Place, $"\"{text.Value}\" is none of the words that can stand here.", mend);
        return fallback;
    }

    /// <summary>A text; null with a fault.</summary>
    public string? Text(JsonTree tree, string path)
    {
        if (tree is JsonText text) return text.Value;
        faults.WrongType(path, tree, "a text in quotes", "Write it in double quotes.");
        return null;
    }

    /// <summary>A list; null with a fault.</summary>
    public JsonList? List(JsonTree tree, string path, string example)
    {
        if (tree is JsonList list) return list;
        faults.WrongType(path, tree, "a list [ … ]", $"Write it like {example}.");
        return null;
    }

    /// <summary>Number for a path or message.</summary>
    public static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);

    private static string Example(int count) => count == 2 ? "[120, 85]" : "[0, 120, 85]";

    private double Finite(JsonNumber number, string path)
    {
        if (double.IsNaN(number.Value)) return Fault("not-a-number", path, number, "NaN is not a measure.", "Write the measured number, or take this part out.");
        return double.IsFinite(number.Value) ? number.Value : TooLarge(number, path, "without end");
    }

    private double FromText(JsonText text, string path)
    {
        LengthReading reading = ShopLength.Parse(text.Value, units);
        return reading.IsLength ? reading.Millimetres : Fault("length-unreadable", path, text, reading.Problem!, reading.Mend!);
    }

    private double TooLarge(JsonTree tree, string path, string value) => Fault("number-too-large", path, tree,
        $"A value {(value == "without end" ? value : "of " + value)} is past what can be used here, 100 m.", "Check the decimal point and the unit.");

    private double Refuse(JsonTree tree, string path)
    {
        faults.WrongType(path, tree, "a length", LengthExamples);
        return double.NaN;
    }

    private double Fault(string code, string path, JsonTree at, string message, string mend)
    {
        faults.Add(code, path, at.Place, message, mend);
        return double.NaN;
    }
}
