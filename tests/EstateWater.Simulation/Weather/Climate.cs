namespace EstateWater.Simulation.Weather;

/// <summary>A dry-summer climate, as yearly courses that peak in high summer and bottom in mid-winter.</summary>
public sealed record Climate
{
    public double MeanTMaxC { get; init; } = 23.5;

    public double SwingTMaxC { get; init; } = 8.5;

    public double MeanTMinC { get; init; } = 9.5;

    public double SwingTMinC { get; init; } = 5.0;

    public double YearRainMm { get; init; } = 620;

    public double SummerWindMPerS { get; init; } = 2.2;

    /// <summary>Chance that a heat spell starts on a day of high summer.</summary>
    public double HeatSpellChance { get; init; } = 0.035;

    /// <summary>-1 in mid-winter, 1 in high summer, three weeks after the solstice.</summary>
    public static double Warmth(DateOnly date, bool southern) =>
        Math.Cos(2 * Math.PI * (date.DayOfYear - (southern ? 15 : 200)) / 365.25);

    /// <summary>The maximum usual on a day. [°C]</summary>
    public double UsualTMaxC(DateOnly date, bool southern) => MeanTMaxC + (SwingTMaxC * Warmth(date, southern));

    /// <summary>The minimum usual on a day. [°C]</summary>
    public double UsualTMinC(DateOnly date, bool southern) => MeanTMinC + (SwingTMinC * Warmth(date, southern));

    /// <summary>Share of days with rain.</summary>
    public static double WetShare(DateOnly date, bool southern) => 0.19 - (0.16 * Warmth(date, southern));
}

/// <summary>Clear, dry days whose maxima are set instead of drawn: a heat spell, or a calm before one.</summary>
/// <param name="FirstDay">Its first day.</param>
/// <param name="Days">How many days.</param>
/// <param name="PeakTMaxC">Maximum of its hottest day. [°C]</param>
public sealed record SetSpell(DateOnly FirstDay, int Days, double PeakTMaxC);
