using System.Diagnostics;
using System.Globalization;
using SurfaceUnroll.Flattening;

namespace SurfaceUnroll.Benchmarks.Flattening;

/// <summary>Flattening by this program and by others, mesh by mesh in one run, as a table.</summary>
internal static class FlatteningComparison
{
    private const string Usage = """
        flatten [--peer NAME=EXECUTABLE]... [--only TEXT] [--repeat N] [--meshes DIR]

          --peer     another program, called as EXECUTABLE MESH.obj OUT.obj; prints "seconds S"
          --only     the meshes whose name has this text, for example 2k or crown
          --repeat   timed runs after one to warm up, 5 otherwise
          --meshes   keep the mesh files and the peers' blanks in this folder
        """;

    // A peer that takes minutes is run once.
    private const double PeerLimit = 5;

    /// <summary>Runs the comparison.</summary>
    /// <returns>0; 2 for a wrong command line.</returns>
    public static int Run(string[] args)
    {
        var peers = new List<Peer>();
        (string only, string? folder, int repeat) = ("", null, 5);
        for (int i = 0; i < args.Length; i += 2)
        {
            string value = i + 1 < args.Length ? args[i + 1] : "";
            switch (args[i])
            {
                case "--peer" when value.Split('=', 2) is [string name, string executable] && File.Exists(executable):
                    peers.Add(new Peer(name, Path.GetFullPath(executable)));
                    break;
                case "--only" when value.Length > 0:
                    only = value;
                    break;
                case "--repeat" when int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out repeat) && repeat > 0:
                    break;
                case "--meshes" when value.Length > 0:
                    folder = value;
                    break;
                default:
                    Console.Error.WriteLine($"{args[i]} {value} cannot be used.\n{Usage}");
                    return 2;
            }
        }
        if (folder is not null)
        {
            Directory.CreateDirectory(folder);
            Compare(folder, peers, only, repeat);
            return 0;
        }
        string temporary = Directory.CreateTempSubdirectory("surfaceunroll-flatten-").FullName;
        try
        {
            Compare(temporary, peers, only, repeat);
        }
        finally
        {
            Directory.Delete(temporary, recursive: true);
        }
        return 0;
    }

    private static void Compare(string folder, List<Peer> peers, string only, int repeat)
    {
        Say($"{"mesh",-16}{"triangles",10}{"seconds",10}{"energy",14}{"steps",6}");
        foreach (Peer peer in peers) Say($"{peer.Name + " s",16}{"energy",14}{"our time",10}{"our energy",12}");
        Console.WriteLine();
        var ours = new List<(string Shape, string Size, int Faces, double Seconds)>();
        foreach (ComparedMesh mesh in ComparedMesh.All().Where(m => m.Name.Contains(only, StringComparison.Ordinal)))
        {
            string file = Path.Combine(folder, mesh.Name + ".obj");
            File.WriteAllText(file, mesh.ToObj());
            (FlattenedMesh blank, double seconds) = Ours(mesh, repeat);
            ours.Add((mesh.Shape, mesh.Size, mesh.Mesh.Faces.Length, seconds));
            Say($"{mesh.Name,-16}{mesh.Mesh.Faces.Length,10}{seconds,10:0.0000}{blank.Energy,14:G9}{blank.Iterations,6}");
            foreach (Peer peer in peers)
            {
                string target = Path.Combine(folder, $"{mesh.Name}-{peer.Name}.obj");
                if (peer.Time(file, target, repeat, PeerLimit) is not { } time)
                {
                    Say($"{"failed",16}{"",36}");
                    continue;
                }
                double energy = mesh.EnergyOf(target);
                Say($"{time,16:0.0000}{energy,14:G9}{seconds / time,9:0.00}×{blank.Energy / energy - 1,12:+0.0E+0;-0.0E+0}");
            }
            Console.WriteLine();
        }
        foreach (var shape in ours.GroupBy(o => o.Shape))
        {
            if (shape.Where(o => o.Size != "2k").ToArray() is not [var middle, var large]) continue;
            double growth = Math.Log(large.Seconds / middle.Seconds) / Math.Log((double)large.Faces / middle.Faces);
            Say($"{shape.Key}: from 20k to 200k the time grows as the number of triangles to the power {growth:0.00}\n");
        }
        using var process = Process.GetCurrentProcess();
        Say($"Most memory held by this process, meshes and comparison included: {process.PeakWorkingSet64 / 1e6:0} MB\n");
    }

    private static (FlattenedMesh Blank, double Seconds) Ours(ComparedMesh mesh, int repeat)
    {
        FlattenedMesh blank = MeshFlattening.Flatten(mesh.Mesh);
        double[] seconds = new double[repeat];
        for (int i = 0; i < repeat; i++)
        {
            long start = Stopwatch.GetTimestamp();
            blank = MeshFlattening.Flatten(mesh.Mesh);
            seconds[i] = Stopwatch.GetElapsedTime(start).TotalSeconds;
        }
        return (blank, Statistics.Median(seconds));
    }

    private static void Say(FormattableString text) => Console.Write(text.ToString(CultureInfo.InvariantCulture));
}
