using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Uncertainty;

namespace SurfaceUnroll.Jobs;

/// <summary>What is said of what was measured on finished pieces.</summary>
internal static class BuiltNotices
{
    /// <summary>True of what is said here.</summary>
    public static bool IsOne(Notice notice) => notice.Code.StartsWith("built-", StringComparison.Ordinal);

    /// <summary>Why a reading cannot be compared; null where it can.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="panel">The piece.</param>
    /// <param name="letters">Letters of its places.</param>
    public static Notice? Problem(BuiltReading reading, PanelDevelopment panel, ImmutableArray<string> letters)
    {
        if (reading.Kind == BuiltKind.Edge)
        {
            if (panel.Edges.Any(e => e.Name == reading.From && e.FlatLength <= EdgePlaces.Aside))
                return Unknown($"The edge “{reading.From}” of “{panel.Spec.Name}” has no length: its curves meet there.", "Measure another edge, or between lettered places.");
            int runs = panel.Edges.Count(e => e.Name == reading.From);
            return runs == 1 ? null : Unknown(runs == 0 ? $"“{panel.Spec.Name}” has no edge “{reading.From}” on its blank." : $"A trim left “{panel.Spec.Name}/{reading.From}” in {runs} parts, so that this does not tell which one was measured.",
                "Measure between lettered places instead.");
        }
        if (new[] { reading.From, reading.To }.FirstOrDefault(l => !letters.Contains(l)) is { } letter)
            return Unknown($"“{panel.Spec.Name}” has no lettered place “{letter}”.", $"The letters on its pattern are {string.Join(", ", letters)}.");
        bool laid = panel.Plan!.Tapes.Any(t => t.How == TapeRun.OnSheet && ((t.From == reading.From && t.To == reading.To) || (t.From == reading.To && t.To == reading.From)));
        return reading.Kind != BuiltKind.Sheet || laid ? null : Unknown($"It is not known how long a tape from {reading.From} to {reading.To} is that is laid on the formed “{panel.Spec.Name}”.",
            "The lengths on the sheet that can be compared are in the plan of the piece, under tape checks; pull others taut (\"part\").");

        Notice Unknown(string message, string mend) => new("built-unknown", Severity.Warning, reading.Where, message, mend);
    }

    /// <summary>A piece that did not come out, because a trim took it away.</summary>
    public static Notice NoPiece(BuiltSpec spec, string where) =>
        new("built-unknown", Severity.Warning, $"{where}.panel", $"There is no piece “{spec.Panel}” to compare with.", "Name a piece that is written.");

    /// <summary>A piece that is not as wanted.</summary>
    public static Notice Beyond(BuiltCheck check, string where)
    {
        int beyond = check.Differences.Count(d => !d.IsWithin);
        string which = check.Differences.Length == 1 ? "The one length" : string.Create(CultureInfo.InvariantCulture, $"{beyond} of the {check.Differences.Length} lengths");
        string message = $"{which} taken off “{check.Panel}” {(beyond == 1 ? "is" : "are")} off by more than the errors allow.";
        BuiltReading worst = check.Differences.MaxBy(d => Math.Abs(d.Off) / Math.Max(d.Error, 1e-9))!.Reading;
        return new Notice("built-beyond", Severity.Warning, where, message, check.Finding switch
        {
            BuiltFinding.Edges => "See under the table what each edge asks for.",
            BuiltFinding.Forming => "The blank is right, as far as was measured: bend it more, or less.",
            _ => $"Tape {(worst.Kind == BuiltKind.Edge ? $"the edge {worst.From}" : $"{worst.From}–{worst.To}")} again first, which is off by the most; if it stands, tape more of the lengths of its plan, so that they tell which edge it is.",
        });
    }
}
