using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Finds the blank of least forming energy for a mesh from anywhere: coarse to fine if it is a grid, else in one go.</summary>
public static class MeshFlattening
{
    /// <summary>Flattens one disc of triangles.</summary>
    /// <param name="mesh">One disc without flat or turned triangles: <see cref="DiscCheck"/> finds no fault with it.</param>
    /// <param name="options">How; the default if null. With first blanks or held edges of its own the mesh is flattened in one go.</param>
    /// <param name="cancellation">Stops between steps.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static FlattenedMesh Flatten(TriangleMesh mesh, FlatteningOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        options ??= FlatteningOptions.Default;
        bool free = options.Held.IsEmpty && options.Starts.IsEmpty;
        return free && GridRecognition.Of(mesh) is { } grid ? GridFlattening.Flatten(grid, options, cancellation).Blank : Flattener.Flatten(mesh, options, cancellation);
    }
}
