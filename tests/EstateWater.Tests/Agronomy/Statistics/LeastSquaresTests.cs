using CsCheck;
using EstateWater.Agronomy.Statistics;

namespace EstateWater.Tests.Statistics;

public sealed class LeastSquaresTests
{
    private static readonly Gen<(double X, double Y)[]> Points = Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50]).Array[5, 30];

    [Fact]
    public void The_order_of_the_points_does_not_matter() =>
        Points.Sample(points =>
        {
            if (points.Max(p => p.X) - points.Min(p => p.X) < 1)
            {
                return true;
            }

            var line = LeastSquares.Line([.. points.Select(p => p.X)], [.. points.Select(p => p.Y)]);
            var turned = LeastSquares.Line([.. points.Reverse().Select(p => p.X)], [.. points.Reverse().Select(p => p.Y)]);
            return line.Coefficients.Zip(turned.Coefficients).All(c => Math.Abs(c.First - c.Second) <= 1e-8 * (1 + Math.Abs(c.First)));
        });

    [Fact]
    public void Residuals_of_a_line_add_up_to_nothing() =>
        Points.Sample(points =>
        {
            if (points.Max(p => p.X) - points.Min(p => p.X) < 1)
            {
                return true;
            }

            var line = LeastSquares.Line([.. points.Select(p => p.X)], [.. points.Select(p => p.Y)]);
            return Math.Abs(points.Sum(p => p.Y - line.Coefficients[0] - (line.Coefficients[1] * p.X))) < 1e-7;
        });

    [Fact]
    public void Refuses_too_few_points_and_columns_that_depend_on_each_other()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => LeastSquares.Line([1, 2], [1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeastSquares.Line([1, 2, 3], [1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeastSquares.Line([2, 2, 2, 2], [1, 2, 3, 4]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeastSquares.ThroughOrigin([0, 0, 0], [1, 2, 3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeastSquares.Fit([[1, 2, 3, 4], [2, 4, 6, 8]], [1, 2, 3, 5], withIntercept: true));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeastSquares.Line([1, 2, double.NaN], [1, 2, 3]));
    }
}
