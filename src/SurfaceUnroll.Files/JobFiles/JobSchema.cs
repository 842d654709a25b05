namespace SurfaceUnroll.Files.JobFiles;

/// <summary>The JSON Schema of job files, for editors that check and complete as one types.</summary>
public static class JobSchema
{
    /// <summary>Schema text (JSON Schema 2020-12); lines end in LF.</summary>
    /// <remarks>It knows shapes and ranges. What needs more than one place of the file to tell, such as a curve that is not there,
    /// only <see cref="JobFile"/> finds.</remarks>
    public static string Text
    {
        get
        {
            using Stream stream = typeof(JobSchema).Assembly.GetManifestResourceStream("job.schema.json")
                ?? throw new InvalidOperationException("The schema is not in the assembly.");
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd().ReplaceLineEndings("\n");
        }
    }
}
