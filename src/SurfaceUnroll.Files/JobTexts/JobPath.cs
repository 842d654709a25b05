using System.Globalization;
using System.Text.Json;

namespace SurfaceUnroll.Files.JobTexts;

/// <summary>Paths of values in a job, such as <c>curves.front.points[2]</c>: the words that faults and notices use too.</summary>
public static class JobPath
{
    /// <summary>Under a key of a block.</summary>
    public static string Under(string path, string key) => path.Length == 0 ? key : $"{path}.{key}";

    /// <summary>An item of a list, from 0.</summary>
    public static string Item(string path, int index) => string.Create(CultureInfo.InvariantCulture, $"{path}[{index}]");

    /// <summary>The path is this one or lies within it.</summary>
    public static bool Within(string path, string around)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(around);
        return path.StartsWith(around, StringComparison.Ordinal) && (path.Length == around.Length || around.Length == 0 || path[around.Length] is '.' or '[');
    }

    /// <summary>A text as it is written in a job, in quotes.</summary>
    public static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";

    /// <summary>What a person typed as a measure: a plain number stays one, everything else goes into quotes, for the reader to take or to refuse.</summary>
    public static string Typed(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        string text = typed.Trim();
        // A number of the file has a digit on both sides of its point and no plus: what JSON does not know is a text.
        return IsNumber(text) ? text : Quoted(text);
    }

    /// <summary>The text is a number as JSON has it.</summary>
    internal static bool IsNumber(string text)
    {
        if (text.Length == 0 || !(char.IsAsciiDigit(text[0]) || text[0] == '-')) return false;
        try
        {
            using var document = JsonDocument.Parse(text);
            return document.RootElement.ValueKind == JsonValueKind.Number && double.IsFinite(document.RootElement.GetDouble());
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
