using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Patterns.Nesting;

namespace SurfaceUnroll.Jobs;

/// <summary>Everything computed for a job. Lengths in mm, angles in radians.</summary>
/// <param name="Job">The job.</param>
/// <param name="Panels">One for each panel of the job, of a split one for each piece, in its order; empty if <paramref name="Notices"/> holds an error.</param>
/// <param name="Notices">Notes, warnings and errors, in the order of the job.</param>
public sealed record Development(Job Job, ImmutableArray<PanelDevelopment> Panels, ImmutableArray<Notice> Notices)
{
    /// <summary>How the pieces meet, in the order of the job; of a split panel the seams too.</summary>
    public ImmutableArray<JointFit> Joints { get; init; } = [];

    /// <summary>How the joints are tacked, in their order.</summary>
    public ImmutableArray<TackPlan> Tacks { get; init; } = [];

    /// <summary>All pieces laid out on the sheets of the stock, numbered as in <see cref="Panels"/>; null if the job names no stock.</summary>
    public NestLayout? Nest { get; init; }

    /// <summary>How finished pieces compare with what was wanted, in the order of the job.</summary>
    public ImmutableArray<BuiltCheck> Built { get; init; } = [];

    /// <summary>Errors of edges, what follows them and how finished pieces compare are those of an earlier development: see <see cref="Developer.Follow"/>.</summary>
    public bool ErrorsAwaited { get; init; }

    /// <summary>What each step took: its name and its time, ms.</summary>
    public ImmutableArray<(string Step, double Milliseconds)> Timings { get; init; } = [];

    /// <summary>True if nothing may be written.</summary>
    public bool Failed => Notices.Any(n => n.Severity == Severity.Error);
}

/// <summary>What a sheet asks of the metal.</summary>
public enum Verdict
{
    /// <summary>No strain above 0.1 %.</summary>
    BendsOnly,

    /// <summary>Some metal must be stretched or shrunk.</summary>
    NeedsStretching,

    /// <summary>More than the material bears.</summary>
    PastTheLimit,
}

/// <summary>Twist along element lines: the angle between the sheet's normals at a line's two ends, radians.</summary>
/// <param name="Max">Largest.</param>
/// <param name="Mean">Mean, weighted by the length of edge that each line stands for.</param>
public readonly record struct TwistSummary(double Max, double Mean);

/// <summary>Strain from blank to part.</summary>
/// <param name="MaxStretch">Largest engineering stretch, ≥ 0, as a fraction.</param>
/// <param name="MaxShrink">Largest engineering shrink, ≥ 0, as a fraction.</param>
/// <param name="Energy">Σ A·(2/3)(e₁² + e₁e₂ + e₂²), mm².</param>
public readonly record struct StrainSummary(double MaxStretch, double MaxShrink, double Energy);

/// <summary>One piece, formed and flat. Every flat coordinate is in one frame: outside face up, forward up, mm.</summary>
/// <param name="Spec">The panel as asked for.</param>
/// <param name="Verdict">Bends only, or not.</param>
/// <param name="Twist">Of the lines used.</param>
/// <param name="EvenTwist">Of evenly spaced lines, for comparison; equals <paramref name="Twist"/> where those are used.</param>
/// <param name="Strain">Blank to part.</param>
/// <param name="FormedArea">mm², net, middle surface.</param>
/// <param name="FlatArea">mm², net.</param>
/// <param name="Edges">Of a loft front, right, rear, left; front and rear run left to right, left and right run front to rear. Of a mesh the one edge, rim, counter-clockwise. Of a
/// plate its curves, each in its own direction, and chords. Trims add theirs, and may leave an edge in several runs of one name.</param>
/// <param name="Elements">Element lines from left to right, over the rolled areas of a bent plate from front to rear; the numbered ones are drawn. None on a mesh or a flat plate.</param>
/// <param name="Cut">Closed cut line, counter-clockwise, the first point not repeated.</param>
/// <param name="Mesh">Triangles with formed and flat places.</param>
public sealed record PanelDevelopment(
    PanelSpec Spec,
    Verdict Verdict,
    TwistSummary Twist,
    TwistSummary EvenTwist,
    StrainSummary Strain,
    double FormedArea,
    double FlatArea,
    ImmutableArray<BlankEdge> Edges,
    ImmutableArray<ElementLine> Elements,
    ImmutableArray<Vec2> Cut,
    SheetMesh Mesh)
{
    /// <summary>Strain at every vertex of <see cref="Mesh"/>; null where the sheet only bends and was laid out line by line.</summary>
    public StrainMap? Map { get; init; }

    /// <summary>The strain that is drawn and put into words: <see cref="Map"/>, but the metal round the tip of a relief cut, which is drilled away, as its neighbours.</summary>
    public StrainMap? DrawnMap { get => field ?? Map; init; }

    /// <summary>How a curve of it was moved so that it only bends; null if none was.</summary>
    public FreedomFit? Freedom { get; init; }

    /// <summary>Which piece of a split panel this is; null if the panel is in one piece.</summary>
    public PieceOfPanel? Piece { get; init; }

    /// <summary>What one piece to six would ask of the metal; empty where one piece only bends.</summary>
    public ImmutableArray<PieceChoice> Choices { get; init; } = [];

    /// <summary>Relief cuts of this piece.</summary>
    public ImmutableArray<SlitOpening> Slits { get; init; } = [];

    /// <summary>Strain away from the tips of relief cuts, where it is always large over a few millimetres; null if there are none. The verdict goes by it.</summary>
    public StrainSummary? ClearOfTips { get; init; }

    /// <summary>The strain that the verdict goes by.</summary>
    public StrainSummary JudgedStrain => ClearOfTips ?? Strain;

    /// <summary>The strain if no edge were held; null if none is.</summary>
    public StrainSummary? Unheld { get; init; }

    /// <summary>Sharp bends, in the order of bending.</summary>
    public ImmutableArray<BendLine> Bends { get; init; } = [];

    /// <summary>Holes and openings.</summary>
    public ImmutableArray<BlankOpening> Openings { get; init; } = [];

    /// <summary>Match marks of all joints.</summary>
    public ImmutableArray<MatchMark> Marks { get; init; } = [];

    /// <summary>Allowances along edges and openings.</summary>
    public ImmutableArray<EdgeAllowance> Allowances { get; init; } = [];

    /// <summary>Relief notches in lips.</summary>
    public ImmutableArray<LipNotch> Notches { get; init; } = [];

    /// <summary>Closed net outline, counter-clockwise, without allowances.</summary>
    public ImmutableArray<Vec2> Net { get => field.IsDefault ? Cut : field; init; }

    /// <summary>Inner cut lines that are none of the openings': where allowances close round a gap.</summary>
    public ImmutableArray<ImmutableArray<Vec2>> InnerCuts { get; init; } = [];

    /// <summary>Where the area of the blank comes from.</summary>
    public AreaAccount Areas { get; init; }

    /// <summary>From the measured face to the middle surface along the outside normal, mm.</summary>
    public double Offset { get; init; }

    /// <summary>What the errors of the readings do to its edges; null where no reading has any, or where that is not told.</summary>
    public BlankError? Error { get; init; }

    /// <summary>How it is formed; null until all of it is known.</summary>
    public FormingPlan? Plan { get; init; }

    /// <summary>Uniform elongation of the material, as a fraction.</summary>
    public double Limit { get; init; }

    /// <summary>What is left on beyond the net edge where a match mark stands, mm; negative where it is taken off.</summary>
    public double AllowanceAt(MatchMark mark) => Allowances.Where(a => a.Edge == mark.Edge && a.Joint == mark.Joint).Select(a => a.Width).FirstOrDefault();

    /// <summary>The edge of a name, or null.</summary>
    public BlankEdge? FindEdge(string name) => Edges.FirstOrDefault(e => e.Name == name);
}

/// <summary>One piece of a split panel.</summary>
/// <param name="Panel">Name of the panel.</param>
/// <param name="Number">From the left or the front, from 1.</param>
/// <param name="Count">Pieces in all.</param>
public sealed record PieceOfPanel(string Panel, int Number, int Count);

/// <summary>What a number of pieces asks of the metal.</summary>
/// <param name="Pieces">1 to 6.</param>
/// <param name="MaxStretch">Largest engineering stretch in any piece, as a fraction.</param>
/// <param name="MaxShrink">Largest engineering shrink in any piece.</param>
/// <param name="WeldLength">Formed length of the seams added, mm.</param>
public readonly record struct PieceChoice(int Pieces, double MaxStretch, double MaxShrink, double WeldLength);

/// <summary>A relief cut on the blank.</summary>
/// <param name="Edge">Edge that it starts from.</param>
/// <param name="At">Distance along the formed edge from its left or front end, mm.</param>
/// <param name="Depth">Along the formed sheet, mm.</param>
/// <param name="Width">Opening at the edge on the blank, mm; negative where the two sides would overlap there.</param>
/// <param name="Mouth">The two ends of the cut at the edge, on the blank.</param>
/// <param name="Tip">Its tip on the blank.</param>
/// <param name="Start">Where the one line of a cut whose sides overlap starts; else the middle of the mouth.</param>
public sealed record SlitOpening(string Edge, double At, double Depth, double Width, (Vec2 Near, Vec2 Far) Mouth, Vec2 Tip, Vec2 Start);

/// <summary>One edge of the net blank.</summary>
/// <param name="Name">front, right, rear or left; rim of a mesh; of a plate the name of a curve, or "chord" for the straight line that closes it; the name of a trim.</param>
/// <param name="FormedLength">On the formed middle surface, mm.</param>
/// <param name="FlatLength">On the blank, mm.</param>
/// <param name="Flat">The edge on the blank, within 0.01 mm.</param>
public sealed record BlankEdge(string Name, double FormedLength, double FlatLength, ImmutableArray<Vec2> Flat);

/// <summary>One element line. It is straight on a sheet between two curves, and on its blank unless the sheet had to be stretched.</summary>
/// <param name="Number">1, 2, 3 … from the left on the lines that are drawn; 0 on the others.</param>
/// <param name="FormedFront">Front end in job space, mm.</param>
/// <param name="FormedRear">Rear end in job space, mm.</param>
/// <param name="Front">Front end on the blank, mm.</param>
/// <param name="Rear">Rear end on the blank, mm.</param>
/// <param name="FrontLength">Distance of the whole line, before any trim, along the formed front edge from its left end, mm; on a bent plate along its side from the front.</param>
/// <param name="RearLength">The same along the rear edge.</param>
/// <param name="Normal">Unit normal of the sheet on its outside, in job space; the mean of both ends where the sheet twists.</param>
/// <param name="Twist">Radians.</param>
/// <param name="BendRadiusFront">Radius of the middle surface square to the line, mm; +∞ where flat, 0 at the tip of a fan.</param>
/// <param name="BendRadiusRear">The same at the rear end.</param>
/// <param name="BendsOutward">True where the outside is the convex face.</param>
public sealed record ElementLine(
    int Number,
    Vec3 FormedFront,
    Vec3 FormedRear,
    Vec2 Front,
    Vec2 Rear,
    double FrontLength,
    double RearLength,
    Vec3 Normal,
    double Twist,
    double BendRadiusFront,
    double BendRadiusRear,
    bool BendsOutward)
{
    /// <summary>The line on the formed sheet, front to rear.</summary>
    public ImmutableArray<Vec3> FormedPath { get => field.IsDefault ? [FormedFront, FormedRear] : field; init; }

    /// <summary>The line on the blank, front to rear.</summary>
    public ImmutableArray<Vec2> Path { get => field.IsDefault ? [Front, Rear] : field; init; }

    /// <summary>Length of the formed line, mm; 0 where the curves meet.</summary>
    public double Length => PathLength.Of(FormedPath);
}

/// <summary>The sheet as triangles, each vertex with its formed and its flat place.</summary>
/// <param name="Formed">Middle surface in job space, mm.</param>
/// <param name="Flat">On the blank, mm; as many as <paramref name="Formed"/>.</param>
/// <param name="Faces">Zero-based vertex indices, counter-clockwise seen from outside, in space and on the blank.</param>
public sealed record SheetMesh(ImmutableArray<Vec3> Formed, ImmutableArray<Vec2> Flat, ImmutableArray<(int A, int B, int C)> Faces)
{
    /// <summary>The vertices along each named edge, in the direction of the edge.</summary>
    public ImmutableArray<EdgeChain> Chains { get; init; } = [];

    /// <summary>It has an edge of that name that is no mere point.</summary>
    public bool HasEdge(string name) => Chains.Any(c => c.Name == name && c.Vertices.Length > 1);

    /// <summary>The same sheet on the face on which it was measured, mm; as many as <see cref="Formed"/>. It is the middle surface where nothing else is known.</summary>
    public ImmutableArray<Vec3> Face { get => field.IsDefault ? Formed : field; init; }
}

/// <summary>An edge of a sheet as a chain of its vertices.</summary>
/// <param name="Name">Name of the edge.</param>
/// <param name="Vertices">In the direction of the edge; of a closed edge the first again at the end. One where the edge is a point.</param>
public sealed record EdgeChain(string Name, ImmutableArray<int> Vertices);
