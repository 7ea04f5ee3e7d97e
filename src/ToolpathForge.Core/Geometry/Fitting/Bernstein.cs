namespace ToolpathForge.Geometry;

/// <summary>
/// A polynomial on 0..1 written by its Bernstein coefficients. Its values lie between the least and the greatest of them, and it has no more roots than they
/// change sign (Descartes' rule in this basis): that is what makes bounds and roots proven.
/// </summary>
/// <param name="coefficients">One more than the degree; kept, not copied.</param>
internal readonly struct Bernstein(double[] coefficients)
{
    /// <summary>Roots nearer together than this are one, as a share of the interval: finer than any distance they decide.</summary>
    private const double FinestInterval = 1e-9;

    private static readonly double[][] Binomials = Pascal(64);

    private readonly double[] _c = coefficients;

    public int Degree => _c.Length - 1;

    /// <summary>A coefficient; the first and the last are the values at the ends.</summary>
    public double this[int i] => _c[i];

    /// <summary>The largest coefficient without its sign: no value lies farther from 0.</summary>
    public double Magnitude
    {
        get
        {
            double most = 0;
            foreach (double c in _c)
            {
                most = Math.Max(most, Math.Abs(c));
            }

            return most;
        }
    }

    public double Least
    {
        get
        {
            double least = double.PositiveInfinity;
            foreach (double c in _c)
            {
                least = Math.Min(least, c);
            }

            return least;
        }
    }

    public static Bernstein operator +(Bernstein a, Bernstein b) => Sum(a, b, 1);

    public static Bernstein operator -(Bernstein a, Bernstein b) => Sum(a, b, -1);

    public static Bernstein operator *(Bernstein a, Bernstein b)
    {
        int m = a.Degree;
        int n = b.Degree;
        var product = new double[m + n + 1];
        for (int k = 0; k < product.Length; k++)
        {
            double sum = 0;
            for (int i = Math.Max(0, k - n); i <= Math.Min(m, k); i++)
            {
                sum += Binomials[m][i] * Binomials[n][k - i] * a._c[i] * b._c[k - i];
            }

            product[k] = sum / Binomials[m + n][k];
        }

        return new Bernstein(product);
    }

    public static Bernstein operator *(double scale, Bernstein a)
    {
        var scaled = new double[a._c.Length];
        for (int i = 0; i < scaled.Length; i++)
        {
            scaled[i] = scale * a._c[i];
        }

        return new Bernstein(scaled);
    }

    public Bernstein Derivative()
    {
        if (Degree == 0)
        {
            return new Bernstein([0]);
        }

        var d = new double[Degree];
        for (int i = 0; i < d.Length; i++)
        {
            d[i] = Degree * (_c[i + 1] - _c[i]);
        }

        return new Bernstein(d);
    }

    /// <summary>Value at a parameter, by repeated averaging.</summary>
    public double At(double u)
    {
        Span<double> d = stackalloc double[_c.Length];
        _c.CopyTo(d);
        for (int r = _c.Length - 1; r > 0; r--)
        {
            for (int i = 0; i < r; i++)
            {
                d[i] += (d[i + 1] - d[i]) * u;
            }
        }

        return d[0];
    }

    /// <summary>The same polynomial on a part of the interval, stretched to 0..1.</summary>
    public Bernstein Part(double from, double to)
    {
        double[] c = [.. _c];
        if (to < 1)
        {
            KeepLow(c, to);
        }

        if (from > 0)
        {
            KeepHigh(c, from / to);
        }

        return new Bernstein(c);
    }

    /// <summary>
    /// Every place strictly inside the interval where the polynomial changes sign, and besides places where it comes so near to 0 that it cannot be told from doing so.
    /// </summary>
    /// <param name="noise">Coefficients up to this are rounding.</param>
    public List<double> Roots(double noise)
    {
        var roots = new List<double>();
        if (Magnitude > noise)
        {
            Isolate(this, 0, 1, noise, roots);
        }

        return roots;
    }

    /// <summary>True when the polynomial is proven to be above a value throughout.</summary>
    public bool IsAbove(double value, int depth = 8)
    {
        if (Least > value)
        {
            return true;
        }

        if (_c[0] <= value || _c[^1] <= value || depth == 0)
        {
            return false;
        }

        return Part(0, 0.5).IsAbove(value, depth - 1) && Part(0.5, 1).IsAbove(value, depth - 1);
    }

    private static void Isolate(Bernstein p, double from, double to, double noise, List<double> roots)
    {
        int changes = SignChanges(p._c, noise);
        if (changes == 0)
        {
            return;
        }

        double a = p._c[0];
        double b = p._c[^1];
        if (changes == 1 && Math.Abs(a) > noise && Math.Abs(b) > noise)
        {
            double u = RootFinder.Find(p.At, 0, a, 1, b, 1e-13);
            roots.Add(from + (u * (to - from)));
            return;
        }

        double middle = (from + to) / 2;
        if (to - from < FinestInterval)
        {
            roots.Add(middle);
            return;
        }

        Bernstein low = p.Part(0, 0.5);
        Isolate(low, from, middle, noise, roots);
        if (Math.Abs(low._c[^1]) <= noise)
        {
            // A root where the interval is cut belongs to neither half: both leave zero ends out of account.
            roots.Add(middle);
        }

        Isolate(p.Part(0.5, 1), middle, to, noise, roots);
    }

    private static int SignChanges(double[] c, double noise)
    {
        int changes = 0;
        int last = 0;
        foreach (double value in c)
        {
            int sign = Math.Abs(value) <= noise ? 0 : Math.Sign(value);
            if (sign != 0)
            {
                changes += last != 0 && sign != last ? 1 : 0;
                last = sign;
            }
        }

        return changes;
    }

    private static Bernstein Sum(Bernstein a, Bernstein b, double sign)
    {
        double[] x = a.Raised(b.Degree);
        double[] y = b.Raised(a.Degree);
        var sum = new double[x.Length];
        for (int i = 0; i < sum.Length; i++)
        {
            sum[i] = x[i] + (sign * y[i]);
        }

        return new Bernstein(sum);
    }

    private double[] Raised(int degree)
    {
        if (degree <= Degree)
        {
            return _c;
        }

        // Times (1)^k, written in the same basis.
        var ones = new double[degree - Degree + 1];
        Array.Fill(ones, 1);
        return (this * new Bernstein(ones))._c;
    }

    private static void KeepLow(double[] c, double u)
    {
        for (int r = 1; r < c.Length; r++)
        {
            for (int i = c.Length - 1; i >= r; i--)
            {
                c[i] = c[i - 1] + ((c[i] - c[i - 1]) * u);
            }
        }
    }

    private static void KeepHigh(double[] c, double u)
    {
        for (int r = c.Length - 1; r > 0; r--)
        {
            for (int i = 0; i < r; i++)
            {
                c[i] += (c[i + 1] - c[i]) * u;
            }
        }
    }

    private static double[][] Pascal(int rows)
    {
        var triangle = new double[rows][];
        for (int n = 0; n < rows; n++)
        {
            triangle[n] = new double[n + 1];
            triangle[n][0] = triangle[n][n] = 1;
            for (int k = 1; k < n; k++)
            {
                triangle[n][k] = triangle[n - 1][k - 1] + triangle[n - 1][k];
            }
        }

        return triangle;
    }
}
