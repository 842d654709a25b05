namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>A sheet on which each piece is laid as far to the left as it goes, and then as far down, at the angle at which it ends farthest to the left.</summary>
/// <remarks>Bottom-left placement (Baker, Coffman and Rivest 1980) of irregular pieces on a raster of all cells that they touch (Oliveira and Ferreira 1993).</remarks>
/// <param name="field">Its room.</param>
/// <param name="cell">Of the raster, mm.</param>
/// <param name="margin">How far a grown outline goes beyond its piece, mm.</param>
/// <param name="work">Is told how many cells were looked at.</param>
internal sealed class RasterSheet(NestField field, double cell, double margin, Action<long> work) : IOpenSheet
{
    private readonly FieldRaster _raster = new(field, cell, margin);
    private readonly List<LaidPiece> _pieces = [];
    private double _room = field.Length * field.Width;

    public IReadOnlyList<LaidPiece> Pieces => _pieces;

    public bool TryLay(TurnablePiece piece, TurnedPiece? only)
    {
        if (piece.Area > _room) return false;
        long before = _raster.Work;
        LaidPiece? best = null;
        foreach (TurnedPiece turned in piece.On(field).Where(t => only is null || ReferenceEquals(t, only)))
            if (_raster.Find(turned, best is null ? double.PositiveInfinity : best.Right - 0.5 * cell) is { } at) best = new LaidPiece(piece, turned, at);
        work(_raster.Work - before);
        if (best is null) return false;
        _raster.Take(best.Turned, best.At);
        _pieces.Add(best);
        _room -= piece.Area;
        return true;
    }
}
