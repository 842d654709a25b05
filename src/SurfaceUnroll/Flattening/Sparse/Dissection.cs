using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening.Sparse;

/// <summary>A part of the elimination order: vertices that are eliminated together, after both parts that they separate.</summary>
/// <param name="Start">First of them in the new order.</param>
/// <param name="End">One past the last.</param>
/// <param name="Left">Separated part; null in a leaf.</param>
/// <param name="Right">Separated part; null in a leaf.</param>
internal sealed record Separator(int Start, int End, Separator? Left, Separator? Right);

/// <summary>A fill-reducing order of elimination by nested dissection.</summary>
/// <remarks>A. George, "Nested dissection of a regular finite element mesh", SIAM J. Numerical Analysis 10(2), 1973. Each part is cut square to its longest axis at its
/// median, or to the next one if that leaves fewer vertices: on a sheet a line of them as separator.</remarks>
/// <param name="Order">Old number of each vertex in the new order.</param>
/// <param name="Root">The last separator.</param>
internal sealed record Dissection(int[] Order, Separator Root)
{
    // Parts of up to so many vertices are eliminated as one dense block: below that, bookkeeping costs more than the zeros that are carried along.
    private const int LeafSize = 20;

    // A cut straight through a part of n vertices, spread alike both ways, leaves a row of about √n, or √(2n) aslant.
    private const double LongRow = 1.5;

    // Parts above this size are divided on both cores.
    private const int WorthATask = 4000;

    /// <summary>Orders the vertices of a mesh.</summary>
    public static Dissection Of(MeshGraph graph, ReadOnlySpan<Vec3> places)
    {
        var work = new Work(graph, places.ToArray());
        Separator root = work.Divide(0, graph.Count, 1);
        return new Dissection(work.Order, root);
    }

    private sealed class Work(MeshGraph graph, Vec3[] places)
    {
        // Which part a vertex lies in now; parts are numbered like a heap, 2k and 2k + 1 under k.
        private readonly long[] _part = [.. Enumerable.Repeat(1L, graph.Count)];
        private readonly double[] _key = new double[graph.Count];

        public int[] Order { get; } = [.. Enumerable.Range(0, graph.Count)];

        public Separator Divide(int start, int end, long part)
        {
            int count = end - start;
            if (count <= LeafSize) return new Separator(start, end, null, null);
            int middle = start + count / 2;
            (Vec3 along, Vec3 across) = Axes(start, end);
            (int leftRow, int rightRow) = Cut(start, middle, end, part, along);
            // Triangles that are far longer one way than the other: the longest axis may be the one with the fewest vertices.
            double row = Math.Min(leftRow, rightRow);
            if (row > LongRow * Math.Sqrt(count))
            {
                (leftRow, rightRow) = Cut(start, middle, end, part, across);
                if (Math.Min(leftRow, rightRow) >= row) (leftRow, rightRow) = Cut(start, middle, end, part, along);
            }
            (int leftEnd, int rightEnd) = leftRow < rightRow ? MoveLeftRow(start, middle, end, 2 * part + 1) : (middle, MoveRow(middle, end, 2 * part));
            for (int i = rightEnd; i < end; i++) _part[Order[i]] = 0;
            if (leftEnd == start || rightEnd == leftEnd) return new Separator(start, end, null, null);
            Separator? left = null, right = null;
            if (count > WorthATask)
            {
                Parallel.Invoke(() => left = Divide(start, leftEnd, 2 * part), () => right = Divide(leftEnd, rightEnd, 2 * part + 1));
            }
            else
            {
                left = Divide(start, leftEnd, 2 * part);
                right = Divide(leftEnd, rightEnd, 2 * part + 1);
            }
            return new Separator(rightEnd, end, left, right);
        }

        // Divides the part at the median along an axis. The cut line itself may go to either side: returns the numbers of vertices beside it on the left and on the right.
        private (int LeftRow, int RightRow) Cut(int start, int middle, int end, long part, Vec3 axis)
        {
            for (int i = start; i < end; i++) _key[Order[i]] = axis.Dot(places[Order[i]]);
            Select(start, end, middle);
            for (int i = start; i < end; i++) _part[Order[i]] = 2 * part + (i < middle ? 0 : 1);
            return (CountTouching(start, middle, 2 * part + 1), CountTouching(middle, end, 2 * part));
        }

        private bool Touches(int vertex, long part)
        {
            foreach (int w in graph.Of(vertex))
                if (_part[w] == part) return true;
            return false;
        }

        private int CountTouching(int start, int end, long part)
        {
            int count = 0;
            for (int i = start; i < end; i++)
                if (Touches(Order[i], part)) count++;
            return count;
        }

        // Moves the vertices that touch a part to the end of the range; returns where they start.
        private int MoveRow(int start, int end, long part)
        {
            int last = end;
            for (int i = end - 1; i >= start; i--)
            {
                if (!Touches(Order[i], part)) continue;
                last--;
                (Order[i], Order[last]) = (Order[last], Order[i]);
            }
            return last;
        }

        // The row lies at the end of the left part: changes places with the right part.
        private (int LeftEnd, int RightEnd) MoveLeftRow(int start, int middle, int end, long part)
        {
            int leftEnd = MoveRow(start, middle, part);
            int[] row = Order[leftEnd..middle];
            Array.Copy(Order, middle, Order, leftEnd, end - middle);
            row.CopyTo(Order, end - row.Length);
            return (leftEnd, end - row.Length);
        }

        // The first two principal axes of a part, by a few steps of the power method.
        private (Vec3 Along, Vec3 Across) Axes(int start, int end)
        {
            Vec3 sum = Vec3.Zero;
            for (int i = start; i < end; i++) sum += places[Order[i]];
            Vec3 centre = sum / (end - start);
            double xx = 0, xy = 0, xz = 0, yy = 0, yz = 0, zz = 0;
            for (int i = start; i < end; i++)
            {
                Vec3 d = places[Order[i]] - centre;
                xx += d.X * d.X;
                xy += d.X * d.Y;
                xz += d.X * d.Z;
                yy += d.Y * d.Y;
                yz += d.Y * d.Z;
                zz += d.Z * d.Z;
            }
            Vec3 along = Longest(Vec3.Zero);
            return (along, Longest(along));

            // The longest axis square to another.
            Vec3 Longest(Vec3 other)
            {
                Vec3[] columns = [Square(new Vec3(xx, xy, xz)), Square(new Vec3(xy, yy, yz)), Square(new Vec3(xz, yz, zz))];
                Vec3 axis = columns.MaxBy(c => c.Dot(c));
                for (int k = 0; k < 6; k++)
                {
                    axis = axis.Unit;
                    axis = Square(new Vec3(xx * axis.X + xy * axis.Y + xz * axis.Z, xy * axis.X + yy * axis.Y + yz * axis.Z, xz * axis.X + yz * axis.Y + zz * axis.Z));
                }
                return axis.Unit;

                Vec3 Square(Vec3 v) => v - v.Dot(other) * other;
            }
        }

        // Quickselect: after it everything before `nth` has a key no larger than everything from it on.
        private void Select(int start, int end, int nth)
        {
            int lo = start, hi = end - 1;
            while (lo < hi)
            {
                double pivot = MedianOfThree(_key[Order[lo]], _key[Order[(lo + hi) / 2]], _key[Order[hi]]);
                int i = lo, j = hi;
                while (i <= j)
                {
                    while (_key[Order[i]] < pivot) i++;
                    while (_key[Order[j]] > pivot) j--;
                    if (i > j) break;
                    (Order[i], Order[j]) = (Order[j], Order[i]);
                    i++;
                    j--;
                }
                if (nth <= j) hi = j;
                else if (nth >= i) lo = i;
                else return;
            }
        }

        private static double MedianOfThree(double a, double b, double c) => Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
    }
}
