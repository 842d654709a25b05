using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using SurfaceUnroll.Curves;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Reads the lines of an SVG file: paths and basic shapes, with their transforms, units and view box. Across is x, up is minus y.</summary>
internal static class SvgCurves
{
    // Groups in groups.
    private const int Deepest = 200;

    // What is not drawn where it stands, or not at all.
    private static readonly string[] NotDrawn = ["defs", "symbol", "clipPath", "mask", "marker", "pattern", "style", "script", "metadata", "title", "desc"];

    /// <summary>The lines.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="unit">mm of a unit of the view box, in place of what the file says; null to go by that.</param>
    public static DrawingReading Read(byte[] bytes, double? unit)
    {
        var faults = new FileFaults();
        if (Root(bytes, faults) is not { } root) return new DrawingReading([], true, [], faults.InOrder());
        (DrawingMap map, bool says) = SvgLengths.Viewport(root, unit, faults);
        var strands = ImmutableArray.CreateBuilder<DrawnStrand>();
        int uses = 0;
        Add(root, map, [], 0);
        if (strands.Count >= DxfCurves.MostStrands)
            faults.Add("drawing-too-much", 0, string.Create(CultureInfo.InvariantCulture, $"The drawing has more than {DxfCurves.MostStrands:N0} lines."), "Save the curve alone in a file of its own.");
        return new DrawingReading(strands.ToImmutable(), says, uses > 0 ? [("use", uses)] : [], faults.InOrder());

        void Add(XElement element, DrawingMap outer, ImmutableArray<string> layers, int depth)
        {
            if (strands.Count >= DxfCurves.MostStrands || faults.Full || IsHidden(element)) return;
            if (SvgTransforms.Of((string?)element.Attribute("transform")) is not { } own)
            {
                faults.Add("svg-broken", LineOf(element), $"This transform cannot be read: {FileFaults.Show((string)element.Attribute("transform")!)}.", "Write it as translate, scale, rotate, skewX, skewY or matrix with numbers, or apply it before you save.");
                return;
            }
            DrawingMap here = outer.After(own);
            if (!here.IsSound) return;
            string name = element.Name.LocalName;
            if (NotDrawn.Contains(name)) return;
            if (name == "use") uses++;
            if (name is "g" or "svg" or "a" or "switch")
            {
                if (depth == Deepest) faults.Add("svg-broken", LineOf(element), "Groups lie in groups without end.", "Ungroup the drawing before you save it.");
                else
                    foreach (XElement inner in element.Elements()) Add(inner, here, name == "svg" ? layers : [.. layers, .. Names(element)], depth + 1);
                return;
            }
            ImmutableArray<ImmutableArray<CurvePiece>> parts = SvgShapes.Parts(element, here, LineOf(element), faults);
            strands.AddRange(parts.Select(p => new DrawnStrand(p, name, LineOf(element), layers, (string?)element.Attribute("id") ?? "")));
        }
    }

    private static XElement? Root(byte[] bytes, FileFaults faults)
    {
        try
        {
            // No outside files, and no entities of the file's own, which may be made to grow without end.
            var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null };
            using var reader = XmlReader.Create(new MemoryStream(bytes), settings);
            XElement root = XDocument.Load(reader, LoadOptions.SetLineInfo).Root!;
            if (root.Name.LocalName == "svg") return root;
            faults.Add("svg-broken", LineOf(root), $"This is no SVG file: it holds {FileFaults.Show(root.Name.LocalName)}.", "Save the drawing as SVG.");
        }
        catch (XmlException e)
        {
            faults.Add("svg-broken", e.LineNumber, "The file is not right XML, as an SVG must be, from here on.", "Save the drawing anew from the program that made it.");
        }
        return null;
    }

    // The names that a group goes by: its id, and the label that drawing programs give a layer.
    private static IEnumerable<string> Names(XElement group) =>
        group.Attributes().Where(a => a.Name.LocalName == "id" || (a.Name.LocalName == "label" && a.Name.NamespaceName.Length > 0)).Select(a => a.Value);

    private static bool IsHidden(XElement element) => (string?)element.Attribute("display") == "none"
        || ((string?)element.Attribute("style") ?? "").Replace(" ", "", StringComparison.Ordinal).Split(';').Contains("display:none");

    private static int LineOf(XElement element) => ((IXmlLineInfo)element).LineNumber;
}
