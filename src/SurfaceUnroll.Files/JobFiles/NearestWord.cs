namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Guesses which of the known words a mistyped one stands for.</summary>
public static class NearestWord
{
    /// <summary>The known word with the fewest letters to change, or null if none is near.</summary>
    /// <remarks>Near: at most a third of the letters (one at least) inserted, removed, changed or swapped with the next; case is free
    /// and words of two letters may differ in nothing else. The first of the known words wins a tie.</remarks>
    public static string? To(string word, IEnumerable<string> known)
    {
        (string? best, int least) = (null, int.MaxValue);
        foreach (string candidate in known)
        {
            int longest = Math.Max(word.Length, candidate.Length);
            int allowed = longest <= 2 ? 0 : Math.Max(1, longest / 3);
            if (longest - Math.Min(word.Length, candidate.Length) > allowed) continue;
            int changes = Changes(word.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (changes <= allowed && changes < least) (best, least) = (candidate, changes);
        }
        return best;
    }

    // Optimal string alignment distance (Damerau 1964, Wagner & Fischer 1974).
    private static int Changes(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++) d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++) d[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                d[i, j] = Math.Min(change, 1 + Math.Min(d[i - 1, j], d[i, j - 1]));
                bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
                if (swapped) d[i, j] = Math.Min(d[i, j], 1 + d[i - 2, j - 2]);
            }
        }
        return d[a.Length, b.Length];
    }
}
