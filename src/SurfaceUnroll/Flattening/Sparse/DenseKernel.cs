using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace SurfaceUnroll.Flattening.Sparse;

/// <summary>Dense products and factors of row-major matrices: the inner loops of the sparse factorisation.</summary>
internal static unsafe class DenseKernel
{
    /// <summary>Columns factored at a time.</summary>
    private const int Block = 16;

    // Rows below the diagonal solved at a time.
    private const int SolvedRows = 32;

    // Rows of the right factor kept in the second-level cache while the left one streams past.
    private const int CachedRows = 64;

    /// <summary>Cholesky factor of the first columns of a front, in place: the lower triangle of its top, and the rows below it solved against that.</summary>
    /// <param name="panel">rows × columns, row-major; what lies right of the diagonal is not read.</param>
    /// <param name="stride">Doubles from row to row; a multiple of four, the padding zero.</param>
    /// <param name="rows">Even.</param>
    /// <param name="columns">Even, ≤ <paramref name="rows"/>.</param>
    /// <returns>False if a pivot is not positive.</returns>
    public static bool FactorPanel(double* panel, int stride, int rows, int columns)
    {
        double* transposed = stackalloc double[Block * Block];
        double* inverse = stackalloc double[Block * Block];
        double* solved = stackalloc double[SolvedRows * Block];
        for (int j = 0; j < columns; j += Block)
        {
            int width = Math.Min(Block, columns - j);
            double* top = panel + (long)j * stride;
            if (j > 0) SubtractProduct(top + j, stride, top, stride, top, stride, rows - j, width, j);
            if (!FactorDiagonal(top + j, stride, width, transposed)) return false;
            if (j + width == rows) break;
            NegatedInverse(transposed, width, inverse);
            // The block's padding and what lies right of it meet zeros of the inverse.
            int depth = (width + 3) & ~3;
            for (int i = j + width; i < rows; i += SolvedRows)
            {
                int count = Math.Min(SolvedRows, rows - i);
                double* first = panel + (long)i * stride + j;
                new Span<double>(solved, count * Block).Clear();
                SubtractProduct(solved, Block, first, stride, inverse, Block, count, width, depth);
                for (int r = 0; r < count; r++) new Span<double>(solved + r * Block, width).CopyTo(new Span<double>(first + (long)r * stride, width));
            }
        }
        return true;
    }

    /// <summary>U −= L·Lᵀ on and below the diagonal (blocks across the diagonal are filled whole).</summary>
    /// <param name="update">size × size, row-major.</param>
    /// <param name="size">Even.</param>
    /// <param name="panel">size × depth, row-major.</param>
    /// <param name="stride">Doubles from row to row of the panel.</param>
    /// <param name="depth">A multiple of four.</param>
    public static void SubtractOuter(double* update, int size, double* panel, int stride, int depth)
    {
        for (int j = 0; j < size; j += CachedRows)
        {
            int width = Math.Min(CachedRows, size - j);
            SubtractProduct(update + (long)j * size + j, size, panel + (long)j * stride, stride, panel + (long)j * stride, stride, size - j, width, depth);
        }
    }

    /// <summary>Σ aᵢbᵢ.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Dot(double* a, double* b, int count)
    {
        int i = 0;
        double sum = 0;
        if (Fma.IsSupported)
        {
            Vector256<double> s0 = Vector256<double>.Zero, s1 = s0;
            for (; i + 8 <= count; i += 8)
            {
                s0 = Fma.MultiplyAdd(Avx.LoadVector256(a + i), Avx.LoadVector256(b + i), s0);
                s1 = Fma.MultiplyAdd(Avx.LoadVector256(a + i + 4), Avx.LoadVector256(b + i + 4), s1);
            }
            s0 = Avx.Add(s0, s1);
            Vector128<double> half = Sse2.Add(s0.GetLower(), Avx.ExtractVector128(s0, 1));
            sum = half.ToScalar() + half.GetElement(1);
        }
        for (; i < count; i++) sum += a[i] * b[i];
        return sum;
    }

    /// <summary>y −= factor · x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void SubtractScaled(double* y, double* x, double factor, int count)
    {
        int i = 0;
        if (Fma.IsSupported)
        {
            Vector256<double> f = Vector256.Create(factor);
            for (; i + 4 <= count; i += 4)
                Avx.Store(y + i, Fma.MultiplyAddNegated(f, Avx.LoadVector256(x + i), Avx.LoadVector256(y + i)));
        }
        for (; i < count; i++) y[i] -= factor * x[i];
    }

    // C −= A·Bᵀ, two rows and four columns at a time; rows and columns even, depth a multiple of four.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void SubtractProduct(double* c, int ldc, double* a, int lda, double* b, int ldb, int rows, int columns, int depth)
    {
        if (!Fma.IsSupported)
        {
            SubtractProductPlain(c, ldc, a, lda, b, ldb, rows, columns, depth);
            return;
        }
        int wide = columns & ~3;
        for (int i = 0; i < rows; i += 2)
        {
            double* a0 = a + (long)i * lda, a1 = a0 + lda;
            double* c0 = c + (long)i * ldc, c1 = c0 + ldc;
            for (int j = 0; j < wide; j += 4)
            {
                double* b0 = b + (long)j * ldb, b1 = b0 + ldb, b2 = b1 + ldb, b3 = b2 + ldb;
                Vector256<double> s00 = Vector256<double>.Zero, s01 = s00, s02 = s00, s03 = s00, s10 = s00, s11 = s00, s12 = s00, s13 = s00;
                for (int k = 0; k < depth; k += 4)
                {
                    Vector256<double> x0 = Avx.LoadVector256(a0 + k), x1 = Avx.LoadVector256(a1 + k);
                    Vector256<double> y = Avx.LoadVector256(b0 + k);
                    s00 = Fma.MultiplyAdd(x0, y, s00);
                    s10 = Fma.MultiplyAdd(x1, y, s10);
                    y = Avx.LoadVector256(b1 + k);
                    s01 = Fma.MultiplyAdd(x0, y, s01);
                    s11 = Fma.MultiplyAdd(x1, y, s11);
                    y = Avx.LoadVector256(b2 + k);
                    s02 = Fma.MultiplyAdd(x0, y, s02);
                    s12 = Fma.MultiplyAdd(x1, y, s12);
                    y = Avx.LoadVector256(b3 + k);
                    s03 = Fma.MultiplyAdd(x0, y, s03);
                    s13 = Fma.MultiplyAdd(x1, y, s13);
                }
                Vector256<double> h0 = Avx.HorizontalAdd(s00, s01), h1 = Avx.HorizontalAdd(s02, s03);
                Vector256<double> sums = Avx.Add(Avx.Permute2x128(h0, h1, 0x20), Avx.Permute2x128(h0, h1, 0x31));
                Avx.Store(c0 + j, Avx.Subtract(Avx.LoadVector256(c0 + j), sums));
                h0 = Avx.HorizontalAdd(s10, s11);
                h1 = Avx.HorizontalAdd(s12, s13);
                sums = Avx.Add(Avx.Permute2x128(h0, h1, 0x20), Avx.Permute2x128(h0, h1, 0x31));
                Avx.Store(c1 + j, Avx.Subtract(Avx.LoadVector256(c1 + j), sums));
            }
            if (wide == columns) continue;
            double* b4 = b + (long)wide * ldb, b5 = b4 + ldb;
            Vector256<double> t00 = Vector256<double>.Zero, t01 = t00, t10 = t00, t11 = t00;
            for (int k = 0; k < depth; k += 4)
            {
                Vector256<double> x0 = Avx.LoadVector256(a0 + k), x1 = Avx.LoadVector256(a1 + k);
                Vector256<double> y = Avx.LoadVector256(b4 + k);
                t00 = Fma.MultiplyAdd(x0, y, t00);
                t10 = Fma.MultiplyAdd(x1, y, t10);
                y = Avx.LoadVector256(b5 + k);
                t01 = Fma.MultiplyAdd(x0, y, t01);
                t11 = Fma.MultiplyAdd(x1, y, t11);
            }
            Vector256<double> g0 = Avx.HorizontalAdd(t00, t01), g1 = Avx.HorizontalAdd(t10, t11);
            Vector128<double> sum0 = Sse2.Add(g0.GetLower(), Avx.ExtractVector128(g0, 1)), sum1 = Sse2.Add(g1.GetLower(), Avx.ExtractVector128(g1, 1));
            Sse2.Store(c0 + wide, Sse2.Subtract(Sse2.LoadVector128(c0 + wide), sum0));
            Sse2.Store(c1 + wide, Sse2.Subtract(Sse2.LoadVector128(c1 + wide), sum1));
        }
    }

    internal static void SubtractProductPlain(double* c, int ldc, double* a, int lda, double* b, int ldb, int rows, int columns, int depth)
    {
        for (int i = 0; i < rows; i++)
        {
            for (int j = 0; j < columns; j++)
            {
                double* x = a + (long)i * lda, y = b + (long)j * ldb;
                Vector128<double> s0 = Vector128<double>.Zero, s1 = s0;
                for (int k = 0; k < depth; k += 4)
                {
                    s0 += Vector128.Load(x + k) * Vector128.Load(y + k);
                    s1 += Vector128.Load(x + k + 2) * Vector128.Load(y + k + 2);
                }
                c[(long)i * ldc + j] -= Vector128.Sum(s0 + s1);
            }
        }
    }

    // Cholesky of a diagonal block, on its transpose: row k of it is then a column of L, and updates run along rows. Leaves Lᵀ in `transposed`, rows of length Block, zero left of the
    // diagonal and beyond the width.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool FactorDiagonal(double* d, int stride, int width, double* transposed)
    {
        new Span<double>(transposed, Block * Block).Clear();
        for (int i = 0; i < width; i++)
            for (int k = 0; k <= i; k++)
                transposed[k * Block + i] = d[(long)i * stride + k];
        for (int k = 0; k < width; k++)
        {
            double* row = transposed + k * Block;
            double pivot = row[k];
            if (!(pivot > 0)) return false;
            double root = Math.Sqrt(pivot), scale = 1 / root;
            row[k] = root;
            for (int i = k + 1; i < width; i++) row[i] *= scale;
            for (int i = k + 1; i < width; i++)
            {
                // From the multiple of four at or before the diagonal: what is written left of it is cleared below.
                int from = i & ~3;
                SubtractScaled(transposed + i * Block + from, row + from, row[i], Block - from);
            }
        }
        for (int i = 0; i < width; i++)
        {
            for (int k = 0; k <= i; k++) d[(long)i * stride + k] = transposed[k * Block + i];
            for (int k = i & ~3; k < i; k++) transposed[i * Block + k] = 0;
        }
        return true;
    }

    // N = −L⁻¹ from Lᵀ, rows of length Block, zero right of the diagonal and beyond the width.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void NegatedInverse(double* transposed, int width, double* inverse)
    {
        new Span<double>(inverse, Block * Block).Clear();
        for (int i = 0; i < width; i++)
        {
            // Row i of N is −(eᵢ + Σ L[i,k]·N row k)/L[i,i].
            double* into = inverse + i * Block;
            into[i] = -1;
            for (int k = 0; k < i; k++) SubtractScaled(into, inverse + k * Block, transposed[k * Block + i], (k + 4) & ~3);
            double scale = 1 / transposed[i * Block + i];
            for (int m = 0; m <= i; m++) into[m] *= scale;
        }
    }
}
