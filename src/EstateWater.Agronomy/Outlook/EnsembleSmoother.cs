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
    /// <param name="errorCovariance">Of the observations, already inflated by the number of steps.</param>
    /// <param name="numbers">Perturbs the observations.</param>
    public static void Update(double[][] unknowns, double[][] predicted, double[] observed, DoubleMatrix errorCovariance, NormalNumbers numbers)
    {
        // gainᵀ · (observed + L · number − predicted), L · Lᵀ the errors' covariance: the gain takes L, not the many members.
        var members = unknowns[0].Length;
        var gain = Gain(unknowns, predicted, errorCovariance);
        var gainOfNumbers = errorCovariance.Cholesky().Factor.TransposeThisAndMultiply(gain);
        var numbersByObservation = observed.Select(_ => Enumerable.Range(0, members).Select(_ => numbers.Next()).ToArray()).ToArray();
        var misfits = observed.Select((value, k) => predicted[k].Select(p => value - p).ToArray()).ToArray();
        for (var p = 0; p < unknowns.Length; p++)
        {
            Add(unknowns[p], misfits, gain.Column(p).ToArray(), numbersByObservation, gainOfNumbers.Column(p).ToArray());
        }
    }

    /// <summary>Covariance of the members' predictions, by observation.</summary>
    public static DoubleMatrix Covariance(double[][] predicted)
    {
        var anomalies = Anomalies(predicted);
        var covariance = DoubleMatrix.Build.Dense(predicted.Length, predicted.Length);
        for (var k = 0; k < predicted.Length; k++)
        {
            for (var other = 0; other <= k; other++)
            {
                covariance[k, other] = covariance[other, k] = Product(anomalies[k], anomalies[other]) / (predicted[k].Length - 1);
            }
        }

        return covariance;
    }

    // By observation, then unknown. Solved for the few unknowns, not for the many members.
    private static DoubleMatrix Gain(double[][] unknowns, double[][] predicted, DoubleMatrix errorCovariance)
    {
        var (x, y) = (Anomalies(unknowns), Anomalies(predicted));
        var cross = DoubleMatrix.Build.Dense(y.Length, x.Length, (k, p) => Product(y[k], x[p]) / (x[p].Length - 1));
        return (Covariance(predicted) + errorCovariance).Cholesky().Solve(cross);
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

    // Member by member, all observations at once: each value is fetched and stored once.
    private static void Add(double[] values, double[][] ones, double[] factors, double[][] others, double[] otherFactors)
    {
        var width = Vector<double>.Count;
        var m = 0;
        for (; m <= values.Length - width; m += width)
        {
            var (sum, otherSum) = (new Vector<double>(values, m), Vector<double>.Zero);
            for (var k = 0; k < ones.Length; k++)
            {
                sum += new Vector<double>(ones[k], m) * factors[k];
                otherSum += new Vector<double>(others[k], m) * otherFactors[k];
            }

            (sum + otherSum).CopyTo(values, m);
        }

        for (; m < values.Length; m++)
        {
            for (var k = 0; k < ones.Length; k++)
            {
                values[m] += (factors[k] * ones[k][m]) + (otherFactors[k] * others[k][m]);
            }
        }
    }
}
