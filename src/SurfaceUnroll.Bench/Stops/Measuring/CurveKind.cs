using SurfaceUnroll.Files.JobTexts;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>A way to measure a curve.</summary>
/// <param name="Key">Key of the job file that makes a curve one of this kind.</param>
/// <param name="Name">On its card.</param>
/// <param name="Says">What is in hand when it is the right one.</param>
/// <param name="How">How it is taken, step by step.</param>
/// <param name="Millimetres">Measures to begin with, as the inner part of a block, in a job in mm.</param>
/// <param name="Inches">The same in a job in inches.</param>
/// <param name="Picture">The component that shows how it is taken.</param>
public sealed record CurveKind(string Key, string Name, string Says, IReadOnlyList<string> How, string Millimetres, string Inches, Type Picture)
{
    /// <summary>It stands where it was measured and has no placement.</summary>
    public bool Stands { get; init; }

    /// <summary>All kinds, the most usual first.</summary>
    public static IReadOnlyList<CurveKind> All() =>
    [
        new("points", "Table of points", "A contour gauge, or a square and a tape: how far across, how far up.",
            [
                "Press the contour gauge square to the sheet and draw its line on board, or stand a square on a level line under the profile.",
                "Draw a base line (up 0) and the centreline (across 0).",
                "Every hand's width, and closer in tight bends, read how far across and how far up. Always take both ends.",
                "If both halves are alike, measure the right half alone, from the centreline out, and tick the mirror.",
            ],
            """ "points": [ [0, 120], [60, 108], [102, 64], [120, 0] ], "mirror": true """,
            """ "points": [ [0, "4 3/4"], ["2 3/8", "4 1/4"], [4, "2 1/2"], ["4 3/4", 0] ], "mirror": true """, typeof(Pictures.PointsPicture)),
        new("run", "Straights and arcs", "A straight-edge and radius gauges: so much straight, then such a radius.",
            [
                "Lay the straight-edge on the sheet and mark where it begins to lift: there a straight ends and an arc begins.",
                "Find the radius gauge that shows no light on each arc.",
                "Read the turn of each arc with a bevel: the angle between the straights before and behind it.",
                "Write them down from left to right. A turn to the right is positive, so an arch is.",
            ],
            """ "run": [ { "line": 55 }, { "arc": 120, "turn": 180 }, { "line": 55 } ] """,
            """ "run": [ { "line": "2 1/4" }, { "arc": "4 3/4", "turn": 180 }, { "line": "2 1/4" } ] """, typeof(Pictures.RunPicture)),
        new("chord", "Chord and rise", "One even arc: a straight-edge across it and a rule at its middle.",
            [
                "Lay a straight-edge from end to end of the arc: its length is the chord.",
                "At the middle of the straight-edge measure square to the sheet: that is the rise.",
                "For more than a half circle the rise is more than half the chord. A minus sign makes it sag.",
            ],
            """ "chord": 240, "rise": 90 """, """ "chord": "9 1/2", "rise": "3 1/2" """, typeof(Pictures.ChordPicture)),
        new("plan", "Plan and side view", "A curve that bends two ways, such as a hoop that kicks up.",
            [
                "Drop points of the curve to the floor with a square or a plumb line and measure their outline there: the plan.",
                "From one cross line measure how far aft each point lies, and from the floor how high: the side view.",
                "The side view needs its own points alone; it goes on straight beyond the first and the last.",
            ],
            """ "plan": { "run": [ { "line": 160 }, { "arc": 120, "turn": 180 }, { "line": 160 } ] }, "side": [ [0, 0], [140, 4], [280, 40] ] """,
            """ "plan": { "run": [ { "line": 6 }, { "arc": "4 3/4", "turn": 180 }, { "line": 6 } ] }, "side": [ [0, 0], ["5 1/2", "1/4"], [11, "1 5/8"] ] """, typeof(Pictures.PlanSidePicture)),
        new("xyz", "Points in space", "A measuring arm, or three tapes: how far aft, to the right and up.",
            [
                "Choose one corner of the bench or the frame as the place that everything is measured from.",
                "For each point take how far aft, how far to the right (left is minus) and how high.",
                "Go along the edge from its left end to its right end.",
            ],
            """ "xyz": [ [0, -120, 0], [40, -60, 95], [50, 0, 115], [40, 60, 95], [0, 120, 0] ] """,
            """ "xyz": [ [0, "-4 3/4", 0], ["1 1/2", "-2 3/8", "3 3/4"], [2, 0, "4 1/2"], ["1 1/2", "2 3/8", "3 3/4"], [0, "4 3/4", 0] ] """, typeof(Pictures.SpacePicture)),
        new("file", "Drawing or table", "A DXF or SVG drawing of the profile, or a CSV table of points.",
            [
                "Draw the profile to full size, or save the points of a measuring program as a table.",
                "Save the curve alone, or on a layer of its own, as DXF (R12 to 2018), SVG or CSV.",
                "Bring the file: it is kept beside the job.",
                "Look at the drawing here: the left end is where the curve begins.",
            ],
            """ "file": "" """, """ "file": "" """, typeof(Pictures.FilePicture)),
        new("section", "Section of a scan", "A scanned part: the line in which a plane cuts it.",
            [
                "Scan the part and set the scan to the place that all is measured from, aft as x, right as y, up as z.",
                "Save it as OBJ or STL and bring the file.",
                "Say where the plane stands that cuts it.",
            ],
            """ "section": { "mesh": "", "plane": { "origin": [0, 0, 0] } } """, """ "section": { "mesh": "", "plane": { "origin": [0, 0, 0] } } """, typeof(Pictures.ScanPicture)) { Stands = true },
    ];

    /// <summary>The kinds that may be a plan view: those that lie flat.</summary>
    public static IReadOnlyList<CurveKind> Flat() => [.. All().Where(k => k.Key is "points" or "run" or "chord" or "file")];

    /// <summary>The kind of the curve at a path; null where it holds none, or more than one.</summary>
    public static CurveKind? Of(JobText text, string path)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Find(path) is { } curve && All().Where(k => curve.Keys.Contains(k.Key)).ToArray() is [var kind] ? kind : null;
    }

    /// <summary>Measures to begin with.</summary>
    /// <param name="inches">The job is in inches.</param>
    /// <param name="at">Placement to keep, as written; null for none.</param>
    /// <returns>JSON of a curve.</returns>
    public string Start(bool inches, string? at) => $"{{{(inches ? Inches : Millimetres).TrimEnd()}{(at is null || Stands ? "" : $", \"at\": {at}")} }}";
}
