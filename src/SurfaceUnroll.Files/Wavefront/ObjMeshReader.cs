using System.Buffers.Text;
using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Wavefront;

/// <summary>Reads the triangles of a Wavefront OBJ file.</summary>
/// <remarks>Only <c>v</c> and <c>f</c> count; texture places, normals, groups and the rest are passed over. A face of more than three corners is
/// cut into a fan from its first corner. Vertices that no face uses are left out; the others keep their order.</remarks>
public static class ObjMeshReader
{
    /// <summary>Reads a file.</summary>
    /// <returns>The mesh, or its faults. Never throws for what the file holds.</returns>
    public static MeshReading Read(ReadOnlySpan<byte> bytes) => new Reader().Read(bytes);

    private sealed class Reader
    {
        private readonly MeshFaults _faults = new();
        private readonly List<Vec3> _places = [];
        private readonly List<(int A, int B, int C)> _triangles = [];
        private readonly List<(int Face, int Line)> _sources = [];
        private int _faces;

        public MeshReading Read(ReadOnlySpan<byte> bytes)
        {
            var text = new MeshText(bytes);
            while (!text.AtEnd && !_faults.Full && _triangles.Count <= MeshFaults.MostTriangles)
            {
                ReadOnlySpan<byte> keyword = text.Word();
                if (keyword.SequenceEqual("v"u8)) Vertex(ref text);
                else if (keyword.SequenceEqual("f"u8)) Face(ref text);
                text.SkipLine(joined: keyword is not [(byte)'#', ..]);
            }
            if (_triangles.Count > MeshFaults.MostTriangles) _faults.TooMany(text.Line);
            else CheckRange();
            if (_faults.Any) return _faults.Refusal();
            if (_triangles.Count > 0) return Used();
            return _places.Count > 0 ? MeshFaults.NoFaces()
                : MeshFaults.Refusal("mesh-not-a-mesh", "The file has neither vertices nor faces: it is no OBJ mesh.", "Write the surface as a Wavefront OBJ from the program that made it.");
        }

        private void Vertex(ref MeshText text)
        {
            Span<double> xyz = stackalloc double[3];
            for (int i = 0; i < 3; i++)
            {
                ReadOnlySpan<byte> word = text.Word();
                if (word.IsEmpty)
                {
                    _faults.Add("mesh-corners", text.Line, string.Create(CultureInfo.InvariantCulture, $"A vertex has three coordinates; this one has {i}."),
                        "If the file was cut short, write it anew.");
                    break;
                }
                if (!MeshText.Number(word, out xyz[i]))
                {
                    _faults.Add("mesh-number", text.Line, $"{MeshFaults.Show(word)} is not a number.", "Coordinates are plain numbers with a decimal point, such as -12.5.");
                    break;
                }
                if (!_faults.Usable(xyz[i], text.Line, "")) break;
            }
            _places.Add(new Vec3(xyz[0], xyz[1], xyz[2])); // Also with a fault: later faces count on it.
        }

        private void Face(ref MeshText text)
        {
            (int first, int before, int corners, int line) = (0, 0, 0, text.Line);
            _faces++;
            while (text.Word() is { IsEmpty: false } word && word is not [(byte)'#', ..])
            {
                if (Corner(word, text.Line) is not { } corner) return;
                corners++;
                if (corners >= 3)
                {
                    _triangles.Add((first, before, corner));
                    _sources.Add((_faces, line));
                    if (_triangles.Count > MeshFaults.MostTriangles) return;
                }
                if (corners == 1) first = corner;
                before = corner;
            }
            if (corners < 3)
            {
                _faults.Add("mesh-corners", line, string.Create(CultureInfo.InvariantCulture, $"A face has three corners or more; this one has {corners}."),
                    "If the file was cut short, write it anew; else take this line out.");
            }
        }

        // a, a/b, a//c or a/b/c: only the vertex counts. Negative ones count back from the last vertex so far.
        private int? Corner(ReadOnlySpan<byte> word, int line)
        {
            if (!Utf8Parser.TryParse(word, out int index, out int used) || used < word.Length && word[used] != '/')
                _faults.Add("mesh-index", line, $"{MeshFaults.Show(word)} is not the number of a vertex.", "A corner of a face is written a, a/b, a//c or a/b/c, each a whole number.");
            else if (index == 0 || index < -_places.Count)
                OutOfRange(index, line);
            else
                return index > 0 ? index - 1 : _places.Count + index;
            return null;
        }

        // Faces may stand before their vertices, so this waits for the end.
        private void CheckRange()
        {
            int told = 0;
            for (int t = 0; t < _triangles.Count && !_faults.Full; t++)
            {
                (int a, int b, int c) = _triangles[t];
                int highest = Math.Max(a, Math.Max(b, c));
                if (highest < _places.Count || _sources[t].Face == told) continue;
                OutOfRange(highest + 1, _sources[t].Line);
                told = _sources[t].Face;
            }
        }

        private void OutOfRange(int index, int line) => _faults.Add("mesh-index", line,
            string.Create(CultureInfo.InvariantCulture, $"The face names vertex {index}, but there are {_places.Count} vertices, counted from 1."), "If the file was cut short or edited by hand, write it anew.");

        private MeshReading Used()
        {
            (TriangleMesh mesh, ImmutableArray<int> kept) = MeshPacking.Pack(_places, _triangles);
            return new MeshReading(mesh, []) { Numbers = new MeshNumbers([.. kept.Select(v => v + 1)], [.. _sources.Select(s => s.Face)]) };
        }
    }
}
