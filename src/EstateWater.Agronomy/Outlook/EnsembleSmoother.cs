using System.Numerics.Tensors;
using EstateWater.Agronomy.Methods;
using MathNet.Numerics;
using DoubleMatrix = MathNet.Numerics.LinearAlgebra.Matrix<double>;

namespace EstateWater.Agronomy.Outlook;

/// <summary>One step of the ensemble smoother with multiple data assimilation (Emerick and Reynolds 2013, Computers and Geosciences 55:3–15, Eq. 8–10).</summary>
[Method(
    "Learning a block from its readings",
    Source = "Emerick & Reynolds (2013), Computers & Geosciences 55:3–15, Eq. 8–10: ensemble smoother with multiple data assimilation",
    Check = "Posterior of Bayes in the linear Gaussian case (Gelman et al., Bayesian Data Analysis, Eq. 2.10)")]
internal static class EnsembleSmoother
{
    // Blocks are fitted side by side already: matrices of a few dozen rows are not worth further threads.
    static EnsembleSmoother() => Control.MaxDegreeOfParallelism = 1;

    /// <summary>Moves the members towards the observations.</summary>
    /// <param name="unknowns">By unknown, then member; changed in place.</param>
    /// <param name="predicted">By observation, then member.</param>
    /// <param name="observed">By observation.</param>
    /// <param name="errorCovariance">Of the observations, already inflated by the number of steps.</param>
    /// <param name="numbers">Perturbs the observations.</param>
    public static void Update(double[][] unknowns, double[][] predicted, double[] observed, DoubleMatrix errorCovariance, NormalNumbers numbers)
    {
        // gainᵀ · (observed + L · number − predicted), L · Lᵀ the errors' covariance: the gain takes L, not the many members.
        var (y, factor) = (Anomalies(predicted), errorCovariance.Cholesky().Factor);
        var gain = Gain(Anomalies(unknowns), y, errorCovariance);
        var gainOfNumbers = factor.TransposeThisAndMultiply(gain);
        var (number, misfit) = (new double[unknowns[0].Length], new double[unknowns[0].Length]);
        for (var k = 0; k < observed.Length; k++)
        {
            TensorPrimitives.Subtract(observed[k], predicted[k], misfit);
            for (var m = 0; m < number.Length; m++)
            {
                number[m] = numbers.Next();
            }

            for (var p = 0; p < unknowns.Length; p++)
            {
                TensorPrimitives.MultiplyAdd(misfit, gain[k, p], unknowns[p], unknowns[p]);
                TensorPrimitives.MultiplyAdd(number, gainOfNumbers[k, p], unknowns[p], unknowns[p]);
            }
        }
    }

    /// <summary>Covariance of the members' predictions, by observation.</summary>
    public static DoubleMatrix Covariance(double[][] predicted) => CovarianceOf(Anomalies(predicted));

    private static DoubleMatrix CovarianceOf(double[][] anomalies)
    {
        var covariance = DoubleMatrix.Build.Dense(anomalies.Length, anomalies.Length);
        for (var k = 0; k < anomalies.Length; k++)
        {
            for (var other = 0; other <= k; other++)
            {
                covariance[k, other] = covariance[other, k] = TensorPrimitives.Dot<double>(anomalies[k], anomalies[other]) / (anomalies[k].Length - 1);
            }
        }

        return covariance;
    }

    // By observation, then unknown. Solved for the few unknowns, not for the many members.
    private static DoubleMatrix Gain(double[][] x, double[][] y, DoubleMatrix errorCovariance)
    {
        var cross = DoubleMatrix.Build.Dense(y.Length, x.Length, (k, p) => TensorPrimitives.Dot<double>(y[k], x[p]) / (x[p].Length - 1));
        return (CovarianceOf(y) + errorCovariance).Cholesky().Solve(cross);
    }

    private static double[][] Anomalies(double[][] values) => [.. values.Select(row =>
    {
        var anomalies = new double[row.Length];
        TensorPrimitives.Subtract(row, TensorPrimitives.Average<double>(row), anomalies);
        return anomalies;
    })];
}
