using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>Many possible root zones of one block, one value a set in each list.</summary>
/// <remarks>Values lie side by side by kind, not by set, so that several sets are computed at once.</remarks>
public sealed class RootZoneParameterSets
{
    private readonly double[] total;
    private readonly double[] fraction;
    private readonly double[] wetted;
    private readonly double[] salt;
    private readonly double[] useFactor;
    private readonly double[] start;

    /// <summary>Makes room for sets, each as the shipped settings have it: nothing missing when the season starts.</summary>
    /// <param name="count">At least 1.</param>
    /// <param name="totalAvailableWaterMm">Of every set to begin with, above 0. [mm]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public RootZoneParameterSets(int count, double totalAvailableWaterMm)
    {
        Require.AtLeast(count, 1, "sets");
        Require.Above(totalAvailableWaterMm, 0, "mm");
        Count = count;
        total = Filled(totalAvailableWaterMm);
        fraction = Filled(RootZone.WineGrapeDepletionFraction);
        wetted = Filled(1);
        salt = Filled(1);
        useFactor = Filled(1);
        start = new double[count];
    }

    /// <summary>Number of sets.</summary>
    public int Count { get; }

    /// <summary>Whether the depletion fraction follows the day's crop ET.</summary>
    public bool AdjustDepletionFraction { get; init; } = true;

    /// <summary>When in the day rain and irrigation count.</summary>
    public WaterEventTiming EventTiming { get; init; }

    /// <summary>Total available water, above 0. [mm]</summary>
    public Span<double> TotalAvailableWaterMm => total;

    /// <summary>Share of it used before stress at 5 mm a day, 0–0.999. [–]</summary>
    public Span<double> DepletionFraction => fraction;

    /// <summary>Share of the root zone that irrigation wets, 0.01–1. [–]</summary>
    public Span<double> WettedFraction => wetted;

    /// <summary>Stress by salt, 0–1. [–]</summary>
    public Span<double> SaltStressCoefficient => salt;

    /// <summary>Multiplies the day's crop coefficient, 0–10. [–]</summary>
    public Span<double> CropCoefficientFactor => useFactor;

    /// <summary>Depletion when the season starts, even over the root zone, 0 to the total. [mm]</summary>
    public Span<double> StartDepletionMm => start;

    /// <summary>One set as the daily balance takes it.</summary>
    /// <param name="set">From 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such set, or a value of it outside its range.</exception>
    public RootZoneSettings Settings(int set)
    {
        Require.InRange(set, 0, Count - 1, "(number of the set)");
        return new RootZoneSettings
        {
            TotalAvailableWaterMm = total[set],
            DepletionFraction = fraction[set],
            AdjustDepletionFraction = AdjustDepletionFraction,
            WettedFraction = wetted[set],
            EventTiming = EventTiming,
            SaltStressCoefficient = salt[set],
        };
    }

    internal void Validate()
    {
        for (var set = 0; set < Count; set++)
        {
            Settings(set).Even(start[set]);
            Require.InRange(useFactor[set], 0, 10, "(factor)", nameof(CropCoefficientFactor));
        }
    }

    private double[] Filled(double value)
    {
        var values = new double[Count];
        Array.Fill(values, value);
        return values;
    }
}
