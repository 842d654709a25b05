using System.Diagnostics;
using System.Globalization;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Wavefront;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>flatten</c>.</summary>
internal static class LayingFlat
{
    private static readonly InputFile MeshInput = new(
        "mesh file", MeshFile.LargestFile, ("This mesh file is too large.", "Thin the mesh out first, in a mesh editor."), "Check the name.");

    /// <summary>Flattens a mesh file into another.</summary>
    /// <param name="path">OBJ or STL.</param>
    /// <param name="target">OBJ to write.</param>
    /// <param name="repeat">Timed runs, ≥ 1; one more goes before them.</param>
    /// <param name="json">Print one JSON object and nothing else.</param>
    /// <param name="screen">Where to print.</param>
    public static int Run(string path, string? target, int repeat, bool json, Screen screen)
    {
        if (NameFault(path, target) is { } wrong)
        {
            FaultText.Write(screen.Error, wrong.Path, wrong.Message, wrong.Mend);
            return ExitStatus.CannotUse;
        }
        Screen shown = json ? screen with { Rich = false } : screen;
        if (shown.WithProgress("Reading " + Path.GetFileName(path), _ => Read(path, screen)) is not { } mesh) return ExitStatus.CannotUse;
        (FlattenedMesh blank, double seconds) = shown.WithProgress("Flattening", progress => Flatten(mesh, repeat, progress));
        byte[] content = ObjMesh.Write(Path.GetFileNameWithoutExtension(path), new SheetMesh(mesh.Places, blank.Flat, mesh.Faces));
        string full = Path.GetFullPath(target!);
        if (OutputFolder.Write(Path.GetDirectoryName(full) ?? full, [new OutputFile(Path.GetFileName(full), content)]) is { } fault)
        {
            FaultText.Write(screen.Error, fault.Path, fault.Message, fault.OfTheMachine ? fault.Mend : "Name another file with --out.");
            return fault.OfTheMachine ? ExitStatus.Failed : ExitStatus.CannotUse;
        }
        if (json) FlatteningText.WriteJson(screen.Out, mesh, blank, seconds);
        else FlatteningText.Write(screen.Out, path, target!, mesh, blank, repeat, seconds);
        return ExitStatus.Done;
    }

    private static TriangleMesh? Read(string path, Screen screen)
    {
        if (MeshInput.Read(path, screen) is not { } bytes) return null;
        MeshReading reading = MeshFile.Read(path, bytes);
        if (reading.Mesh is not { } mesh)
        {
            FaultText.WriteAll(screen.Error, reading.Faults.Select(f => (f.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $"{path}:{f.Line}") : path, f.Message, (string?)f.Mend)));
            return null;
        }
        (string Place, string Message, string? Mend)[] faults = [.. DiscCheck.Check(mesh, reading.Numbers).Select(f => (path, f.Message, (string?)f.Mend))];
        FaultText.WriteAll(screen.Error, faults);
        return faults.Length == 0 ? mesh : null;
    }

    // The first run makes the program ready and is not counted.
    private static (FlattenedMesh Blank, double Median) Flatten(TriangleMesh mesh, int repeat, IProgress<string> progress)
    {
        double[] seconds = new double[repeat];
        FlattenedMesh blank = MeshFlattening.Flatten(mesh, Told("Flattening"));
        for (int i = 0; i < repeat; i++)
        {
            FlatteningOptions options = Told(string.Create(CultureInfo.InvariantCulture, $"Timing {i + 1} of {repeat}"));
            long start = Stopwatch.GetTimestamp();
            blank = MeshFlattening.Flatten(mesh, options);
            seconds[i] = Stopwatch.GetElapsedTime(start).TotalSeconds;
        }
        Array.Sort(seconds);
        return (blank, 0.5 * (seconds[(repeat - 1) / 2] + seconds[repeat / 2]));

        FlatteningOptions Told(string what) => new()
        {
            Progress = (step, energy) => progress.Report(string.Create(CultureInfo.InvariantCulture, $"{what}: step {step}, energy {energy:G6} mm²")),
        };
    }

    private static OutputFault? NameFault(string path, string? target)
    {
        const string mend = "Name a file that ends in .obj: --out OUT.obj.";
        if (!MeshFile.Knows(path)) return new OutputFault(path, "This is not a mesh file that can be read.", "Name a Wavefront .obj or an .stl file.");
        if (target is null) return new OutputFault("--out", "The file to write the blank to is not named.", mend);
        if (!target.EndsWith(".obj", StringComparison.OrdinalIgnoreCase)) return new OutputFault(target, "The blank is written as Wavefront OBJ.", mend);
        return string.Equals(Real(path), Real(target), StringComparison.OrdinalIgnoreCase)
            ? new OutputFault(target, "The blank would overwrite the mesh.", "Name another file with --out.")
            : null;
    }

    // The full name of a file, whatever links lead to it.
    private static string Real(string path)
    {
        string full = Path.GetFullPath(path);
        if (Path.GetDirectoryName(full) is not { } folder) return full;
        string place = Path.Combine(Real(folder), Path.GetFileName(full));
        try
        {
            return File.ResolveLinkTarget(place, returnFinalTarget: true)?.FullName ?? place;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return place;
        }
    }
}
