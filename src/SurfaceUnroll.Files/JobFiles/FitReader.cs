using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads how points are joined: <c>fit</c>, and <c>within</c> of the fairest curve.</summary>
/// <param name="measures">Reads single values.</param>
internal sealed class FitReader(Measures measures)
{
    // Less than any gauge tells; and a bound of nothing leaves the curve no room.
    private const double LeastWithin = 0.001;

    private enum Word
    {
        Smooth,
        Straight,
        Fair,
    }

    /// <summary>Smooth or straight, and how far a smooth curve may leave each point, mm; null: not at all.</summary>
    public (Fit Fit, double? Within) Read(JobBlock block)
    {
        Word word = measures.Choice(block, "fit", Word.Smooth, ("smooth", Word.Smooth), ("straight", Word.Straight), ("fair", Word.Fair));
        Fit fit = word == Word.Straight ? Fit.Straight : Fit.Smooth;
        if (word != Word.Fair)
        {
            if (block.Find("within") is { } idle)
                measures.Faults.Add("key-misplaced", block.PathOf("within"), idle.Place, "\"within\" goes with \"fit\": \"fair\".", "Write \"fit\": \"fair\", or take \"within\" out.");
            return (fit, null);
        }
        if (block.Need("within", "Say how far the fairest curve may leave a reading: what you trust your readings to.") is not { } tree) return (fit, null);
        double within = measures.Length(tree, block.PathOf("within"), Allowed.Positive);
        if (within > 0 && within < LeastWithin)
            measures.Faults.Add("number-range", block.PathOf("within"), tree.Place, $"Readings that are good to less than {measures.Show(LeastWithin)} are not to be had.", $"Write {measures.Show(LeastWithin)} or more, or \"fit\": \"smooth\" for a curve through every point.");
        return (fit, within);
    }
}
