namespace SurfaceUnroll.Bench.Desk;

/// <summary>What a new job begins with.</summary>
/// <param name="Key">Of its picture.</param>
/// <param name="Name">On its card.</param>
/// <param name="Says">What it is for.</param>
/// <param name="Title">Title of the job.</param>
/// <param name="Text">The job file.</param>
public sealed record Beginning(string Key, string Name, string Says, string Title, string Text)
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Beginning> All() => [Arch(), Tables()];

    private static Beginning Arch() => new("arch", "Start from a half arch and a U hoop", "A tail cover or hood: change the radii, legs and lean to yours.", "Arch and hoop", """
        // A sheet from a half arch in front to a U-shaped hoop that lies behind it. The measures are a start: put yours in their place.
        {
          "job": "Arch and hoop",
          "units": "mm",
          "sheet": { "material": "mild steel", "thickness": 0.9 },
          "measured": "outside",
          "curves": {
            "front": {
              "run": [ { "line": 50 }, { "arc": 120, "turn": 180 }, { "line": 50 } ],
              "at": { "origin": [0, 0, 0], "lean": 20 }
            },
            "rear": {
              "run": [ { "line": 160 }, { "arc": 120, "turn": 180 }, { "line": 160 } ],
              "at": { "origin": [0, 0, 0], "lean": 90 }
            }
          },
          "panels": [ { "name": "cover", "loft": ["front", "rear"] } ],
          "paper": "A4"
        }

        """.ReplaceLineEndings("\n"));

    private static Beginning Tables() => new("tables", "Start from two measured tables", "Points of the profile in front and of the one behind, as the tape and the square found them.", "Two profiles", """
        // A sheet between two measured profiles, each a table of points: how far across, how far up. The measures are a start: put yours in their place.
        {
          "job": "Two profiles",
          "units": "mm",
          "sheet": { "material": "mild steel", "thickness": 0.9 },
          "measured": "outside",
          "curves": {
            "front": {
              "points": [ [0, 160], [60, 145], [105, 100], [125, 0] ],
              "mirror": true,
              "at": { "origin": [0, 0, 0] }
            },
            "rear": {
              "points": [ [0, 110], [50, 100], [90, 65], [105, 0] ],
              "mirror": true,
              "at": { "origin": [300, 0, 0] }
            }
          },
          "panels": [ { "name": "cover", "loft": ["front", "rear"] } ],
          "paper": "A4"
        }

        """.ReplaceLineEndings("\n"));
}
