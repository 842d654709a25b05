using System.Globalization;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads the mesh of a panel from the file that the job names.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="open">Opens a file by its name in the job.</param>
internal sealed class MeshReader(Measures measures, Func<string, FileReading> open)
{
    private readonly FaultList _faults = measures.Faults;

    /// <summary>The mesh of a panel that has the key <c>mesh</c>; null with faults if it is no disc of triangles.</summary>
    public MeshSource? Read(JobBlock panel)
    {
        if (Open(panel) is not var (source, numbers)) return null;
        foreach (DiscFault fault in DiscCheck.Check(source.Mesh, numbers)) _faults.Add(fault.Code, panel.PathOf("mesh"), panel.Find("mesh")!.Place, $"{source.File}: {fault.Message}", fault.Mend);
        return source;
    }

    /// <summary>The triangles of a scan under the key <c>mesh</c>, however they hang together; null with faults.</summary>
    public MeshSource? ReadScan(JobBlock section) => Open(section)?.Source;

    private (MeshSource Source, MeshNumbers? Numbers)? Open(JobBlock panel)
    {
        double unit = measures.Choice(panel, "meshUnits", 1, ("mm", 1), ("in", ShopLength.MillimetresPerInch));
        (JsonTree tree, string path) = (panel.Find("mesh")!, panel.PathOf("mesh"));
        if (measures.Text(tree, path) is not { } file) return null;
        if (!MeshFile.Knows(file))
        {
            _faults.Add("mesh-file-kind", path, tree.Place, $"\"{file}\" is not a mesh file that can be read.", "Name a Wavefront .obj or an .stl file.");
            return null;
        }
        FileReading opened = open(file);
        if (opened.Bytes is null)
        {
            _faults.Add("mesh-file", path, tree.Place, $"{file}: {opened.Problem}", opened.Mend);
            return null;
        }
        MeshReading reading = MeshFile.Read(file, opened.Bytes);
        foreach (MeshFault fault in reading.Faults)
        {
            string line = fault.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $", line {fault.Line}") : "";
            _faults.Add(fault.Code, path, tree.Place, $"{file}{line}: {fault.Message}", fault.Mend);
        }
        if (reading.Mesh is not { } mesh) return null;
        if (unit != 1) mesh = mesh with { Places = [.. mesh.Places.Select(p => unit * p)] };
        if (IsTooLarge(mesh))
        {
            _faults.Add("mesh-too-large", path, tree.Place, $"{file}: the mesh reaches farther than 100 m.", "Write \"meshUnits\": \"mm\" or \"in\", whichever it was made in, or scale it to millimetres.");
            return null;
        }
        return (new MeshSource(file, mesh), reading.Numbers);
    }

    private static bool IsTooLarge(TriangleMesh mesh)
    {
        foreach (Vec3 p in mesh.Places)
        {
            if (Math.Max(Math.Abs(p.X), Math.Max(Math.Abs(p.Y), Math.Abs(p.Z))) > Measures.Longest) return true;
        }
        return false;
    }
}
