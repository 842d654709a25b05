using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Patterns.Strain;

namespace SurfaceUnroll.Tests.Patterns.Strain;

/// <summary>The colours seen by eyes without red, green or blue cones.</summary>
/// <remarks>
/// Matrices for severity 1.0 from G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, "A physiologically-based model for simulation of color vision
/// deficiency", IEEE Transactions on Visualization and Computer Graphics 15(6), 2009; quoted from memory, each row sums to 1 as it must. They act on
/// linear red, green and blue. Distances are those of CIE 1976 L*a*b*, where 2.3 is just seen.
/// </remarks>
public class StrainColoursTests
{
    private const int MostBands = 9;

    private static readonly Dictionary<string, Vec3[]> Eyes = new()
    {
        ["common"] = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)],
        ["no red cones"] = [new(0.152286, 1.052583, -0.204868), new(0.114503, 0.786281, 0.099216), new(-0.003882, -0.048116, 1.051998)],
        ["no green cones"] = [new(0.367322, 0.860646, -0.227968), new(0.280085, 0.672501, 0.047413), new(-0.011820, 0.042940, 0.968881)],
        ["no blue cones"] = [new(1.255528, -0.076749, -0.178779), new(-0.078411, 0.930809, 0.147602), new(0.004733, 0.691367, 0.303900)],
    };

    public static TheoryData<string> Names => [.. Eyes.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Neighbouring_bands_differ_and_stretch_is_never_taken_for_shrink(string eyes)
    {
        for (int bands = 1; bands <= MostBands; bands++)
        {
            Vec3[] stretch = [.. Enumerable.Range(0, bands + 1).Select(k => Seen(StrainColours.Of(StrainKind.Stretch, k, bands), eyes))];
            Vec3[] shrink = [.. Enumerable.Range(0, bands + 1).Select(k => Seen(StrainColours.Of(StrainKind.Shrink, k, bands), eyes))];
            for (int k = 1; k <= bands; k++)
            {
                Assert.InRange((stretch[k] - stretch[k - 1]).Length, 4, 100);
                Assert.InRange((shrink[k] - shrink[k - 1]).Length, 4, 100);
                for (int other = 1; other <= bands; other++) Assert.InRange((stretch[k] - shrink[other]).Length, 20, 200);
            }
        }
    }

    [Fact]
    public void Order_survives_printing_in_grey_and_black_lines_stand_out_on_the_darkest()
    {
        foreach (StrainKind kind in new[] { StrainKind.Stretch, StrainKind.Shrink })
        {
            double[] lightness = [.. Enumerable.Range(0, MostBands + 1).Select(k => Seen(StrainColours.Of(kind, k, MostBands), "common").X)];
            Assert.All(lightness.Zip(lightness.Skip(1)), pair => Assert.InRange(pair.First - pair.Second, 3.5, 10));
            Assert.InRange(lightness[^1], 45, 60);
        }
    }

    // L*, a*, b* with white D65.
    private static Vec3 Seen(PageColour colour, string eyes)
    {
        var linear = new Vec3(Linear(colour.Red), Linear(colour.Green), Linear(colour.Blue));
        Vec3 rgb = new(Math.Clamp(Eyes[eyes][0].Dot(linear), 0, 1), Math.Clamp(Eyes[eyes][1].Dot(linear), 0, 1), Math.Clamp(Eyes[eyes][2].Dot(linear), 0, 1));
        double x = Root(new Vec3(0.4124564, 0.3575761, 0.1804375).Dot(rgb) / 0.95047), y = Root(new Vec3(0.2126729, 0.7151522, 0.0721750).Dot(rgb));
        double z = Root(new Vec3(0.0193339, 0.1191920, 0.9503041).Dot(rgb) / 1.08883);
        return new Vec3(116 * y - 16, 500 * (x - y), 200 * (y - z));

        static double Linear(byte code) => code <= 10 ? code / 255.0 / 12.92 : Math.Pow((code / 255.0 + 0.055) / 1.055, 2.4);

        static double Root(double t) => t > Math.Pow(6.0 / 29, 3) ? Math.Cbrt(t) : t / (3 * Math.Pow(6.0 / 29, 2)) + 4.0 / 29;
    }
}
