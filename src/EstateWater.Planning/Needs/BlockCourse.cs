using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Needs;

/// <summary>A fitted block's coming days against the tension wanted of it, for any water put on.</summary>
internal sealed class BlockCourse
{
    // A chance of passing the ceiling that a manager accepts: one in seven within the week, three in ten beyond,
    // where next week's readings still come first. Ours.
    private const int DaysBeforeNextRound = 7;
    private const double AcceptedSoon = 0.15;
    private const double AcceptedLater = 0.3;

    // In a heat spell shut-down leaves and shrivel cost the most, and no water comes in time any more. Ours.
    private const double AcceptedInHeat = 0.15;
    private const double HeatWeight = 4;

    // What a day past the ceiling costs beside its chance, by its depth and the square of it, for shrivel grows faster
    // than the tension; what a day under the floor costs, and how much more the deeper it lies. Ours: shut-down leaves
    // weigh about twice as much as soft growth.
    private const double DepthCostPerMpa = 2;
    private const double DepthCostPerMpa2 = 8;
    private const double UnderFloorCost = 0.4;
    private const double UnderFloorCostPerMpa = 1.5;

    private readonly BlockOutlook outlook;
    private readonly WeatherAhead weather;
    private readonly int days;
    private readonly double[] shadedFraction;
    private readonly IReadOnlyList<bool> inHeat;

    public BlockCourse(BlockState state, FittedBlock fitted, WeatherAhead weather, IReadOnlyList<bool> inHeat, DateOnly today, int days)
    {
        this.inHeat = inHeat;
        State = state;
        Fitted = fitted;
        this.days = days;
        this.weather = weather;
        Limits = DayLimits.Of(state.Block, state.Stages, today, days);
        WeightsWhenShort = [.. Limits.IsPicked.Select(WaterPrice.WeightWhenShort)];
        shadedFraction = state.ShadedAhead(today, weather.Days);
        outlook = new BlockOutlook(fitted, weather, Limits.Measure, shadedFraction);
        Unwatered = outlook.Tensions(new double[days]);
    }

    public BlockState State { get; }

    public FittedBlock Fitted { get; }

    public DayLimits Limits { get; }

    /// <summary>Tension by day, then member, if nothing more is applied. [MPa]</summary>
    public double[][] Unwatered { get; }

    /// <summary>What each day counts when water is short this season.</summary>
    public double[] WeightsWhenShort { get; }

    /// <summary>Water over the block in one hour, as its valve now delivers. [mm/h]</summary>
    public double RateMmPerH => ValveWater.RateMmPerH(State.Block) * State.Valve.ExpectedShare;

    /// <summary>Tension by day, then member, with quarter hours by day of water. [MPa]</summary>
    public double[][] Watered(IReadOnlyList<int> quartersByDay) =>
        outlook.Tensions(AppliedMm(quartersByDay));

    /// <summary>For asking after many waterings that differ little.</summary>
    public OutlookTrials Trials() => outlook.Trials();

    /// <summary>Depth of quarter hours of water, by day. [mm]</summary>
    public double[] AppliedMm(IReadOnlyList<int> quartersByDay) => [.. quartersByDay.Select(q => q / 4.0 * RateMmPerH)];

    /// <summary>Tension by day, then member, in any measure for depths of water by day. [MPa]</summary>
    public double[][] Expect(WaterPotentialMeasure measure, IReadOnlyList<double> appliedMm) =>
        (measure == Limits.Measure ? outlook : new BlockOutlook(Fitted, weather, measure, shadedFraction)).Tensions(appliedMm);

    /// <summary>First day ahead on which the chance of passing the ceiling without water is more than accepted; null when there is none.</summary>
    public int? FirstTrouble()
    {
        for (var day = 1; day < days; day++)
        {
            if (Limits.HasLeaves[day] && IsTrouble(Unwatered[day], Limits.CeilingMpa[day], day, inHeat[day]))
            {
                return day;
            }
        }

        return null;
    }

    /// <summary>What a course costs: chances beyond the accepted ones, depth past the ceiling, days under the floor after fruit set.</summary>
    /// <param name="tensionsMpa">By day, then member. [MPa]</param>
    /// <param name="dayWeights">What each day counts; null: all alike.</param>
    /// <remarks>Today counts for nothing: no water reaches the roots before today's solar noon.</remarks>
    public double Cost(double[][] tensionsMpa, double[]? dayWeights = null)
    {
        var under = 0.0;
        for (var day = 1; day < days; day++)
        {
            if (Limits.FloorCounts[day])
            {
                under += TroubleUnder(tensionsMpa[day], Limits.FloorMpa[day]) * (dayWeights?[day] ?? 1);
            }
        }

        return TroubleAbove(tensionsMpa, dayWeights) + under;
    }

    /// <summary>What a course costs version by version, every chance counted whole: what is accepted belongs to all versions together.</summary>
    /// <param name="tensionsMpa">By day, then member. [MPa]</param>
    public double[] CostByMember(double[][] tensionsMpa)
    {
        var costs = new double[tensionsMpa[0].Length];
        for (var day = 1; day < days; day++)
        {
            for (var m = 0; m < costs.Length; m++)
            {
                var tension = tensionsMpa[day][m];
                costs[m] += Limits.HasLeaves[day] && tension > Limits.CeilingMpa[day]
                    ? (inHeat[day] ? HeatWeight : 1) * (1 + DepthCost(tension - Limits.CeilingMpa[day]))
                    : Limits.FloorCounts[day] && tension < Limits.FloorMpa[day] ? UnderFloorCost + (UnderFloorCostPerMpa * (Limits.FloorMpa[day] - tension)) : 0;
            }
        }

        return costs;
    }

    /// <summary>The part of <see cref="Cost"/> that lies past the ceiling.</summary>
    public double TroubleAbove(double[][] tensionsMpa, double[]? dayWeights = null)
    {
        var trouble = 0.0;
        for (var day = 1; day < days; day++)
        {
            trouble += Limits.HasLeaves[day] ? TroubleAbove(tensionsMpa[day], Limits.CeilingMpa[day], day, inHeat[day]) * (dayWeights?[day] ?? 1) : 0;
        }

        return trouble;
    }

    /// <summary>What one day costs past its ceiling: the chance beyond the accepted one, and the depth.</summary>
    /// <param name="tensionsMpa">By member. [MPa]</param>
    /// <param name="ceilingMpa">[MPa]</param>
    /// <param name="daysAhead">After the day that decides.</param>
    /// <param name="inHeat">Whether the day lies in a heat spell.</param>
    public static double TroubleAbove(double[] tensionsMpa, double ceilingMpa, int daysAhead, bool inHeat)
    {
        var past = 0;
        var depth = 0.0;
        foreach (var tension in tensionsMpa)
        {
            if (tension > ceilingMpa)
            {
                past++;
                depth += DepthCost(tension - ceilingMpa);
            }
        }

        double members = tensionsMpa.Length;
        return (inHeat ? HeatWeight : 1) * (Math.Max(0, (past / members) - Accepted(daysAhead, inHeat)) + (depth / members));
    }

    /// <summary>Whether a day passes its ceiling more likely than is accepted.</summary>
    public static bool IsTrouble(double[] tensionsMpa, double ceilingMpa, int daysAhead, bool inHeat) => ChancePast(tensionsMpa, ceilingMpa) > Accepted(daysAhead, inHeat);

    public static double ChancePast(double[] tensionsMpa, double ceilingMpa) => tensionsMpa.Count(t => t > ceilingMpa) / (double)tensionsMpa.Length;

    /// <summary>What one day costs under its floor.</summary>
    public static double TroubleUnder(double[] tensionsMpa, double floorMpa)
    {
        var trouble = 0.0;
        foreach (var tension in tensionsMpa)
        {
            trouble += tension < floorMpa ? UnderFloorCost + (UnderFloorCostPerMpa * (floorMpa - tension)) : 0;
        }

        return trouble / tensionsMpa.Length;
    }

    private static double DepthCost(double overMpa) => overMpa * (DepthCostPerMpa + (DepthCostPerMpa2 * overMpa));

    private static double Accepted(int day, bool inHeat) => inHeat ? AcceptedInHeat : day <= DaysBeforeNextRound ? AcceptedSoon : AcceptedLater;
}
