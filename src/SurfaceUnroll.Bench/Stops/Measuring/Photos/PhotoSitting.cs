using System.Collections.Immutable;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Bench.Stops.Measuring.Photos;

/// <summary>By what a photo is measured.</summary>
public enum PhotoMeasure
{
    /// <summary>A sheet of paper.</summary>
    Sheet,

    /// <summary>Four marks with sides and diagonals by tape.</summary>
    Taped,

    /// <summary>Marks with measured places.</summary>
    Placed,
}

/// <summary>A point on a photo that can be moved.</summary>
/// <param name="Id">a, b … of the reference; 1, 2 … of the edge.</param>
/// <param name="Name">What it is.</param>
/// <param name="At">Pixels.</param>
/// <param name="OfEdge">On the edge; otherwise of the reference.</param>
/// <param name="Corner">A corner of the edge.</param>
public readonly record struct PhotoHandle(string Id, string Name, Vec2 At, bool OfEdge, bool Corner);

/// <summary>All that was said of one photo: what was tapped and what was measured. Each change gives another one.</summary>
public sealed record PhotoSitting
{
    /// <summary>Pairs of marks that a tape goes between: four sides, two diagonals.</summary>
    public static readonly ImmutableArray<(int From, int To)> Pairs = [(0, 1), (1, 2), (2, 3), (3, 0), (0, 2), (1, 3)];

    private static readonly string[] Corners = ["lower left corner", "lower right corner", "upper right corner", "upper left corner"];

    /// <summary>By what it is measured.</summary>
    public PhotoMeasure Measure { get; init; }

    /// <summary>Size of the sheet, as typed.</summary>
    public string Sheet { get; init; } = "A4";

    /// <summary>Taps of the reference, pixels.</summary>
    public ImmutableArray<Vec2> Reference { get; init; } = [];

    /// <summary>Distances by tape, as typed, one for each of <see cref="Pairs"/>.</summary>
    public ImmutableArray<string> Distances { get; init; } = ["", "", "", "", "", ""];

    /// <summary>Places of marks, as typed: across, up.</summary>
    public ImmutableArray<(string Across, string Up)> Places { get; init; } = [];

    /// <summary>Taps of the edge.</summary>
    public ImmutableArray<EdgeTap> Edge { get; init; } = [];

    /// <summary>What is followed; null: the taps are the curve.</summary>
    public EdgeKind? Follow { get; init; } = EdgeKind.Edge;

    /// <summary>Both ends at one height.</summary>
    public bool Level { get; init; }

    /// <summary>Where the next tap of a sheet or of four marks goes, for one that was taken out; null: behind the others.</summary>
    public int? Gap { get; init; }

    /// <summary>The next taps go to the edge.</summary>
    public bool OnEdge { get; init; }

    /// <summary>The reference has all taps that it takes; marks with places may have more.</summary>
    public bool HasReference => Reference.Length >= 4;

    /// <summary>What the next tap is.</summary>
    public string Asks => OnEdge
        ? Edge.Length == 0 ? "Tap where the edge begins." : Edge.Length == 1 ? "Tap along the edge wherever it bends, and where it ends." : "Tap on along the edge, or drag what is there."
        : Measure == PhotoMeasure.Sheet ? Reference.Length < 4 ? $"Tap the sheet's {Corners[Next]}." : "The sheet is tapped."
        : Reference.Length < 4 || Measure == PhotoMeasure.Placed ? $"Tap mark {Letter(Next)}{(Measure == PhotoMeasure.Taped ? "; go round the edge, against the clock" : "")}." : "All four marks are tapped.";

    /// <summary>Points to be drawn, those of the reference first.</summary>
    public ImmutableArray<PhotoHandle> Handles =>
        [.. Reference.Select((p, i) => i < Gap || Gap is null ? (p, i) : (p, i: i + 1)).Select(r =>
            new PhotoHandle(Letter(r.i), Measure == PhotoMeasure.Sheet && r.i < 4 ? $"The sheet's {Corners[r.i]}" : $"Mark {Letter(r.i)}", r.p, false, false)),
        .. Edge.Select((t, i) => new PhotoHandle($"{i + 1}", $"Point {i + 1} of the edge", t.At, true, t.Corner))];

    /// <summary>A tap was made.</summary>
    /// <param name="at">Pixels.</param>
    /// <param name="last">On the edge it is the last one; otherwise it goes where it lies.</param>
    public PhotoSitting Tapped(Vec2 at, bool last = false)
    {
        if (OnEdge) return this with { Edge = last ? Edge.Add(new EdgeTap(at, false)) : Insert(at) };
        if (Measure != PhotoMeasure.Placed && Reference.Length >= 4) return this;
        ImmutableArray<Vec2> taps = Reference.Insert(Next, at);
        return this with { Reference = taps, Gap = null, Places = Padded(Places, taps.Length), OnEdge = Measure != PhotoMeasure.Placed && taps.Length == 4 };
    }

    /// <summary>A point was moved.</summary>
    /// <param name="handle">Index in <see cref="Handles"/>.</param>
    /// <param name="to">Pixels.</param>
    public PhotoSitting Moved(int handle, Vec2 to) =>
        handle < 0 || handle >= Reference.Length + Edge.Length ? this
        : handle < Reference.Length ? this with { Reference = Reference.SetItem(handle, to) }
        : this with { Edge = Edge.SetItem(handle - Reference.Length, Edge[handle - Reference.Length] with { At = to }) };

    /// <summary>A point is taken out.</summary>
    public PhotoSitting Without(int handle) =>
        handle < 0 || handle >= Reference.Length + Edge.Length ? this
        : handle >= Reference.Length ? this with { Edge = Edge.RemoveAt(handle - Reference.Length) }
        : Measure == PhotoMeasure.Placed ? this with { Reference = Reference.RemoveAt(handle), Places = handle < Places.Length ? Places.RemoveAt(handle) : Places, OnEdge = false }
        // The others keep their names, and what was taped between them; with two of them out it begins anew.
        : Gap is null ? this with { Reference = Reference.RemoveAt(handle), Gap = handle, OnEdge = false } : this with { Reference = [], Gap = null, OnEdge = false };

    /// <summary>A point of the edge becomes a corner, or is none any more.</summary>
    public PhotoSitting Cornered(int tap, bool corner) => this with { Edge = Edge.SetItem(tap, Edge[tap] with { Corner = corner }) };

    /// <summary>The reference, or what is missing or cannot be read.</summary>
    public (PhotoReference? Reference, string? Problem) Understood(LengthUnit units)
    {
        if (!HasReference) return (null, null);
        if (Measure == PhotoMeasure.Sheet)
        {
            (SheetReference? sheet, string problem, string mend) = ReferenceText.Sheet(Sheet, Reference, units, HandErrors.Tape);
            return (sheet, sheet is null ? $"{problem} {mend}" : null);
        }
        double?[] Read(IEnumerable<string> texts) => [.. texts.Select(t => ShopLength.Parse(t, units) is { IsLength: true } r ? r.Millimetres : (double?)null)];
        if (Measure == PhotoMeasure.Taped)
        {
            double?[] lengths = Read(Distances);
            int wrong = Array.FindIndex(lengths, l => l is not > 0);
            return wrong >= 0
                ? (null, $"How far is it from {Letter(Pairs[wrong].From)} to {Letter(Pairs[wrong].To)}?")
                : (new MarkReference([.. Reference.Select((p, i) => new PhotoMark(Letter(i), p, null))], [.. Pairs.Select((p, i) => new TapedDistance(p.From, p.To, lengths[i]!.Value))], HandErrors.Tape), null);
        }
        double?[] across = Read(Places.Select(p => p.Across)), up = Read(Places.Select(p => p.Up));
        int without = Enumerable.Range(0, Reference.Length).FirstOrDefault(i => across[i] is null || up[i] is null, -1);
        return without >= 0
            ? (null, $"Where is mark {Letter(without)}?")
            : (new MarkReference([.. Reference.Select((p, i) => new PhotoMark(Letter(i), p, new Vec2(across[i]!.Value, up[i]!.Value)))], [], HandErrors.Tape), null);
    }

    /// <summary>The curve as a job has it.</summary>
    /// <param name="points">mm.</param>
    /// <param name="error">Stated, mm.</param>
    /// <param name="units">Of the job.</param>
    /// <param name="at">Placement to keep, as written; null for none.</param>
    public static string Written(ImmutableArray<ProfilePoint> points, double error, LengthUnit units, string? at)
    {
        // Hundredths of a millimetre: below what a photo tells.
        (double per, string format) = units == LengthUnit.Inch ? (ShopLength.MillimetresPerInch, "0.####") : (1, "0.##");
        string Number(double mm) => (Math.Round(mm / per, 4) + 0.0).ToString(format, System.Globalization.CultureInfo.InvariantCulture) is var text && text == "-0" ? "0" : text;
        return $"{{ \"points\": [ {string.Join(", ", points.Select(p => $"[{Number(p.Place.X)}, {Number(p.Place.Y)}{(p.Corner ? ", \"corner\"" : "")}]"))} ], \"error\": \"{ErrorText.OfReadings(error)}\"{(at is null ? "" : $", \"at\": {at}")} }}";
    }

    /// <summary>A, B, C …</summary>
    public static string Letter(int mark) => mark < 26 ? $"{(char)('A' + mark)}" : $"{(char)('A' + mark / 26 - 1)}{(char)('A' + mark % 26)}";

    // Number of the next tap of the reference.
    private int Next => Gap ?? Reference.Length;

    private static ImmutableArray<(string, string)> Padded(ImmutableArray<(string, string)> places, int count) => [.. places, .. Enumerable.Repeat(("", ""), Math.Max(0, count - places.Length))];

    // Between the two taps that it lies between, or on from the nearer end.
    private ImmutableArray<EdgeTap> Insert(Vec2 at)
    {
        var tap = new EdgeTap(at, false);
        if (Edge.Length < 2) return Edge.Add(tap);
        (int best, double least) = (Edge.Length, (at - Edge[^1].At).Length);
        if ((at - Edge[0].At).Length < least) (best, least) = (0, (at - Edge[0].At).Length);
        for (int i = 1; i < Edge.Length; i++)
        {
            double share = Segment.NearestShare(at, Edge[i - 1].At, Edge[i].At), off = Segment.Distance(at, Edge[i - 1].At, Edge[i].At);
            if (share is > 0 and < 1 && off < least) (best, least) = (i, off);
        }
        return Edge.Insert(best, tap);
    }
}
