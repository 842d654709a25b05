namespace SurfaceUnroll.Flattening;

/// <summary>One reason why a mesh is not one disc of triangles and cannot be laid flat.</summary>
/// <param name="Code">Stable id in kebab-case, for example <c>mesh-hole</c>.</param>
/// <param name="Message">What is wrong, where first, and how many times.</param>
/// <param name="Mend">How to mend it.</param>
public sealed record DiscFault(string Code, string Message, string Mend);
