using EstateWater.Agronomy.Statistics;

namespace EstateWater.Tests.Statistics;

/// <summary>Against the certified values of the NIST Statistical Reference Datasets (StRD), each at the head of its file.</summary>
public sealed class NistTests
{
    /// <summary>Asks for a number of correct digits.</summary>
    private static void Agrees(double certified, double actual, double digits) =>
        Assert.True(Math.Abs(actual - certified) <= Math.Abs(certified) * Math.Pow(10, -digits), $"{actual:R} is not {certified:R} to {digits} digits");

    // The last three data sets are not exact in binary: 0.1 beside ten million keeps about nine digits, whatever the algorithm.
    [Theory]
    [InlineData("Michelso", 100, 299.852400000000, 0.0790105478190518, 0.535199668621283, 13)]
    [InlineData("Mavro", 50, 2.00185600000000, 0.000429123454003053, 0.937989183438248, 12)]
    [InlineData("Lew", 200, -177.435000000000, 277.332168044316, -0.307304800605679, 14)]
    [InlineData("Lottery", 218, 518.958715596330, 291.699727470969, -0.120948622967393, 14)]
    [InlineData("NumAcc1", 3, 10000002, 1, -0.5, 14)]
    [InlineData("NumAcc2", 1001, 1.2, 0.1, -0.999, 13)]
    [InlineData("NumAcc3", 1001, 1000000.2, 0.1, -0.999, 9)]
    [InlineData("NumAcc4", 1001, 10000000.2, 0.1, -0.999, 8)]
    public void Mean_deviation_and_autocorrelation(string name, int count, double mean, double deviation, double lag1, double digits)
    {
        var values = NistData.Column(name);
        Assert.Equal(count, values.Length);
        Agrees(mean, Descriptive.Mean(values), 14);
        Agrees(deviation, Descriptive.StandardDeviation(values), digits);
        Agrees(lag1, Descriptive.Lag1Autocorrelation(values), Math.Min(digits, 13));
    }

    [Fact]
    public void Norris_line()
    {
        var line = LeastSquares.Line(NistData.Column("Norris", 1), NistData.Column("Norris"));
        Assert.Equal(36, line.Points);
        Agrees(-0.262323073774029, line.Coefficients[0], 12);
        Agrees(1.00211681802045, line.Coefficients[1], 12);
        Agrees(0.232818234301152, line.StandardErrors[0], 12);
        Agrees(0.429796848199937E-03, line.StandardErrors[1], 12);
        Agrees(0.884796396144373, line.ResidualStandardDeviation, 12);
        Agrees(0.999993745883712, line.RSquared, 14);
        Agrees(5436385.54079785, line.F, 12);
    }

    [Fact]
    public void Pontius_parabola()
    {
        var x = NistData.Column("Pontius", 1);
        var fit = LeastSquares.Fit([x, [.. x.Select(v => v * v)]], NistData.Column("Pontius"), withIntercept: true);
        Agrees(0.673565789473684E-03, fit.Coefficients[0], 11);
        Agrees(0.732059160401003E-06, fit.Coefficients[1], 12);
        Agrees(-0.316081871345029E-14, fit.Coefficients[2], 11);
        Agrees(0.107938612033077E-03, fit.StandardErrors[0], 11);
        Agrees(0.157817399981659E-09, fit.StandardErrors[1], 11);
        Agrees(0.486652849992036E-16, fit.StandardErrors[2], 11);
        Agrees(0.205177424076185E-03, fit.ResidualStandardDeviation, 11);
        Agrees(0.999999900178537, fit.RSquared, 14);
    }

    [Theory]
    [InlineData("NoInt1", 2.07438016528926, 0.165289256198347E-01, 3.56753034006338, 0.999365492298663)]
    [InlineData("NoInt2", 0.727272727272727, 0.420827318078432E-01, 0.369274472937998, 0.993348115299335)]
    public void Line_through_the_origin(string name, double slope, double error, double deviation, double rSquared)
    {
        var line = LeastSquares.ThroughOrigin(NistData.Column(name, 1), NistData.Column(name));
        Agrees(slope, Assert.Single(line.Coefficients), 14);
        Agrees(error, Assert.Single(line.StandardErrors), 13);
        Agrees(deviation, line.ResidualStandardDeviation, 13);
        Agrees(rSquared, line.RSquared, 14);
    }

    // Columns that almost depend on each other: NIST calls it of a higher level of difficulty.
    [Fact]
    public void Longley_with_six_columns()
    {
        double[] certified = [-3482258.63459582, 15.0618722713733, -0.358191792925910E-01, -2.02022980381683, -1.03322686717359, -0.511041056535807E-01, 1829.15146461355];
        double[] errors = [890420.383607373, 84.9149257747669, 0.334910077722432E-01, 0.488399681651699, 0.214274163161675, 0.226073200069370, 455.478499142212];
        var columns = Enumerable.Range(1, 6).Select(c => (IReadOnlyList<double>)NistData.Column("Longley", c)).ToArray();
        var fit = LeastSquares.Fit(columns, NistData.Column("Longley"), withIntercept: true);
        Assert.All(certified.Zip(fit.Coefficients), p => Agrees(p.First, p.Second, 10));
        Assert.All(errors.Zip(fit.StandardErrors), p => Agrees(p.First, p.Second, 10));
        Agrees(304.854073561965, fit.ResidualStandardDeviation, 12);
        Agrees(0.995479004577296, fit.RSquared, 13);
        Agrees(330.285339234588, fit.F, 12);
    }

    // Groups are the columns. AtmWtAgt has seven leading digits in common, so some ten digits are lost before any algorithm starts.
    [Theory]
    [InlineData("SiRstvt", 5.11462616E-02, 2.16636560E-01, 1.18046237440255, 1.90999039051129E-01, 1.04076068334656E-01, 12)]
    [InlineData("AtmWtAgt", 3.63834187500000E-09, 1.04951729166667E-08, 1.59467335677930E+01, 2.57426544538321E-01, 1.51048314446410E-05, 8)]
    public void One_way_analysis_of_variance(string name, double between, double within, double f, double rSquared, double deviation, double digits)
    {
        var rows = NistData.Rows(name);
        var anova = OneWayAnova.Of([.. Enumerable.Range(0, rows[0].Length).Select(c => (IReadOnlyList<double>)[.. rows.Select(r => r[c])])]);
        Agrees(between, anova.SumOfSquaresBetween, digits);
        Agrees(within, anova.SumOfSquaresWithin, digits);
        Agrees(f, anova.F, digits);
        Agrees(rSquared, anova.RSquared, digits);
        Agrees(deviation, anova.ResidualStandardDeviation, digits);
    }
}
