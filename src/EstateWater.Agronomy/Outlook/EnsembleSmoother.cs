using EstateWater.Agronomy.Methods;
using MathNet.Numerics.LinearAlgebra;

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
    public static void Update(double[][] unknowns, double[][] predicted, double[] observed, Matrix<double> errorCovariance, NormalNumbers numbers)
    {
        var members = unknowns[0].Length;
        var x = Matrix<double>.Build.DenseOfRowArrays(unknowns);
        var y = Matrix<double>.Build.DenseOfRowArrays(predicted);
        var xAnomaly = Anomaly(x);
        var yAnomaly = Anomaly(y);
        var covariance = yAnomaly.TransposeAndMultiply(yAnomaly) / (members - 1);
        covariance += errorCovariance;
        var misfit = Matrix<double>.Build.Dense(observed.Length, members);
        for (var k = 0; k < observed.Length; k++)
        {
            for (var m = 0; m < members; m++)
            {
                misfit[k, m] = numbers.Next();
            }
        }

        misfit = errorCovariance.Cholesky().Factor * misfit;
        for (var k = 0; k < observed.Length; k++)
        {
            for (var m = 0; m < members; m++)
            {
                misfit[k, m] += observed[k] - predicted[k][m];
            }
        }

        var step = xAnomaly.TransposeAndMultiply(yAnomaly) / (members - 1) * covariance.Cholesky().Solve(misfit);
        for (var p = 0; p < unknowns.Length; p++)
        {
            for (var m = 0; m < members; m++)
            {
                unknowns[p][m] += step[p, m];
            }
        }
    }

    /// <summary>Each row less its mean.</summary>
    public static Matrix<double> Anomaly(Matrix<double> values)
    {
        var means = values.RowSums() / values.ColumnCount;
        return Matrix<double>.Build.Dense(values.RowCount, values.ColumnCount, (r, c) => values[r, c] - means[r]);
    }
}
