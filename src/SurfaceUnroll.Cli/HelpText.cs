namespace SurfaceUnroll.Cli;

/// <summary>The words of <c>--help</c>.</summary>
internal static class HelpText
{
    /// <summary>Help of a command; of the whole program for any other name.</summary>
    public static string Of(string command) => command switch
    {
        "develop" => Develop,
        "check" => Check,
        "flatten" => Flatten,
        "trace" => Trace,
        "new" => New,
        "schema" => Schema,
        "materials" => Materials,
        "page-test" => PageTest,
        "verify" => Verify,
        "bench" => Bench,
        _ => Program,
    };

    private const string Program = """
        surfaceunroll makes flat patterns at 1:1 from measured profiles of sheet-metal covers.

        You measure two edges of the cover, write them into a job file, and get a
        pattern to print on ordinary paper and tape together, and the same pattern for a
        cutting machine.

          surfaceunroll bench                do all of it on a page in your browser
          surfaceunroll new cover.json       write a starter job to put your measures in
          surfaceunroll check cover.json     see whether the sheet only bends, and sizes
          surfaceunroll develop cover.json   write the pattern and a report
          surfaceunroll flatten part.obj --out flat.obj
                                             lay any sheet of triangles flat
          surfaceunroll trace photo.jpg …    measure an edge on a photo with a sheet of A4 in it
          surfaceunroll materials            list the materials and their numbers
          surfaceunroll page-test            measure how true your printer prints
          surfaceunroll verify cover-pattern read all files back and compare them
          surfaceunroll schema               print the JSON Schema, for your editor

        Each command tells more with --help. --version prints the version.

        Exit status: 0 done, 1 something failed, 2 the job or the command line cannot be used,
        3 a panel is past a limit (with --strict only).
        """;

    private const string Bench = """
        surfaceunroll bench [FOLDER | JOB.json] [--port N] [--share] [--no-browser]

        Opens the layout bench, a page in your browser on which the whole job is done: measure,
        fit up, check, cut, form. It runs on this machine alone and asks nothing of the network.
        Every key is saved at once, in job files that the other commands read. Ctrl+C stops it.

          FOLDER        where the jobs lie; otherwise "SurfaceUnroll" in your documents
          JOB.json      a job to open at once
          --port N      port of the page: 4747 if it is free; 0 takes any
          --share       let phones in the shop's own network in, each with a code that is
                        asked once; the terminal shows address, code and a picture to scan
          --no-browser  print the address, do not open it
        """;

    private const string Develop = """
        surfaceunroll develop JOB.json [--out DIR] [--strict] [--paper SIZE] [--kerf LENGTH]
                              [--printer NAME] [--dxf r12]

        Develops every panel of the job and writes, for each:
          NAME.pdf           the pattern in tiles to print at 100 % and tape together
          NAME.dxf           the pattern for a laser, plasma or router, in mm
          NAME.svg           the same for drawing programs, in mm
          NAME.obj           the formed sheet as a mesh, with its place on the flat blank
          NAME-preview.svg   a picture of the formed sheet and its flat
        and report.json with every number. Files of an earlier run are replaced once all new
        ones are written; each file is always whole.

          --out DIR       write into this folder; otherwise one beside the job file, named
                          after it with "-pattern"
          --paper SIZE    print on this paper instead of the job's: A4, B2, letter, "ANSI D",
                          "roll 610", "600 x 900"
          --printer NAME  correct every sheet for a printer that page-test has measured
          --kerf LENGTH   full width of the cut, as 0.2mm, in place of the job's: the cut lines
                          of DXF and SVG are moved by half of it into the waste
          --dxf r12       write DXF for machines that read no later version
          --strict        end with status 3 if a panel is past a limit, so that a script can
                          stop; the files are written all the same
        """;

    private const string Check = """
        surfaceunroll check JOB.json [--strict]

        Prints the verdicts and tables that develop would print, and writes nothing.

          --strict    end with status 3 if a panel is past a limit
        """;

    private const string Flatten = """
        surfaceunroll flatten MESH.obj --out OUT.obj [--repeat N] [--json]

        Lays a sheet of triangles flat with the least stretching and shrinking. The sheet,
        an .obj or .stl file in mm, is one piece with one edge all round and no holes.
        OUT.obj holds it again, with the place of each vertex on the blank as "vt", in mm.
        A file of that name is replaced once the new one is whole.

          --out OUT.obj   file to write
          --repeat N      flatten N times, after once to warm up, and print the median time
                          of them; 1 otherwise
          --json          print one JSON object and nothing else
        """;

    private const string Trace = """
        surfaceunroll trace PHOTO --sheet SIZE --corners X,Y X,Y X,Y X,Y --edge X,Y X,Y … --out CURVE.csv
        surfaceunroll trace PHOTO --marks MARKS.csv --edge X,Y X,Y … --out CURVE.csv

        Measures an edge, or a profile drawn on paper, on a photo (JPEG or PNG) that shows
        something of known size in the same plane. Perspective and the bow of the lens are taken
        out, the edge is followed between your taps, and the curve is written as a table for the
        job, with the error that it may have. X,Y are pixels to the right and down from the
        upper left corner of the upright photo; any picture program shows them.

          --sheet SIZE      the sheet: A4, letter, or its own "BOTTOM x LEFT", "296.5 x 210"
          --corners X,Y ... its lower left, lower right, upper right and upper left corner
          --marks FILE      a table instead, with rows "A, 812, 455" (a mark and its pixels) and
                            "A, B, 250" (a distance by tape; of four marks the four sides and
                            both diagonals), or rows "A, 812, 455, 0, 250" (mark, pixels, and
                            its place across and up). With six marks the lens's bow is found
          --edge X,Y ...    taps on the edge from end to end; X,Y,corner at a corner
          --follow edge     where light and dark meet (if left out); "line": the middle of a
                            dark line; "taps": nothing, the taps are the curve
          --tape LENGTH     how well you measured: two of three measures keep to it; 0.3 mm
          --units mm        of all lengths; or "in"
          --zero ends       across 0 midway between the ends (if left out); or "reference": at
                            the sheet's lower left corner, or where the marks have it
          --level           turn the curve so that both ends are at one height
          --picture FILE.png  draw the traced line over the photo, to look at
          --out CURVE.csv   table to write
        """;

    private const string New = """
        surfaceunroll new FILE.json

        Writes a starter job with a comment on every key. It runs as it stands: try
        "surfaceunroll develop FILE.json", then put in your own measures. A file that is
        already there is left alone.
        """;

    private const string Materials = """
        surfaceunroll materials [NAME]

        Lists the materials that a job can name: strengths, elongation at break, modulus,
        density, K of a sharp bend, least inside radius in thicknesses, gauge table, and
        the words that each is called by.

          NAME   tell one material in full, with the source of each number and its
                 gauges: surfaceunroll materials stainless steel
        """;

    private const string PageTest = """
        surfaceunroll page-test [--paper SIZE] [--out FILE.pdf]
        surfaceunroll page-test --measured ACROSS ALONG [UP DOWN] [--name NAME] [--paper SIZE]

        Writes a page with two long bars at right angles and two diagonals, to print at
        100 % and to measure. Then takes what you measured and keeps it, so that
        "surfaceunroll develop JOB.json --printer NAME" draws every sheet a little larger,
        smaller or askew, and it comes out true.

          --measured ...  the bars across and along the page, and if you can the diagonals
                          up and down, in mm or as "6 7/8 in"; bars whole or to the tick at
                          100 mm
          --name NAME     what to call the printer; "printer" otherwise
          --paper SIZE    paper that the page is made for; A4 otherwise
          --out FILE.pdf  file to write; page-test.pdf otherwise
        """;

    private const string Verify = """
        surfaceunroll verify DIR

        Reads the files of a developed job back from disk, tapes the printed sheets
        together by their marks, and says for every piece whether print, DXF, SVG and OBJ
        show the same line within 0.05 mm and at 1:1, and whether nested sheets and
        all-pieces.pdf show every piece like that. Ends with status 1 if they do not.
        """;

    private const string Schema = """
        surfaceunroll schema

        Prints the JSON Schema of the job file. Save it and name it in your editor to get
        completion and checking while you write a job.
        """;
}
