using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>Finds where a flat curve, as (0, across, up), crosses or touches itself.</summary>
/// <remarks>Chords of the curve, each with the most by which the curve leaves it, are swept across the plane; two that may meet are
/// halved until they stand for the curve to rounding, so that a near miss of two bent parts is not taken for a crossing.</remarks>
internal static class SelfCrossing
{
    // A chord over 15° of turning leaves its arc by 0.2 % of the radius: a good start for the halving.
    private const double TurningPerChord = Math.PI / 12;

    // Each halving takes the gap between chord and curve to a quarter: 0.2 % goes below 1e-9.
    private const int Halvings = 10;

    /// <summary>A place where the curve meets itself other than end to end, or null.</summary>
    public static Vec3? Find(ImmutableArray<CurvePiece> pieces)
    {
        List<Chord> chords = Cut(pieces);
        double size = chords.Max(c => c.Right) - chords.Min(c => c.Left) + chords.Max(c => c.Top) - chords.Min(c => c.Bottom);
        bool closed = (chords[0].A - chords[^1].B).Length <= 1e-9 * size;
        Chord[] sweep = [.. chords.OrderBy(c => c.Left)];
        for (int i = 0; i < sweep.Length; i++)
        {
            for (int j = i + 1; j < sweep.Length && sweep[j].Left <= sweep[i].Right; j++)
            {
                if (AreNeighbours(sweep[i], sweep[j], chords.Count, closed)) continue;
                if (Meet(sweep[i], sweep[j], Halvings) is { } place) return place;
            }
        }
        return null;
    }

    private static bool AreNeighbours(Chord a, Chord b, int count, bool closed)
    {
        int apart = Math.Abs(a.Index - b.Index);
        return apart == 1 || (closed && apart == count - 1);
    }

    private static List<Chord> Cut(ImmutableArray<CurvePiece> pieces)
    {
        var chords = new List<Chord>();
        foreach (CurvePiece piece in pieces)
        {
            int count = piece.IsStraight ? 1 : Math.Clamp((int)Math.Ceiling(Turning(piece) / TurningPerChord), 1, 48);
            for (int i = 0; i < count; i++) chords.Add(new Chord(chords.Count, piece, (double)i / count, (i + 1.0) / count));
        }
        return chords;
    }

    private static double Turning(CurvePiece piece)
    {
        const int steps = 8;
        double turning = 0;
        for (int i = 0; i < steps; i++) turning += piece.At((double)i / steps).D1.AngleTo(piece.At((i + 1.0) / steps).D1);
        return turning;
    }

    private static Vec3? Meet(Chord a, Chord b, int halvings)
    {
        if (!a.MayMeet(b)) return null;
        if (halvings == 0 || (a.Piece.IsStraight && b.Piece.IsStraight)) return a.Touches(b) ? a.Meeting(b) : null;
        foreach (Chord x in a.Halves())
        {
            foreach (Chord y in b.Halves())
            {
                if (Meet(x, y, halvings - 1) is { } place) return place;
            }
        }
        return null;
    }

    private sealed class Chord
    {
        private readonly double from, to, gap;

        public Chord(int index, CurvePiece piece, double from, double to)
        {
            (Index, Piece, this.from, this.to) = (index, piece, from, to);
            (A, B) = (piece.At(from).Point, piece.At(to).Point);
            // Twice the largest of three sampled gaps: a bound for any arc and for a cubic this short.
            if (!piece.IsStraight) gap = 2 * Math.Max(Gap(0.25), Math.Max(Gap(0.5), Gap(0.75)));
        }

        public int Index { get; }

        public CurvePiece Piece { get; }

        public Vec3 A { get; }

        public Vec3 B { get; }

        public double Left => Math.Min(A.Y, B.Y) - gap;

        public double Right => Math.Max(A.Y, B.Y) + gap;

        public double Bottom => Math.Min(A.Z, B.Z) - gap;

        public double Top => Math.Max(A.Z, B.Z) + gap;

        public Chord[] Halves()
        {
            if (Piece.IsStraight) return [this];
            double mid = 0.5 * (from + to);
            return [new Chord(Index, Piece, from, mid), new Chord(Index, Piece, mid, to)];
        }

        public bool MayMeet(Chord other)
        {
            if (!BoxesMeet(other)) return false;
            double reach = gap + other.gap;
            return Touches(other) || Distance(other.A) <= reach || Distance(other.B) <= reach
                || other.Distance(A) <= reach || other.Distance(B) <= reach;
        }

        // Each chord has its ends on both sides of, or on, the other; chords on one line touch where their boxes meet.
        public bool Touches(Chord other) =>
            BoxesMeet(other) && Side(other.A) * Side(other.B) <= 0 && other.Side(A) * other.Side(B) <= 0;

        public Vec3 Meeting(Chord other)
        {
            double a = other.Side(A), b = other.Side(B);
            return a == b ? A : Vec3.Lerp(A, B, a / (a - b));
        }

        private bool BoxesMeet(Chord other) =>
            Left <= other.Right && other.Left <= Right && Bottom <= other.Top && other.Bottom <= Top;

        private double Gap(double fraction) =>
            (Piece.At(from + fraction * (to - from)).Point - Vec3.Lerp(A, B, fraction)).Length;

        private double Side(Vec3 p) => (B - A).Cross(p - A).X;

        private double Distance(Vec3 p)
        {
            Vec3 span = B - A;
            double along = Math.Clamp((p - A).Dot(span) / span.Dot(span), 0, 1);
            return (p - A - along * span).Length;
        }
    }
}
