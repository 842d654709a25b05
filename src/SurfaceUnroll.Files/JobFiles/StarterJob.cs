namespace SurfaceUnroll.Files.JobFiles;

/// <summary>The job to start from: it runs as it stands.</summary>
public static class StarterJob
{
    /// <summary>Text of the job file, with comments; lines end in LF.</summary>
    public static string Text { get; } = """
        // A tail cover: a sheet between an arch in front and a hoop behind.
        // The measures are invented. Put yours in their place, then run
        //   surfaceunroll check THIS-FILE.json      to see whether the sheet only bends
        //   surfaceunroll develop THIS-FILE.json    to write the pattern
        // x goes aft, y to the right, z up; every curve runs from its left end to its right end.
        {
          "job": "Tail cover",

          // What plain numbers are: "mm" or "in". A text has its own unit: "175 mm", "6 7/8 in", "1' 2 1/2\"".
          "units": "mm",

          "sheet": { "material": "mild steel", "thickness": 0.9 },

          // The face of the sheet that the tape lay on: "outside", "inside" or "middle".
          "measured": "outside",

          "curves": {
            // What a straight-edge and a radius gauge find, left to right: straight, arc, straight.
            // A turn to the right is positive, so an arch is positive. It leans 25 degrees aft.
            "front": {
              "run": [ { "line": 55 }, { "arc": 120, "turn": 180 }, { "line": 55 } ],
              "at": { "origin": [0, 0, 0], "lean": 25 }
            },

            // Points [across, up] in the curve's own plane. "mirror" makes the left half of the right one,
            // so they start on the centreline. "lean": 90 lays the curve flat: its "up" points aft.
            "rear": {
              "points": [ [0, 295], [62, 272], [95, 210], [120, 0] ],
              "mirror": true,
              "fit": "smooth",
              "at": { "origin": [0, 0, 0], "lean": 90 }
            }
          },

          // The pieces to develop: the sheet from the front curve to the rear curve.
          "panels": [ { "name": "cover", "loft": ["front", "rear"] } ],

          // "A4" or "Letter".
          "paper": "A4"
        }

        """.ReplaceLineEndings("\n");
}
