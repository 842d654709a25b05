using System.Collections.Immutable;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>A whole job as read from its file; lengths in mm, angles in radians.</summary>
/// <param name="Name">Title of the job.</param>
/// <param name="Units">Units for labels and messages.</param>
/// <param name="Sheet">Material and thickness.</param>
/// <param name="Measured">Face of the sheet on which the curves were measured.</param>
/// <param name="Curves">Measured curves in the order of the file; names are unique.</param>
/// <param name="Panels">Pieces to develop in the order of the file; names, and the file names made of them, are unique.</param>
/// <param name="Paper">Paper to print on.</param>
public sealed record Job(
    string Name,
    LengthUnit Units,
    SheetStock Sheet,
    MeasuredFace Measured,
    ImmutableArray<NamedCurve> Curves,
    ImmutableArray<PanelSpec> Panels,
    PaperSpec Paper)
{
    /// <summary>How edges meet, in the order of the file.</summary>
    public ImmutableArray<JointSpec> Joints { get; init; } = [];

    /// <summary>Openings that go through several panels.</summary>
    public ImmutableArray<OpeningSpec> Openings { get; init; } = [];

    /// <summary>What the shop's machines can do.</summary>
    public ShopSpec Shop { get; init; } = ShopSpec.Unknown;

    /// <summary>Sheets that pieces are cut from; none if the job does not say.</summary>
    public ImmutableArray<StockSheet> Stock { get; init; } = [];

    /// <summary>How pieces are laid out on them.</summary>
    public NestSpec Nest { get; init; } = NestSpec.Default;

    /// <summary>What the files for cutting machines are to be.</summary>
    public CuttingSpec Cutting { get; init; } = CuttingSpec.Default;

    /// <summary>What was measured on finished pieces.</summary>
    public ImmutableArray<BuiltSpec> Built { get; init; } = [];

    /// <summary>Only the edges of its blanks are asked for: what else would be advised is left out.</summary>
    internal bool EdgesOnly { get; init; }
}

/// <summary>What the piece is cut from.</summary>
/// <param name="Material">As written in the job, for labels.</param>
/// <param name="Thickness">mm, ≥ 0.</param>
public sealed record SheetStock(string Material, double Thickness)
{
    /// <summary>How the length of metal in sharp bends is reckoned.</summary>
    public BendSetup Bending { get; init; } = BendSetup.Default;

    /// <summary>The material with its numbers: one of the list, or the job's own.</summary>
    public Material Metal { get => field ?? Materials.Of(Material).Material; init; }

    /// <summary>Smallest inside radius of a bend, mm.</summary>
    public double MinimumRadius => Metal.MinimumRadius.Value * Thickness;
}

/// <summary>Face of the sheet that a measured curve lies on.</summary>
public enum MeasuredFace
{
    /// <summary>Middle surface: nothing to correct.</summary>
    Middle,

    /// <summary>The outside, to which (front → rear) × (left → right) points.</summary>
    Outside,

    /// <summary>The inside.</summary>
    Inside,
}

/// <summary>A measured curve and its name in the job.</summary>
/// <param name="Name">Key under <c>curves</c>.</param>
/// <param name="Spec">What was measured.</param>
public sealed record NamedCurve(string Name, CurveSpec Spec);

/// <summary>One sheet of a job: between measured curves, given as a mesh, or a flat or bent plate.</summary>
/// <param name="Name">As written in the job.</param>
/// <param name="Loft">Names of the curves from front to rear, two for a ruled sheet; empty for other kinds.</param>
/// <param name="Elements">How element lines are matched.</param>
public sealed record PanelSpec(string Name, ImmutableArray<string> Loft, ElementMatching Elements)
{
    /// <summary>The formed sheet itself, for example a cleaned scan; null for a loft.</summary>
    public MeshSource? Mesh { get; init; }

    /// <summary>A flat plate; null for other kinds.</summary>
    public FlatSpec? Flat { get; init; }

    /// <summary>A plate with bends; null for other kinds.</summary>
    public BentSpec? Bent { get; init; }

    /// <summary>Face on which the curves of this panel lie; null: that of the job.</summary>
    public MeasuredFace? Measured { get; init; }

    /// <summary>Metal cut away along planes and other panels, in order.</summary>
    public ImmutableArray<TrimSpec> Trims { get; init; } = [];

    /// <summary>Holes and openings of this panel alone.</summary>
    public ImmutableArray<OpeningSpec> Openings { get; init; } = [];

    /// <summary>Names of the edges that must keep their true length on the blank.</summary>
    public ImmutableArray<string> Hold { get; init; } = [];

    /// <summary>What shrinking costs against stretching by as much, ≥ 1.</summary>
    public double ShrinkCost { get; init; } = 1;

    /// <summary>Into how many pieces the sheet is split, 1 to 6.</summary>
    public int Pieces { get; init; } = 1;

    /// <summary>Which way the seams between the pieces run.</summary>
    public SeamDirection Along { get; init; } = SeamDirection.Lengthwise;

    /// <summary>Relief cuts.</summary>
    public ImmutableArray<SlitSpec> Slits { get; init; } = [];

    /// <summary>Along every edge that has no allowance, what its band asks for is left on.</summary>
    public bool AutoTrim { get; init; }

    /// <summary>Which curve may move so that the sheet only bends, and how far; null if none may.</summary>
    public FreedomSpec? Freedom { get; init; }

    /// <summary>In one word: loft, mesh, flat or bent.</summary>
    public string Kind => this switch { { Mesh: not null } => "mesh", { Flat: not null } => "flat", { Bent: not null } => "bent", _ => "loft" };

    /// <summary>Names of all curves of the job that the panel needs.</summary>
    public IEnumerable<string> CurveNames =>
    [
        .. Loft, .. Flat?.Curves ?? [], .. Bent is null ? [] : Bent.Plan.Where(p => p.Own is null).Select(p => p.Name),
        .. Bent?.Side is SideOfCurve side ? new[] { side.Curve } : [], .. Openings.Select(o => o.Shape).OfType<CurveShape>().Select(s => s.Curve),
    ];

    /// <summary>File name without extension: lower case, runs of other characters than letters and digits turned to <c>-</c>.</summary>
    public string FileName => Slug.Of(Name);
}

/// <summary>A formed sheet read from a mesh file.</summary>
/// <param name="File">As written in the job.</param>
/// <param name="Mesh">One disc of triangles, checked: mm in job space, middle surface.</param>
public sealed record MeshSource(string File, TriangleMesh Mesh);

/// <summary>Which way the seams between the pieces of a split sheet run.</summary>
public enum SeamDirection
{
    /// <summary>Along element lines, front to rear.</summary>
    Lengthwise,

    /// <summary>Across them, left to right.</summary>
    Across,
}

/// <summary>A relief cut from an edge into the sheet.</summary>
/// <param name="Edge">Name of the edge that it starts from.</param>
/// <param name="At">Distance along the formed edge from its left or front end, mm; null: where it relieves the most.</param>
/// <param name="Depth">Along the formed sheet, mm; null: as deep as it relieves.</param>
public sealed record SlitSpec(string Edge, double? At, double? Depth);

/// <summary>How the element lines of a ruled sheet are matched.</summary>
public enum ElementMatching
{
    /// <summary>So that the sheet only bends, wherever that can be.</summary>
    BendOnly,

    /// <summary>Equal fractions of each curve's length.</summary>
    Even,
}

/// <summary>What a fabricator measured for one curve.</summary>
/// <param name="At">Where it stands in space.</param>
public abstract record CurveSpec(Placement At)
{
    /// <summary>What was found where it was read from, a drawing for example; their places are filled in when the curve is built.</summary>
    public ImmutableArray<Notice> Remarks { get; init; } = [];

    /// <summary>What a tape said of it besides; null if nothing.</summary>
    public TapedSizes? Taped { get; init; }

    /// <summary>How well it was read.</summary>
    public ReadingErrors Errors { get; init; } = ReadingErrors.None;
}

/// <summary>Points of a profile in its own plane.</summary>
/// <param name="Points">(across, up) in mm, left to right; with <paramref name="Mirror"/> from the centreline out to the right.</param>
/// <param name="Mirror">The left half is the mirror image of the points.</param>
/// <param name="Fit">Smooth curve or corners.</param>
/// <param name="At">Placement.</param>
public sealed record PointsSpec(ImmutableArray<ProfilePoint> Points, bool Mirror, Fit Fit, Placement At) : CurveSpec(At)
{
    /// <summary>The points are places along a line that was traced as a whole: what is off is off smoothly, and none was read by itself.</summary>
    public bool Traced { get; init; }

    /// <summary>Both sides were read, of a part that is meant to be its own mirror image.</summary>
    public bool Symmetric { get; init; }

    /// <summary>How far the fairest curve may leave each point, mm, &gt; 0; null: a smooth curve goes through every point.</summary>
    public double? Within { get; init; }
}

/// <summary>One measured point of a profile.</summary>
/// <param name="Place">(across, up), mm.</param>
/// <param name="Corner">A smooth curve is broken here.</param>
public readonly record struct ProfilePoint(Vec2 Place, bool Corner);

/// <summary>How points are joined.</summary>
public enum Fit
{
    /// <summary>One smooth curve through every point.</summary>
    Smooth,

    /// <summary>Straight lines with a corner at every point.</summary>
    Straight,
}

/// <summary>Straights and arcs laid end to end, as a straight-edge and a radius gauge find them, left to right.</summary>
/// <param name="Steps">At least one.</param>
/// <param name="Heading">Direction of the start, radians to the right of up.</param>
/// <param name="Start">(across, up) of the first end, mm; null: ends centred on across = 0 and the first end at up = 0.</param>
/// <param name="At">Placement.</param>
public sealed record RunSpec(ImmutableArray<RunStep> Steps, double Heading, Vec2? Start, Placement At) : CurveSpec(At);

/// <summary>One step of a run.</summary>
public abstract record RunStep;

/// <summary>A straight.</summary>
/// <param name="Length">mm, &gt; 0.</param>
public sealed record LineStep(double Length) : RunStep;

/// <summary>An arc.</summary>
/// <param name="Radius">mm, &gt; 0.</param>
/// <param name="Turn">Radians, nonzero, positive to the right.</param>
public sealed record ArcStep(double Radius, double Turn) : RunStep;

/// <summary>The arc over a chord, its ends at up = 0, centred on across = 0.</summary>
/// <param name="Chord">mm, &gt; 0.</param>
/// <param name="Rise">mm, nonzero; negative sags below the chord.</param>
/// <param name="At">Placement.</param>
public sealed record ChordSpec(double Chord, double Rise, Placement At) : CurveSpec(At);

/// <summary>Two views of one space curve.</summary>
/// <param name="Plan">Plan view lying flat: across = right, up = aft. Its own placement is none.</param>
/// <param name="Side">(aft, height) in mm, aft strictly increasing, at least two.</param>
/// <param name="SideFit">How the side view is joined; it goes on straight outside its range.</param>
/// <param name="At">Placement.</param>
public sealed record PlanSideSpec(CurveSpec Plan, ImmutableArray<Vec2> Side, Fit SideFit, Placement At) : CurveSpec(At);

/// <summary>Points in space.</summary>
/// <param name="Points">(x, y, z) in mm, left to right.</param>
/// <param name="Fit">Smooth curve or corners.</param>
/// <param name="At">Placement.</param>
public sealed record SpaceSpec(ImmutableArray<Vec3> Points, Fit Fit, Placement At) : CurveSpec(At)
{
    /// <summary>How far the fairest curve may leave each point, mm, &gt; 0; null: a smooth curve goes through every point.</summary>
    public double? Within { get; init; }
}

/// <summary>Where a curve's own frame stands: origin + Rz(turn)·Ry(lean)·Rx(roll)·p, right-hand rotations about the job's axes.</summary>
/// <param name="Origin">mm.</param>
/// <param name="Roll">Radians about x; positive raises the right end.</param>
/// <param name="Lean">Radians about y; positive tips up towards aft.</param>
/// <param name="Turn">Radians about z; positive swings the right end forward.</param>
public readonly record struct Placement(Vec3 Origin, double Roll, double Lean, double Turn)
{
    /// <summary>At the origin, upright.</summary>
    public static Placement None => default;
}
