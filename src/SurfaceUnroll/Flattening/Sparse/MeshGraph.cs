namespace SurfaceUnroll.Flattening.Sparse;

/// <summary>Which vertices of a triangle mesh are joined by an edge.</summary>
/// <param name="First">For each vertex where its neighbours start in <paramref name="Neighbours"/>; one more at the end.</param>
/// <param name="Neighbours">Neighbours of all vertices, increasing within each.</param>
internal sealed record MeshGraph(int[] First, int[] Neighbours)
{
    /// <summary>Number of vertices.</summary>
    public int Count => First.Length - 1;

    /// <summary>Neighbours of a vertex.</summary>
    public ReadOnlySpan<int> Of(int vertex) => Neighbours.AsSpan(First[vertex], First[vertex + 1] - First[vertex]);

    /// <summary>The graph of faces given as three vertices each.</summary>
    public static MeshGraph Of(int count, ReadOnlySpan<int> corners)
    {
        // Each face names both other corners to each corner, so that an inner edge is named twice; doubles fall to the sort.
        int[] start = new int[count + 1];
        foreach (int v in corners) start[v + 1] += 2;
        for (int i = 0; i < count; i++) start[i + 1] += start[i];
        int[] named = new int[start[count]], fill = start.AsSpan(0, count).ToArray();
        for (int t = 0; t < corners.Length; t += 3)
        {
            (int a, int b, int c) = (corners[t], corners[t + 1], corners[t + 2]);
            (named[fill[a]++], named[fill[a]++]) = (b, c);
            (named[fill[b]++], named[fill[b]++]) = (c, a);
            (named[fill[c]++], named[fill[c]++]) = (a, b);
        }
        int[] first = new int[count + 1];
        int kept = 0;
        for (int v = 0; v < count; v++)
        {
            Span<int> around = named.AsSpan(start[v], start[v + 1] - start[v]);
            around.Sort();
            first[v] = kept;
            int last = -1;
            foreach (int w in around)
            {
                if (w != last) named[kept++] = last = w;
            }
        }
        first[count] = kept;
        return new MeshGraph(first, named[..kept]);
    }
}
