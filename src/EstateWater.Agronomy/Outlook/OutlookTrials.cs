namespace EstateWater.Agronomy.Outlook;

/// <summary>A block's coming days under one watering after the other: only the days after the first that differs from the last watering are lived again.</summary>
/// <remarks>For one thread.</remarks>
public sealed class OutlookTrials
{
    private readonly WeatherAhead weather;
    private readonly IReadOnlyList<double> shadedFraction;
    private readonly Action<RootZoneEnsemble, int, double[]> read;
    private readonly RootZoneEnsemble[] mornings;
    private readonly double[][] tensionsMpa;
    private readonly double[] lastMm;
    private int daysLived;

    internal OutlookTrials(RootZoneEnsemble today, WeatherAhead weather, IReadOnlyList<double> shadedFraction, Action<RootZoneEnsemble, int, double[]> read)
    {
        this.weather = weather;
        this.shadedFraction = shadedFraction;
        this.read = read;
        mornings = [.. Enumerable.Range(0, weather.Days).Select(_ => today.Branch())];
        tensionsMpa = [.. mornings.Select(m => new double[m.Members])];
        lastMm = new double[weather.Days];
    }

    /// <summary>As <see cref="BlockOutlook.Tensions"/>; the arrays hold until the next call.</summary>
    /// <param name="appliedMm">By day ahead: water of the evening of that day over the block's area. [mm]</param>
    public double[][] Tensions(IReadOnlyList<double> appliedMm)
    {
        for (var day = FirstNew(appliedMm); day < weather.Days; day++)
        {
            if (day > 0)
            {
                mornings[day].CopyWater(mornings[day - 1]);
                mornings[day].Step(weather.Et0Mm[day - 1], weather.RainMm[day - 1], appliedMm[day - 1], shadedFraction[day - 1]);
                lastMm[day - 1] = appliedMm[day - 1];
            }

            mornings[day].Look();
            read(mornings[day], day, tensionsMpa[day]);
            daysLived = day + 1;
        }

        return tensionsMpa;
    }

    // The morning after the first watering that differs; the last evening's shows on no morning.
    private int FirstNew(IReadOnlyList<double> appliedMm)
    {
        var day = 1;
        while (day < daysLived && appliedMm[day - 1] == lastMm[day - 1])
        {
            day++;
        }

        return daysLived == 0 ? 0 : day;
    }
}
