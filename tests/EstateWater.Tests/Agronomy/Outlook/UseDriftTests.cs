using EstateWater.Agronomy.Outlook;
using MathNet.Numerics.Statistics;

namespace EstateWater.Tests.Agronomy.Outlook;

public sealed class UseDriftTests
{
    private const int Members = 40000;

    // Fourth knot and sixth, counted from the first day of a season: days 80 + 12 · 3 and 80 + 12 · 5.
    private const int FourthKnotDay = 116;
    private const int SixthKnotDay = 140;

    // Uhlenbeck & Ornstein (1930): a stationary process keeps its variance, and its correlation falls as exp(−t ∕ τ).
    [Fact]
    public void Spread_stays_and_correlation_fades_as_the_process_has_them()
    {
        // Small numbers, so that the floor under a factor is out of reach.
        var drift = UseDrift.Of(Unknowns(scale: 0.1));
        var (earlier, later) = (drift.On(FourthKnotDay)!.Value.Earlier, drift.On(SixthKnotDay)!.Value.Earlier);
        Assert.Equal(0.1 * UseDrift.SpreadShare, earlier.StandardDeviation(), 0.001);
        Assert.Equal(0.1 * UseDrift.SpreadShare, later.StandardDeviation(), 0.001);
        Assert.Equal(Math.Exp(-24 / UseDrift.DaysToFade), Correlation.Pearson(earlier, later), 0.015);
    }

    [Fact]
    public void Use_never_stops_and_days_between_knots_lie_between_them()
    {
        var drift = UseDrift.Of(Unknowns(scale: 10));
        var (earlier, later, share) = drift.On(FourthKnotDay + 3)!.Value;
        Assert.Equal(0.25, share, 12);
        Assert.All(earlier.Concat(later), factor => Assert.True(factor >= 0.2));
        Assert.Equal(0, drift.On(0)!.Value.LaterShare);
        Assert.Equal(1, drift.On(400)!.Value.LaterShare);
    }

    [Fact]
    public void A_season_long_past_has_none() => Assert.Null(UseDrift.None.On(FourthKnotDay));

    private static double[][] Unknowns(double scale)
    {
        var numbers = new NormalNumbers("drift");
        return [.. Enumerable.Range(0, EstateWater.Agronomy.Outlook.Unknowns.Count).Select(_ => Enumerable.Range(0, Members).Select(_ => scale * numbers.Next()).ToArray())];
    }
}
