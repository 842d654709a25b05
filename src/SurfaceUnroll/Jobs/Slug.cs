using System.Text;

namespace SurfaceUnroll.Jobs;

/// <summary>File names made of panel names.</summary>
public static class Slug
{
    /// <summary>Lower case, runs of other characters than letters and digits turned to one <c>-</c>, none at either end.</summary>
    public static string Of(string name)
    {
        var slug = new StringBuilder(name.Length);
        foreach (char c in name.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(c)) slug.Append(c);
            else if (slug.Length > 0 && slug[^1] != '-') slug.Append('-');
        }
        return slug.ToString().TrimEnd('-');
    }
}
