using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Proof;

/// <summary>Reads the rim of the flat blank out of an OBJ file: sides of faces that no other face has, at their places <c>vt</c>, mm.</summary>
internal static class ObjRim
{
    /// <summary>The rim.</summary>
    /// <exception cref="FormatException">A face names a place that is not there, or has none.</exception>
    public static LineSet Read(string text)
    {
        var places = new List<Vec2>();
        var sides = new Dictionary<(int, int), (int, int)>();
        foreach (string line in text.Split('\n'))
        {
            string[] words = line.Split((char[])[' ', '\r'], StringSplitOptions.RemoveEmptyEntries);
            if (words is ["vt", var u, var v, ..]) places.Add(new Vec2(Parse(u), Parse(v)));
            else if (words is ["f", ..])
            {
                int[] corners = [.. words.Skip(1).Select(w => w.Split('/') is [_, var t, ..] && int.TryParse(t, NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n - 1 : throw new FormatException("has a face without flat places"))];
                for (int i = 0; i < corners.Length; i++)
                {
                    (int a, int b) = (corners[i], corners[(i + 1) % corners.Length]);
                    if (!sides.Remove((b, a))) sides[(a, b)] = (a, b);
                }
            }
        }
        if (sides.Keys.Any(s => Math.Max(s.Item1, s.Item2) >= places.Count)) throw new FormatException("has a face with a place that is not there");
        return new LineSet([.. sides.Keys.Select(s => ImmutableArray.Create(places[s.Item1], places[s.Item2]))]);
    }

    private static double Parse(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
