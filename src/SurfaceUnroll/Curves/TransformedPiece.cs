namespace SurfaceUnroll.Curves;

/// <summary>A piece of any kind seen from another frame. Kinds that can move their own data do that instead.</summary>
internal sealed class TransformedPiece(CurvePiece own, Frame frame) : CurvePiece
{
    public override bool IsStraight => own.IsStraight;

    public override CurveSample At(double t) => frame.Sample(own.At(t));

    // Frames keep lengths.
    public override double Length(double t0, double t1) => own.Length(t0, t1);

    public override CurvePiece Reversed() => new TransformedPiece(own.Reversed(), frame);
}
