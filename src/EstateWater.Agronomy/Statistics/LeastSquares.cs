using EstateWater.Agronomy.Methods;
using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Agronomy.Statistics;

/// <summary>A linear model fitted by ordinary least squares.</summary>
/// <remarks>Solved by QR, not by the normal equations, which lose half of the digits.</remarks>
[Method(
    "Linear least squares",
    Source = "Golub (1965), Numer. Math. 7:206–216: least squares by orthogonal factorisation",
    Check = "NIST StRD: Norris, Pontius, NoInt1, NoInt2, Longley")]
public sealed record LeastSquares
{
    private LeastSquares()
    {
    }

    /// <summary>Coefficients: the intercept first, if there is one, then one for each column. [unit of y per unit of x]</summary>
    public required IReadOnlyList<double> Coefficients { get; init; }

    /// <summary>Standard errors of the coefficients, in the same order.</summary>
    public required IReadOnlyList<double> StandardErrors { get; init; }

    /// <summary>Standard deviation of the residuals. [unit of y]</summary>
    public required double ResidualStandardDeviation { get; init; }

    /// <summary>Share of the variation explained, about the mean with an intercept, about zero without. 0–1. [–]</summary>
    public required double RSquared { get; init; }

    /// <summary>Ratio of the mean squares of regression and residual. [–]</summary>
    public required double F { get; init; }

    /// <summary>Number of points.</summary>
    public required int Points { get; init; }

    /// <summary>Fits y = b₀ + b₁·x.</summary>
    /// <param name="x">At least three finite values, not all alike.</param>
    /// <param name="y">As many finite values.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, not as many, or not finite values, or columns that depend on each other.</exception>
    public static LeastSquares Line(IReadOnlyList<double> x, IReadOnlyList<double> y) => Fit([x], y, withIntercept: true);

    /// <summary>Fits y = b₁·x, through the origin.</summary>
    /// <param name="x">At least two finite values, not all zero.</param>
    /// <param name="y">As many finite values.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, not as many, or not finite values.</exception>
    public static LeastSquares ThroughOrigin(IReadOnlyList<double> x, IReadOnlyList<double> y) => Fit([x], y, withIntercept: false);

    /// <summary>Fits y to any number of columns.</summary>
    /// <param name="columns">One list of finite values for each column, all of the same length.</param>
    /// <param name="y">As many finite values, more than there are coefficients.</param>
    /// <param name="withIntercept">Whether a constant is fitted too.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, not as many, or not finite values, or columns that depend on each other.</exception>
    public static LeastSquares Fit(IReadOnlyList<IReadOnlyList<double>> columns, IReadOnlyList<double> y, bool withIntercept)
    {
        ArgumentNullException.ThrowIfNull(columns);
        var parameters = columns.Count + (withIntercept ? 1 : 0);
        Require.AtLeast(parameters, 1, "coefficients", nameof(columns));
        Require.Values(y, parameters + 1);
        foreach (var column in columns)
        {
            Require.Values(column, y.Count, nameof(columns));
            Require.InRange(column.Count, y.Count, y.Count, "values in each column", nameof(columns));
        }

        var design = Matrix<double>.Build.Dense(y.Count, parameters, (row, j) =>
            withIntercept ? (j == 0 ? 1 : columns[j - 1][row]) : columns[j][row]);
        return Solve(design, Vector<double>.Build.DenseOfEnumerable(y), withIntercept);
    }

    private static LeastSquares Solve(Matrix<double> design, Vector<double> y, bool withIntercept)
    {
        // Columns of very different size (powers of x) are brought to one length first, so that none counts as zero.
        var scale = design.ColumnNorms(2);
        Require.Above(scale.Min(), 0, "(length of each column)", "columns");
        var qr = design.MapIndexed((_, j, v) => v / scale[j]).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        Require.Above(qr.R.Diagonal().AbsoluteMinimum(), 1e-13, "(columns depend on each other)", "columns");

        var coefficients = qr.Solve(y).PointwiseDivide(scale);
        var residual = y - (design * coefficients);
        var residualSquares = residual.DotProduct(residual);
        var centre = withIntercept ? Descriptive.Mean([.. y]) : 0;
        var totalSquares = y.Subtract(centre).PointwisePower(2).Sum();
        var freedom = y.Count - coefficients.Count;
        var inverse = qr.R.Inverse();
        var variance = residualSquares / freedom;
        return new LeastSquares
        {
            Coefficients = [.. coefficients],
            StandardErrors = [.. inverse.EnumerateRows().Select((row, j) => Math.Sqrt(variance) * row.L2Norm() / scale[j])],
            ResidualStandardDeviation = Math.Sqrt(variance),
            RSquared = totalSquares > 0 ? 1 - (residualSquares / totalSquares) : 1,
            F = (totalSquares - residualSquares) / (coefficients.Count - (withIntercept ? 1 : 0)) / variance,
            Points = y.Count,
        };
    }
}
