using System.Collections.Immutable;
using System.Text.Json;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Printers;

/// <summary>Keeps how the shop's printers print, in a file of the user's configuration folder.</summary>
/// <param name="folder">The folder; made when something is first kept.</param>
public sealed class PrinterStore(string folder)
{
    private const string FileName = "printers.json", Mend = "Mend or delete the file, and measure the test page again.";

    private const double Degree = Math.PI / 180;

    // What no printer does.
    private const double MostOff = 0.05, MostSkew = 2 * Degree;

    /// <summary>The store of this user.</summary>
    public static PrinterStore OfUser() =>
        new(Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify), "surfaceunroll"));

    /// <summary>Where it is kept.</summary>
    public string FilePath => Path.Combine(folder, FileName);

    /// <summary>All printers in the order of their names, or why they cannot be read.</summary>
    public (ImmutableArray<PrinterScale> Printers, OutputFault? Fault) Read()
    {
        (ImmutableArray<PrinterScale> printers, _, OutputFault? fault) = ReadAll();
        return (printers, fault);
    }

    /// <summary>The printer that was last chosen to print on; null if none.</summary>
    public PrinterScale? Chosen
    {
        get
        {
            (ImmutableArray<PrinterScale> printers, string? chosen, _) = ReadAll();
            return chosen is null ? null : Find(printers, chosen);
        }
    }

    /// <summary>Remembers the printer to print on.</summary>
    /// <param name="name">One that is kept; null for none.</param>
    /// <returns>Why it could not be remembered; null if it was.</returns>
    public OutputFault? Choose(string? name)
    {
        (ImmutableArray<PrinterScale> known, string? before, OutputFault? fault) = ReadAll();
        return fault ?? (name == before ? null : Write(known, name));
    }

    private (ImmutableArray<PrinterScale> Printers, string? Chosen, OutputFault? Fault) ReadAll()
    {
        if (!File.Exists(FilePath)) return ([], null, null);
        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(FilePath));
            ImmutableArray<PrinterScale> printers = [.. document.RootElement.GetProperty("printers").EnumerateArray().Select(Printer).OrderBy(p => p.Name, StringComparer.Ordinal)];
            string? chosen = document.RootElement.TryGetProperty("chosen", out JsonElement name) ? name.GetString() : null;
            return printers.All(IsSound) ? (printers, chosen, null) : ([], null, new OutputFault(FilePath, "This file has a scale that no printer has.", Mend));
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return ([], null, new OutputFault(FilePath, "This file of printers cannot be read.", Mend));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return ([], null, new OutputFault(FilePath, $"This file of printers cannot be opened: {e.Message}", "See who may read it.", OfTheMachine: true));
        }
    }

    /// <summary>Keeps a printer, in place of one of the same name.</summary>
    /// <returns>Why it could not be kept; null if it was.</returns>
    public OutputFault? Keep(PrinterScale printer)
    {
        (ImmutableArray<PrinterScale> known, string? chosen, OutputFault? fault) = ReadAll();
        return fault ?? Write([.. known.Where(p => !IsCalled(p, printer.Name)).Append(printer)], chosen);
    }

    private OutputFault? Write(ImmutableArray<PrinterScale> printers, string? chosen)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            if (chosen is not null) json.WriteString("chosen", chosen);
            json.WriteStartArray("printers");
            foreach (PrinterScale each in printers.OrderBy(p => p.Name, StringComparer.Ordinal))
            {
                json.WriteStartObject();
                json.WriteString("name", each.Name);
                json.WriteNumber("across", each.Across);
                json.WriteNumber("along", each.Along);
                json.WriteNumber("skewDeg", each.Skew / Degree);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        return OutputFolder.Write(folder, [new OutputFile(FileName, buffer.ToArray())]);
    }

    /// <summary>The printer of a name among others; null if there is none.</summary>
    public static PrinterScale? Find(ImmutableArray<PrinterScale> printers, string name) => printers.FirstOrDefault(p => IsCalled(p, name));

    // Case does not count.
    private static bool IsCalled(PrinterScale printer, string name) => printer.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase);

    private static PrinterScale Printer(JsonElement json) => new(
        json.GetProperty("name").GetString() ?? "", json.GetProperty("across").GetDouble(), json.GetProperty("along").GetDouble(), json.GetProperty("skewDeg").GetDouble() * Degree);

    private static bool IsSound(PrinterScale p) => p.Name.Length > 0 && Math.Abs(p.Across - 1) <= MostOff && Math.Abs(p.Along - 1) <= MostOff && Math.Abs(p.Skew) <= MostSkew;
}
