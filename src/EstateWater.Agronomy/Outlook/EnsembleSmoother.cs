using System.Numerics;
using EstateWater.Agronomy.Methods;
using DoubleMatrix = MathNet.Numerics.LinearAlgebra.Matrix<double>;

namespace EstateWater.Agronomy.Outlook;

/// <summary>One step of the ensemble smoother with multiple data assimilation (Emerick and Reynolds 2013, Computers and Geosciences 55:3–15, Eq. 8–10).</summary>
[Method(
    "Learning a block from its readings",
    Source = "Emerick & Reynolds (2013), Computers & Geosciences 55:3–15, Eq. 8–10: ensemble smoother with multiple data assimilation",
    Check = "Posterior of Bayes in the linear Gaussian case (Gelman et al., Bayesian Data Analysis, Eq. 2.10)")]
internal static class EnsembleSmoother
{
    /// <summary>Moves the members towards the observations.</summary>
    /// <param name="unknowns">By unknown, then member; changed in place.</param>
    /// <param name="predicted">By observation, then member.</param>
    /// <param name="observed">By observation.</param>
    /// <param name="errorVariance">By observation, already inflated by the number of steps.</param>
    /// <param name="numbers">Perturbs the observations.</param>
    public static void Update(double[][] unknowns, double[][] predicted, double[] observed, double[] errorVariance, NormalNumbers numbers)
    {
        var gain = Gain(unknowns, predicted, errorVariance);
        var misfit = new double[unknowns[0].Length];
        for (var k = 0; k < observed.Length; k++)
        {
            var deviation = Math.Sqrt(errorVariance[k]);
            for (var m = 0; m < misfit.Length; m++)
            {
                misfit[m] = observed[k] + (deviation * numbers.Next()) - predicted[k][m];
            }

            for (var p = 0; p < unknowns.Length; p++)
            {
                AddScaled(unknowns[p], misfit, gain[k, p]);
            }
        }
    }

    // By observation, then unknown. Solved for the few unknowns, not for the many members.
    private static DoubleMatrix Gain(double[][] unknowns, double[][] predicted, double[] errorVariance)
    {
        double degreesOfFreedom = unknowns[0].Length - 1;
        var (x, y) = (Anomalies(unknowns), Anomalies(predicted));
        var covariance = DoubleMatrix.Build.Dense(y.Length, y.Length);
        var cross = DoubleMatrix.Build.Dense(y.Length, x.Length);
        for (var k = 0; k < y.Length; k++)
        {
            for (var other = 0; other <= k; other++)
            {
                covariance[k, other] = covariance[other, k] = Product(y[k], y[other]) / degreesOfFreedom;
            }

            covariance[k, k] += errorVariance[k];
            for (var p = 0; p < x.Length; p++)
            {
                cross[k, p] = Product(y[k], x[p]) / degreesOfFreedom;
            }
        }

        return covariance.Cholesky().Solve(cross);
    }

    private static double[][] Anomalies(double[][] values) => [.. values.Select(row =>
    {
        var mean = row.Average();
        return row.Select(v => v - mean).ToArray();
    })];

    private static double Product(double[] a, double[] b)
    {
        var width = Vector<double>.Count;
        var (even, odd) = (Vector<double>.Zero, Vector<double>.Zero);
        var m = 0;
        for (; m <= a.Length - (2 * width); m += 2 * width)
        {
            even += new Vector<double>(a, m) * new Vector<double>(b, m);
            odd += new Vector<double>(a, m + width) * new Vector<double>(b, m + width);
        }

        var sum = Vector.Sum(even + odd);
        for (; m < a.Length; m++)
        {
            sum += a[m] * b[m];
        }

        return sum;
    }

    private static void AddScaled(double[] values, double[] addend, double factor)
    {
        var width = Vector<double>.Count;
        var m = 0;
        for (; m <= values.Length - width; m += width)
        {
            (new Vector<double>(values, m) + (new Vector<double>(addend, m) * factor)).CopyTo(values, m);
        }

        for (; m < values.Length; m++)
        {
            values[m] += factor * addend[m];
        }
    }
}
