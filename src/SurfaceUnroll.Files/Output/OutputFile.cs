namespace SurfaceUnroll.Files.Output;

/// <summary>One file to be written.</summary>
/// <param name="Name">File name without folder.</param>
/// <param name="Content">Whole content.</param>
public sealed record OutputFile(string Name, ReadOnlyMemory<byte> Content)
{
    /// <summary>What there is to say of it on the screen; null if nothing.</summary>
    public string? Note { get; init; }
}

/// <summary>Why files could not be written; none of them was.</summary>
/// <param name="Path">Folder or file that stood in the way.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Mend">How to mend it.</param>
/// <param name="OfTheMachine">The disk failed or is full; otherwise the place that was named cannot be used.</param>
public sealed record OutputFault(string Path, string Message, string Mend, bool OfTheMachine = false);
