namespace SurfaceUnroll.Files.JobTexts;

/// <summary>Where a value of a block or list is taken out of its text, and where one is put in, so that commas, lines and comments round it stay right.</summary>
internal static class TextCut
{
    /// <summary>The stretch of text to take out for one of the children.</summary>
    /// <remarks>
    /// Its comma goes with it: the one that follows, or, for the last, the one before. A line that held nothing else goes whole. Comments on lines of their own stay.
    /// </remarks>
    public static (int Start, int End) Of(string text, JobSpan parent, int index)
    {
        JobChild child = parent.Children[index];
        (int start, int end) = (child.Start, child.End);
        int comma = NextComma(text, end, parent.Value.End - 1);
        if (comma >= 0 && IsBlank(text, end, comma)) end = comma + 1;
        else if (comma < 0 && index > 0)
        {
            int before = NextComma(text, parent.Children[index - 1].End, start);
            // A comment between the two stays: then only the comma must go, and it may as well stay, as a trailing one.
            if (before >= 0 && IsBlank(text, before + 1, start)) return (before, end);
        }
        bool opensLine = IsBlank(text, LineStart(text, start), start), closesLine = IsBlank(text, end, LineEnd(text, end));
        if (opensLine && closesLine && LineEnd(text, end) < text.Length) return (LineStart(text, start), LineEnd(text, end) + 1);
        while (end < text.Length && text[end] == ' ') end++;
        return (start, end);
    }

    /// <summary>The stretch of text in whose place a new child goes in, and what to write before and after it.</summary>
    public static (int Start, int End, string Before, string After) Room(string text, JobSpan parent, int index)
    {
        int open = parent.Value.Start + 1, close = parent.Value.End - 1;
        string space = text[parent.Value.Start] == '{' ? " " : "";
        if (parent.Children.IsEmpty) return (open, open, space, IsBlank(text, open, close) && close > open ? "" : space);
        // On a line of its own where its neighbours have theirs.
        JobChild neighbour = parent.Children[Math.Min(index, parent.Children.Length - 1)];
        int line = LineStart(text, neighbour.Start);
        bool ownLine = line > parent.Value.Start && IsBlank(text, line, neighbour.Start);
        string next = ownLine ? "\n" + text[line..neighbour.Start] : " ";
        if (index < parent.Children.Length) return (neighbour.Start, neighbour.Start, "", "," + next);
        int comma = NextComma(text, neighbour.End, close), end = Math.Max(comma + 1, neighbour.End);
        // What is said of the last child on its own line stays there.
        int rest = ownLine && text.AsSpan(end..LineEnd(text, end)).TrimStart().StartsWith("//") ? LineEnd(text, end) : end;
        string said = text[end..rest];
        return comma >= 0 ? (end, rest, said + next, "") : (end, rest, "," + said + next, "");
    }

    // The next comma that is in no comment, or -1.
    private static int NextComma(string text, int from, int to)
    {
        for (int i = from; i < to; i++)
        {
            if (text[i] == ',') return i;
            if (text[i] != '/' || i + 1 >= to) continue;
            int close = text[i + 1] == '*' ? text.IndexOf("*/", i + 2, StringComparison.Ordinal) + 1 : LineEnd(text, i);
            i = close <= i ? to : close;
        }
        return -1;
    }

    private static bool IsBlank(string text, int from, int to) => string.IsNullOrWhiteSpace(text[from..to]);

    private static int LineStart(string text, int at) => at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;

    private static int LineEnd(string text, int at) => text.IndexOf('\n', at) is >= 0 and int end ? end : text.Length;
}
