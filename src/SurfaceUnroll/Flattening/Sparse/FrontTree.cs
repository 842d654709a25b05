using System.Runtime.ExceptionServices;

namespace SurfaceUnroll.Flattening.Sparse;

/// <summary>One dense front of the factorisation: vertices eliminated together and the later ones that they touch.</summary>
internal sealed class Front
{
    /// <summary>Place among all fronts.</summary>
    public required int Index { get; init; }

    /// <summary>First vertex eliminated.</summary>
    public required int Start { get; init; }

    /// <summary>Number of vertices eliminated.</summary>
    public required int Own { get; init; }

    /// <summary>Later vertices in the front, increasing.</summary>
    public required int[] Later { get; init; }

    /// <summary>Fronts that add to this one: none or two.</summary>
    public required Front[] Parts { get; init; }

    /// <summary>For each later vertex of this front its row in the front that this one adds to.</summary>
    public int[] RowsAbove { get; set; } = [];

    /// <summary>Multiplications of this front and all below it.</summary>
    public required double Work { get; init; }

    /// <summary>Number of vertices in the front.</summary>
    public int Size => Own + Later.Length;

    /// <summary>Columns of the factor: two to a vertex.</summary>
    public int Columns => 2 * Own;

    /// <summary>Doubles from row to row of the factor.</summary>
    public int Stride => (Columns + 3) & ~3;

    /// <summary>Does something to each part, on both cores if each is worth it.</summary>
    /// <param name="work">Multiplications that are worth a task.</param>
    /// <param name="step">Given the part and its place in <see cref="Parts"/>.</param>
    public void ForParts(double work, Action<Front, int> step)
    {
        if (Parts.Length == 2 && Parts[0].Work > work && Parts[1].Work > work)
        {
            try
            {
                Parallel.Invoke(() => step(Parts[0], 0), () => step(Parts[1], 1));
            }
            catch (AggregateException e) when (e.InnerExceptions.All(inner => inner is OperationCanceledException))
            {
                // Whoever gave the order to stop waits for this, not for a bundle of it.
                ExceptionDispatchInfo.Throw(e.InnerExceptions[0]);
            }
            return;
        }
        for (int i = 0; i < Parts.Length; i++) step(Parts[i], i);
    }
}

/// <summary>The symbolic phase: the fronts of a matrix in its order of elimination, found once for all matrices of a mesh.</summary>
/// <remarks>J. W. H. Liu, "The multifrontal method for sparse matrix solution", SIAM Review 34(1), 1992.</remarks>
/// <param name="Root">Front of the last separator.</param>
/// <param name="Count">Number of fronts.</param>
/// <param name="EdgeRows">For each edge of the matrix the row of its later vertex in the front that eliminates the earlier one.</param>
internal sealed record FrontTree(Front Root, int Count, int[] EdgeRows)
{
    /// <summary>The fronts of a matrix whose vertices are already in the new order.</summary>
    public static FrontTree Of(BlockSystem matrix, Separator root)
    {
        int[] rows = new int[matrix.Later.Length];
        int[] rowOf = new int[matrix.Count];
        int[] seen = new int[matrix.Count];
        Array.Fill(seen, -1);
        int count = 0, stamp = 0;
        Front top = Build(root);
        return new FrontTree(top, count, rows);

        Front Build(Separator part)
        {
            Front[] parts = part is { Left: not null, Right: not null } ? [Build(part.Left), Build(part.Right)] : [];
            var later = new List<int>();
            // A stamp of its own: a separator of no vertices ends where its right part does.
            int mine = ++stamp;
            for (int v = part.Start; v < part.End; v++)
                for (int e = matrix.First[v]; e < matrix.First[v + 1]; e++)
                    Note(matrix.Later[e]);
            foreach (Front below in parts)
                foreach (int w in below.Later)
                    Note(w);
            int[] sorted = [.. later];
            Array.Sort(sorted);
            int own = part.End - part.Start;
            for (int i = 0; i < own; i++) rowOf[part.Start + i] = i;
            for (int i = 0; i < sorted.Length; i++) rowOf[sorted[i]] = own + i;
            for (int v = part.Start; v < part.End; v++)
                for (int e = matrix.First[v]; e < matrix.First[v + 1]; e++)
                    rows[e] = rowOf[matrix.Later[e]];
            foreach (Front below in parts) below.RowsAbove = Array.ConvertAll(below.Later, w => rowOf[w]);
            double p = 2 * own, r = 2 * sorted.Length;
            double work = p * p * p / 6 + 0.5 * p * p * r + 0.5 * p * r * r + parts.Sum(f => f.Work);
            return new Front { Index = count++, Start = part.Start, Own = own, Later = sorted, Parts = parts, Work = work };

            void Note(int vertex)
            {
                if (vertex < part.End || seen[vertex] == mine) return;
                seen[vertex] = mine;
                later.Add(vertex);
            }
        }
    }
}
