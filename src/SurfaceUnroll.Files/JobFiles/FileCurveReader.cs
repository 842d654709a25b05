using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Curves.Drawn;
using SurfaceUnroll.Files.CurveFiles;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads a curve from the drawing or the table that the job names.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="open">Opens a file by its name in the job.</param>
internal sealed class FileCurveReader(Measures measures, Func<string, FileReading> open)
{
    /// <summary>Keys that go with <c>file</c>.</summary>
    public static readonly string[] Keys = ["layer", "path", "pick", "join", "zero", "columns", "fileUnits", "reverse", "mirror", "fit", "within", "symmetric"];

    private const long LargestFile = 64 << 20;

    // Ends that meet on a plate are no farther apart either.
    private const double Join = 0.05;

    private static readonly string[] OfDrawings = ["layer", "path", "pick", "join", "zero"];

    private readonly FaultList _faults = measures.Faults;

    /// <summary>The curve; null with faults where it cannot be had.</summary>
    public CurveSpec? Read(JobBlock block, Placement at)
    {
        (JsonTree tree, string path) = (block.Find("file")!, block.PathOf("file"));
        int before = _faults.Count;
        if (measures.Text(tree, path) is not { } file) return null;
        string ending = Path.GetExtension(file).ToUpperInvariant();
        if (ending is not (".DXF" or ".SVG" or ".CSV"))
        {
            _faults.Add("curve-file-kind", path, tree.Place, $"\"{file}\" is not a file that a curve can be read from.", "Name a .dxf or .svg drawing, or a .csv table of points. For a scan use \"section\".");
            return null;
        }
        Check(block, ending);
        double? unit = Unit(block);
        bool reverse = measures.Flag(block, "reverse"), mirror = measures.Flag(block, "mirror");
        (Fit Fit, double? Within)? fit = block.Has("fit") || block.Has("within") ? new FitReader(measures).Read(block) : null;
        DrawingChoice choice = Choice(block);
        Func<Vec3, Vec3, Vec3> shift = Zero(block);
        ImmutableArray<string> columns = Columns(block);
        if (_faults.Count > before || Bytes(file, tree, path) is not { } bytes) return null;
        double fallback = measures.Units == LengthUnit.Inch ? ShopLength.MillimetresPerInch : 1;
        if (ending == ".CSV") return Table(file, CsvPoints.Read(bytes, columns, unit ?? fallback), unit ?? fallback, new TableUse(mirror, reverse, fit?.Fit ?? Fit.Smooth, fit?.Within, measures.Flag(block, "symmetric")), at, tree, path);

        DrawingReading drawing = ending == ".DXF" ? DxfCurves.Read(bytes, unit, fallback) : SvgCurves.Read(bytes, unit);
        if (Tell(file, drawing.Faults, tree, path)) return null;
        var problems = new FileFaults();
        StrandChain? chain = choice.Find(drawing, measures.Show, problems, out int twice);
        if (Tell(file, problems.InOrder(), tree, path) || chain is null) return null;
        chain = Directed(chain, shift, mirror, reverse);
        if (chain.Pieces.Any(p => p.At(1).Point.Length > Measures.Longest))
        {
            _faults.Add("drawing-too-much", path, tree.Place, $"{file}: the curve reaches farther than 100 m from its origin.", "Say what the numbers of the file are (\"fileUnits\"), or lay its origin at the curve with \"zero\": \"ends\".");
            return null;
        }
        CurveSpec? spec = fit?.Fit == Fit.Smooth ? Smooth(chain, file, mirror, at, tree, path) is { } smooth ? smooth with { Within = fit?.Within } : null : new DrawnSpec(file, chain.Pieces, mirror, at);
        return spec is null ? null : spec with { Remarks = [.. FileRemarks.Of(file, drawing, ending == ".SVG", measures.Units, chain, twice, measures.Show)] };
    }

    private void Check(JobBlock block, string ending)
    {
        foreach (string key in Keys.Where(block.Has))
        {
            string? reason = (key, ending) switch
            {
                ("symmetric", not ".CSV") => "\"symmetric\" goes with points; a drawing has none.",
                ("columns", not ".CSV") => "\"columns\" goes with a .csv table; a drawing has none.",
                (_, ".CSV") when OfDrawings.Contains(key) => $"\"{key}\" goes with a drawing; a table has none.",
                ("path", ".DXF") => "A DXF drawing has no paths with names: use \"layer\".",
                _ => null,
            };
            if (reason is not null) _faults.Add("key-misplaced", block.PathOf(key), block.Find(key)!.Place, reason, $"Take \"{key}\" out.");
        }
    }

    private double? Unit(JobBlock block) => measures.Choice<double?>(block, "fileUnits", null,
        ("mm", 1), ("cm", 10), ("m", 1000), ("in", ShopLength.MillimetresPerInch), ("ft", 12 * ShopLength.MillimetresPerInch));

    private DrawingChoice Choice(JobBlock block)
    {
        string? Name(string key) => block.Find(key) is { } tree ? measures.Text(tree, block.PathOf(key)) : null;
        double join = block.Find("join") is { } j ? measures.Length(j, block.PathOf("join"), Allowed.NotNegative) : Join;
        return new DrawingChoice(Name("layer"), Name("path"), Pick(block, measures), join);
    }

    /// <summary>Which of several pieces; null where it is left out.</summary>
    public static int? Pick(JobBlock block, Measures measures)
    {
        if (block.Find("pick") is JsonText { Value: "longest" }) return 1;
        return block.Has("pick") ? measures.Whole(block, "pick", 1, 1, 10_000, "Write \"longest\", or a number: 1 for the longest, 2 for the next.") : null;
    }

    // By how much a curve with given ends is moved.
    private Func<Vec3, Vec3, Vec3> Zero(JobBlock block)
    {
        if (block.Find("zero") is not { } tree) return (_, _) => Vec3.Zero;
        if (tree is JsonText { Value: "ends" }) return (start, end) => new Vec3(0, -0.5 * (start.Y + end.Y), -start.Z);
        if (tree is JsonText)
        {
            measures.Choice(tree, block.PathOf("zero"), 0, ("ends", 0));
            return (_, _) => Vec3.Zero;
        }
        return measures.Tuple(tree, block.PathOf("zero"), "[across, up]", 2) is [double across, double up] ? (_, _) => new Vec3(0, -across, -up) : (_, _) => Vec3.Zero;
    }

    private ImmutableArray<string> Columns(JobBlock block)
    {
        if (block.Find("columns") is not { } tree || measures.List(tree, block.PathOf("columns"), "[\"across\", \"up\"] or [1, 2]") is not { } list) return [];
        if (list.Items.Length is not (2 or 3)) _faults.Add("csv-columns", block.PathOf("columns"), list.Place, "A curve takes two columns, or three in space.", "Name them: [\"across\", \"up\"] or [1, 2].");
        return [.. list.Items.Select((item, i) => item switch
        {
            JsonNumber number => number.Value.ToString(CultureInfo.InvariantCulture),
            _ => measures.Text(item, $"{block.PathOf("columns")}[{Measures.Count(i)}]") ?? "",
        })];
    }

    private byte[]? Bytes(string file, JsonTree tree, string path)
    {
        FileReading opened = open(file);
        if (opened.Bytes is null) _faults.Add("curve-file", path, tree.Place, $"{file}: {opened.Problem}", opened.Mend);
        else if (opened.Bytes.Length > LargestFile) _faults.Add("curve-file", path, tree.Place, $"{file}: the file has more than {Measures.Count((int)(LargestFile >> 20))} MB.", "Save the curve alone in a file of its own.");
        else return opened.Bytes;
        return null;
    }

    // True if there are any.
    private bool Tell(string file, ImmutableArray<FileFault> faults, JsonTree tree, string path)
    {
        foreach (FileFault fault in faults)
        {
            string line = fault.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $", line {fault.Line}") : "";
            _faults.Add(fault.Code, path, tree.Place, $"{file}{line}: {fault.Message}", fault.Mend);
        }
        return faults.Length > 0;
    }

    private static StrandChain Directed(StrandChain chain, Func<Vec3, Vec3, Vec3> shift, bool mirror, bool reverse)
    {
        chain = DrawnDirection.LeftToRight(chain);
        if (reverse) chain = chain.Turned();
        Vec3 by = shift(chain.Pieces[0].At(0).Point, chain.Pieces[^1].At(1).Point);
        if (by != Vec3.Zero) chain = chain with { Pieces = [.. chain.Pieces.Select(p => p.Placed(Frame.Identity with { Origin = by }))] };
        // A mirrored one begins at the centreline.
        bool starts = Math.Abs(chain.Pieces[0].At(0).Point.Y) <= Math.Abs(chain.Pieces[^1].At(1).Point.Y);
        return mirror && !chain.IsClosed && !starts ? chain.Turned() : chain;
    }

    private PointsSpec? Smooth(StrandChain chain, string file, bool mirror, Placement at, JsonTree tree, string path)
    {
        if (!chain.Pieces.All(p => p.IsStraight))
        {
            _faults.Add("drawing-fit", path, tree.Place, $"{file}: the curve has arcs or splines, so there are no corners to lay a smooth curve through.", "Leave \"fit\" out: the curve is taken as it was drawn.");
            return null;
        }
        Vec3[] corners = [chain.Pieces[0].At(0).Point, .. chain.Pieces.Select(p => p.At(1).Point)];
        return new PointsSpec([.. corners.Select(p => new ProfilePoint(new Vec2(p.Y, p.Z), false))], mirror, Fit.Smooth, at);
    }

    // How the points of a table are taken.
    private readonly record struct TableUse(bool Mirror, bool Reverse, Fit Fit, double? Within, bool Symmetric);

    private CurveSpec? Table(string file, CsvReading table, double unit, TableUse how, Placement at, JsonTree tree, string path)
    {
        if (Tell(file, table.Faults, tree, path)) return null;
        ImmutableArray<CsvPoint> points = how.Reverse ? [.. table.Points.Reverse()] : table.Points;
        bool inSpace = points[0].Values.Length == 3;
        ImmutableArray<Vec3> places = [.. points.Select(p => inSpace ? unit * new Vec3(p.Values[0], p.Values[1], p.Values[2]) : unit * new Vec3(0, p.Values[0], p.Values[1]))];
        var faults = new FileFaults();
        for (int i = 0; i < places.Length; i++)
        {
            if (Math.Max(Math.Abs(places[i].X), Math.Max(Math.Abs(places[i].Y), Math.Abs(places[i].Z))) > Measures.Longest) faults.Add("csv-broken", points[i].Line, "This point lies farther out than 100 m.", "Check the decimal point and the unit (\"fileUnits\").");
            if (i > 0 && (places[i] - places[i - 1]).Length <= PointListReader.SamePlace) faults.Add("csv-broken", points[i].Line, $"This is the same place as in line {Measures.Count(points[i - 1].Line)}.", "Take one of the two out.");
        }
        if (inSpace && how.Mirror) faults.Add("csv-broken", 0, "Points in space are not mirrored.", "Choose two columns with \"columns\", or leave \"mirror\" out.");
        if (Tell(file, faults.InOrder(), tree, path)) return null;
        return inSpace ? new SpaceSpec(places, how.Fit, at) { Within = how.Within } : new PointsSpec([.. places.Select((p, i) => new ProfilePoint(new Vec2(p.Y, p.Z), points[i].Corner))], how.Mirror, how.Fit, at) { Symmetric = how.Symmetric, Within = how.Within, Traced = table.Traced };
    }
}
