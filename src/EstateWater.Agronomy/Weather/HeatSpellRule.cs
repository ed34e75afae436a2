using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>What counts as a heat spell. Every number can be set; the defaults are ours, put together from the sources named.</summary>
/// <remarks>
/// <para>A fixed threshold carries the vine's physiology; the station's own percentile keeps a hot place from being in a spell all summer.
/// Three days follow CTX90pct (Perkins &amp; Alexander 2013, J. Climate 26: 4500–4517) and hot events (Collins et al. 2000, Aust. Met. Mag. 49).</para>
/// <para>35 °C: photosynthesis falls and stomata close in many cultivars; common practice, to be checked for the cultivar. 40 °C: Greer &amp;
/// Weedon (2013), Front. Plant Sci. 4: 491.</para>
/// </remarks>
public sealed record HeatSpellRule
{
    /// <summary>The rule as shipped.</summary>
    public static HeatSpellRule Default { get; } = new();

    /// <summary>A day is hot at or above this, 20 to 55. [°C]</summary>
    public double ThresholdC { get; init => field = Require.InRange(value, 20, 55, "°C", nameof(ThresholdC)); } = 35;

    /// <summary>And at or above this percentile of the station's own days, 50 to 99; null for off.</summary>
    public double? Percentile { get; init => field = value is { } p ? Require.InRange(p, 50, 99, "%", nameof(Percentile)) : null; } = 90;

    /// <summary>Days either side of the calendar day that the percentile pools, 0 to 45. [d]</summary>
    public int PercentileHalfWindowDays { get; init => field = (int)Require.InRange(value, 0, 45, "d", nameof(PercentileHalfWindowDays)); } = 7;

    /// <summary>Years of record below which the percentile is off, 1 to 100.</summary>
    public int PercentileMinYears { get; init => field = (int)Require.InRange(value, 1, 100, "years", nameof(PercentileMinYears)); } = 5;

    /// <summary>Hot days that make a spell, 1 to 30. [d]</summary>
    public int MinDays { get; init => field = (int)Require.InRange(value, 1, 30, "d", nameof(MinDays)); } = 3;

    /// <summary>Cooler days, known to be so, that do not end a spell, 0 to 3. [d]</summary>
    public int BridgeGapDays { get; init => field = (int)Require.InRange(value, 0, 3, "d", nameof(BridgeGapDays)); }

    /// <summary>Severe with <see cref="SevereDays"/> days at or above this, 20 to 55. [°C]</summary>
    public double SevereC { get; init => field = Require.InRange(value, 20, 55, "°C", nameof(SevereC)); } = 38;

    /// <summary>Days at or above <see cref="SevereC"/> that make it severe, 1 to 30. [d]</summary>
    public int SevereDays { get; init => field = (int)Require.InRange(value, 1, 30, "d", nameof(SevereDays)); } = 2;

    /// <summary>Severe with a single day at or above this, 20 to 60. [°C]</summary>
    public double ExtremeC { get; init => field = Require.InRange(value, 20, 60, "°C", nameof(ExtremeC)); } = 40;
}
