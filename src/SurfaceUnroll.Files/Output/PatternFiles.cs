using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Dxf;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Files.Preview;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Files.Svg;
using SurfaceUnroll.Files.Wavefront;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Patterns.MovedEdges;
using SurfaceUnroll.Patterns.Nesting;

namespace SurfaceUnroll.Files.Output;

/// <summary>Every output file of a development.</summary>
public static class PatternFiles
{
    /// <summary>For each panel PDF, DXF, SVG, OBJ and picture, the template of an edge that was moved, and strain map and list where it does not only bend; then the sheets of the stock with the pieces nested on them, the sheet for the wall, where it is known how a piece is formed, and <c>report.json</c>.</summary>
    public static ImmutableArray<OutputFile> Of(Development development)
    {
        Job job = development.Job;
        Drawing[] drawings = [.. development.Panels.Select(p => PatternDrawing.Of(p, job, development.Joints))];
        Drawing[] cuts = [.. drawings.Select(drawing => CutFitting.Of(drawing, job.Cutting))];
        ImmutableArray<TilePlan> papers = [.. drawings.Select(d => TileLayout.Plan(d, job.Paper))];
        (TilePlan Plan, ImmutableArray<NestPlacement> Placements)? together = job.Paper.Together && drawings.Length > 1 ? TogetherPages.Plan(development, [.. drawings]) : null;
        return
        [
            .. development.Panels.SelectMany((panel, i) => OfPanel(panel, cuts[i], papers[i], development)),
            .. together is { Plan: var plan } ? [Together(development, plan)] : Array.Empty<OutputFile>(),
            .. OfNest(development, [.. cuts]),
            .. ShopSheetPdf.Write(development) is { } sheet ? [new OutputFile("shop-sheet.pdf", sheet)] : Array.Empty<OutputFile>(),
            new OutputFile("report.json", ReportJson.Write(development, papers, cuts, together)),
        ];
    }

    // All pieces in one run of paper.
    private static OutputFile Together(Development development, TilePlan plan) =>
        new("all-pieces.pdf", PdfPages.Write(TogetherPages.Of(development, plan), plan.Drawing.Title)) { Note = PaperWords.Line(plan) };

    // A cut file for each sheet, and one picture of all.
    private static IEnumerable<OutputFile> OfNest(Development development, ImmutableArray<Drawing> cuts)
    {
        if (development.Nest is not { Sheets.IsEmpty: false } nest) yield break;
        for (int i = 0; i < nest.Sheets.Length; i++)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"nested-{i + 1}");
            Drawing drawing = NestDrawing.Of(nest.Sheets[i], cuts, string.Create(CultureInfo.InvariantCulture, $"Sheet {i + 1} of {nest.Sheets.Length} – {development.Job.Name}"));
            yield return new OutputFile(name + ".dxf", DxfPattern.Write(drawing, development.Job.Cutting));
            yield return new OutputFile(name + ".svg", SvgPattern.Write(drawing));
        }
        yield return new OutputFile("nesting.svg", NestSvg.Write(development, nest));
    }

    private static IEnumerable<OutputFile> OfPanel(PanelDevelopment panel, Drawing cut, TilePlan paper, Development development)
    {
        Job job = development.Job;
        string name = panel.Spec.FileName;
        Page? strain = PatternPages.StrainSheet(panel, job);
        yield return new OutputFile(name + ".pdf", PatternPdf.Write(panel, job, paper, strain, development.Joints)) { Note = PaperWords.Line(paper) };
        yield return new OutputFile(name + ".dxf", DxfPattern.Write(cut, job.Cutting));
        yield return new OutputFile(name + ".svg", SvgPattern.Write(cut));
        yield return new OutputFile(name + ".obj", ObjMesh.Write(panel.Spec.Name, panel.Mesh));
        yield return new OutputFile(name + "-preview.svg", PreviewSvg.Write(panel, job));
        // Of a split panel every piece has the same edge.
        if (panel.Piece is null or { Number: 1 } && EdgePages.Plan(panel, job) is { } template)
            yield return new OutputFile(Slug.Of(panel.Piece?.Panel ?? panel.Spec.Name) + "-moved-edge.pdf", PdfPages.Write(EdgePages.Of(panel, job, template), template.Drawing.Title)) { Note = PaperWords.Line(template) };
        if (strain is null || panel.Map is not { } map) yield break;
        yield return new OutputFile(name + "-strain.svg", PageSvg.Write(strain, $"{panel.Spec.Name} – {job.Name}"));
        yield return new OutputFile(name + "-strain.csv", StrainCsv.Write(panel.Mesh, map));
    }
}
