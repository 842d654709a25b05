using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>Edges in the words of the shop: what each is called in a table, and what it meets.</summary>
public static class EdgeWords
{
    // Two widths that a tape shows alike are one, mm.
    private const double NoWidth = 0.05;

    /// <summary>A name for each edge of a piece, in their order. Where a trim has left several parts of one, it says which: “front, left part”.</summary>
    public static ImmutableArray<string> Names(PanelDevelopment panel)
    {
        ILookup<string, BlankEdge> parts = panel.Edges.ToLookup(e => e.Name);
        return [.. panel.Edges.Select(edge => parts[edge.Name].ToArray() is { Length: > 1 } all ? $"{edge.Name}, {Which(edge, all)}" : edge.Name)];
    }

    /// <summary>What stands along an edge, from the whole to the name alone: <c>LEFT → left cheek/left profile, butt</c>; one group for each of its joints.</summary>
    /// <param name="name">The edge.</param>
    /// <param name="panel">The piece that it is of.</param>
    /// <param name="joints">All joints of the job.</param>
    /// <param name="units">Units of the job.</param>
    public static IEnumerable<ImmutableArray<string>> Choices(string name, PanelDevelopment panel, ImmutableArray<JointFit> joints, LengthUnit units)
    {
        string shown = name.ToUpperInvariant();
        ImmutableArray<string>[] meets = [.. Joints(name, panel, joints, units)];
        return meets.Length == 0 ? [[shown]] : meets.Select((m, i) => (ImmutableArray<string>)[.. m.Select(word => shown + word), .. i == 0 ? new[] { shown } : []]);
    }

    /// <summary>What an edge or opening meets, for after its name, from the whole to the least; one group for each of its joints.</summary>
    public static IEnumerable<ImmutableArray<string>> Joints(string name, PanelDevelopment panel, ImmutableArray<JointFit> joints, LengthUnit units)
    {
        var own = new EdgeName(panel.Spec.Name, name);
        foreach (JointFit joint in joints)
        {
            int side = joint.Mates.IndexOf(joint.Mates.FirstOrDefault(m => m.Edge == own)!);
            if (side < 0) continue;
            string kind = Kind(joint, side, units);
            if (joint.Mates.Length < 2) yield return [$", {kind}"];
            else
            {
                EdgeName mate = joint.Mates[1 - side].Edge;
                // An edge that meets another of its own piece is not told its piece.
                string near = mate.Panel == own.Panel ? mate.Edge : mate.Panel;
                yield return [$" → {mate}, {kind}", $" → {near}, {kind}", $" → {near}"];
            }
        }
    }

    // Which of the two has the metal of a lip or lap is as weighty as how much it is.
    private static string Kind(JointFit joint, int side, LengthUnit units)
    {
        JointSpec spec = joint.Spec;
        string word = JointWords.Word(spec.Kind), width = (spec.Auto ? "up to " : "") + ShopLength.Print(spec.Width, units);
        if (spec.Kind == JointKind.Butt) return spec.Width > 0 ? $"{word}, gap {width}" : word;
        return joint.Mates.Length < 2 ? $"{word} {width}" : $"{word} {width} {(spec.On == side ? "here" : "there")}";
    }

    // By where the middles lie on the blank, forward up.
    private static string Which(BlankEdge edge, BlankEdge[] all)
    {
        Vec2[] middles = [.. all.Select(e => Box.Around(e.Flat).Centre)];
        bool level = middles.Max(m => m.X) - middles.Min(m => m.X) >= middles.Max(m => m.Y) - middles.Min(m => m.Y) - NoWidth;
        BlankEdge[] ordered = [.. all.Zip(middles).OrderBy(p => level ? p.Second.X : -p.Second.Y).Select(p => p.First)];
        int place = Array.IndexOf(ordered, edge);
        (string first, string last) = level ? ("left", "right") : ("forward", "rear");
        if (ordered.Length == 2) return place == 0 ? $"{first} part" : $"{last} part";
        return $"part {(place + 1).ToString(CultureInfo.InvariantCulture)} of {ordered.Length.ToString(CultureInfo.InvariantCulture)} from the {(level ? "left" : "front")}";
    }
}
