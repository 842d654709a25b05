using System.Collections.Immutable;
using System.Globalization;

namespace SurfaceUnroll.Jobs;

/// <summary>What is said of errors that are carried to the edges.</summary>
internal static class ErrorNotices
{
    /// <summary>True of what is said here, but for allowances.</summary>
    public static bool IsOne(Notice notice) => notice.Code.StartsWith("error-", StringComparison.Ordinal);

    /// <summary>Edges that do not follow the readings in proportion.</summary>
    public static Notice NotLinear(PanelInWork work) => new(
        "error-not-linear", Severity.Note, work.Where,
        $"The edges of “{work.Panel.Spec.Name}” do not follow its readings in proportion: their bands come from random jobs.", "Nothing to do. With readings that are off by less they would.");

    /// <summary>Too many jobs whose readings are off by chance give no sheet.</summary>
    public static Notice NotTold(PanelInWork work, double failed) => new(
        "error-not-told", Severity.Warning, work.Where,
        string.Create(CultureInfo.InvariantCulture, $"With readings off by their errors, {Math.Ceiling(100 * failed)} of 100 chance jobs give no “{work.Panel.Spec.Name}” at all; how far its edges may be off cannot be told."),
        "Check the errors, and measure anew what has the largest.");

    /// <summary>An allowance that should follow a band, where none is known.</summary>
    /// <param name="what">The edge, or the panel.</param>
    /// <param name="joint">Label of the joint; null where it is asked for all edges of a panel.</param>
    /// <param name="where">Path in the job file.</param>
    public static Notice NoBand(string what, string? joint, string where) => new(
        "trim-auto-no-band", Severity.Error, where,
        $"{(joint is null ? "The trim" : $"Joint {joint}")} should leave on “{what}” what the errors of its readings ask for, but no band is known there.",
        "Give the curves of the piece an \"error\", such as \"error\": 0.5, if they have none; split panels, meshes, pieces of a curve with a \"freedom\", and pieces of which it is said that their band cannot be told, have no band. Write then how much is left on.");

    /// <summary>Panels of a curve that a freedom moved: where it lies does not follow from its readings one by one.</summary>
    public static IEnumerable<Notice> Moved(ImmutableArray<PanelInWork> panels)
    {
        Func<PanelSpec, bool> moved = MovedCurves.Reach(panels);
        return panels.Where(p => p.Panel.Piece is null && moved(p.Source)).Select(p => new Notice(
            "error-not-carried", Severity.Note, p.Where,
            $"Errors of readings are not carried to the edges of “{p.Source.Name}”: one of its curves, or of a sheet that trims it, was moved so that a sheet only bends, and with other readings it would move elsewhere.",
            "Take \"freedom\" out to see the bands of the sheet as measured."));
    }

    /// <summary>Split panels, whose seams would stand elsewhere with other readings.</summary>
    public static IEnumerable<Notice> Split(ImmutableArray<PanelInWork> panels) => panels
        .Where(p => p.Panel.Piece is { Number: 1 })
        .Select(p => new Notice(
            "error-not-carried", Severity.Note, p.Where,
            $"Errors of readings are not carried to the edges of “{p.Source.Name}”: its seams would stand elsewhere with other readings.", "Develop it in one piece to see its bands."));
}
