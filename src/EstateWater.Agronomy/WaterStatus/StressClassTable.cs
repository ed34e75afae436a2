using System.Collections.Frozen;
using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>A table that sorts tension into five classes, for each measure on its own scale. Make another with the constructor to edit it.</summary>
/// <remarks>A tension equal to a limit belongs to the wetter class.</remarks>
[Method(
    "Stress classes by leaf, stem and predawn water potential",
    Source = "van Leeuwen et al. (2009), J. Int. Sci. Vigne Vin 43:121–134, Table 1 (from memory, to be checked); Lategan (2011) in Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 171, Table 6.4; the trade's words for leaf tension: common practice, no published source",
    Check = "Every class of each table, and that a limit belongs to the wetter class")]
public sealed class StressClassTable
{
    /// <summary>Number of classes in every table.</summary>
    public const int Classes = 5;

    /// <summary>Slack at a limit, so that 11 bar entered as bar and as MPa fall into one class. [MPa]</summary>
    private const double RoundingMpa = 1e-9;

    private static readonly string[] VanLeeuwenWords = ["none", "weak", "moderate to weak", "moderate to severe", "severe"];
    private static readonly string[] LateganWords = ["none", "low", "moderate", "high", "severe"];
    private static readonly string[] TradeWords = ["none", "low", "moderate", "high", "very high"];

    private readonly FrozenDictionary<WaterPotentialMeasure, double[]> limits;

    /// <summary>Makes a table.</summary>
    /// <param name="name">Short name.</param>
    /// <param name="source">Where the limits come from, and how sure that is.</param>
    /// <param name="words">Five, from the wettest class to the driest.</param>
    /// <param name="limitsMpa">For each measure the four tensions between the classes, rising, above 0. [MPa, positive]</param>
    /// <exception cref="ArgumentOutOfRangeException">Not five words, not four limits, or limits that do not rise.</exception>
    public StressClassTable(
        string name,
        string source,
        IReadOnlyList<string> words,
        IReadOnlyDictionary<WaterPotentialMeasure, IReadOnlyList<double>> limitsMpa)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(limitsMpa);
        Require.InRange(words.Count, Classes, Classes, "words", nameof(words));
        foreach (var (_, rising) in limitsMpa)
        {
            Require.Values(rising, Classes - 1, nameof(limitsMpa));
            Require.InRange(rising.Count, Classes - 1, Classes - 1, "limits", nameof(limitsMpa));
            for (var i = 0; i < rising.Count; i++)
            {
                Require.Above(rising[i], i == 0 ? 0 : rising[i - 1], "MPa (limits rise)", nameof(limitsMpa));
            }
        }

        Name = name;
        Source = source;
        Words = [.. words];
        limits = limitsMpa.ToFrozenDictionary(p => p.Key, p => p.Value.ToArray());
    }

    /// <summary>The table that the program uses unless another is chosen.</summary>
    public static StressClassTable Default => VanLeeuwen2009;

    /// <summary>Van Leeuwen et al. (2009), leaf, stem and predawn.</summary>
    /// <remarks>J. Int. Sci. Vigne Vin 43:121–134, Table 1. From memory, to be checked; editable.</remarks>
    public static StressClassTable VanLeeuwen2009 { get; } = new(
        "van Leeuwen et al. 2009",
        "van Leeuwen, Trégoat, Choné, Bois, Pernet & Gaudillère 2009, J. Int. Sci. Vigne Vin 43:121–134, Table 1 (from memory, to be checked)",
        VanLeeuwenWords,
        new Dictionary<WaterPotentialMeasure, IReadOnlyList<double>>
        {
            [WaterPotentialMeasure.Stem] = [0.6, 0.9, 1.1, 1.4],
            [WaterPotentialMeasure.Leaf] = [0.9, 1.1, 1.3, 1.4],
            [WaterPotentialMeasure.Predawn] = [0.2, 0.3, 0.5, 0.8],
        });

    /// <summary>Lategan (2011), Shiraz in a warm climate, leaf and stem.</summary>
    /// <remarks>In Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 171, Table 6.4.</remarks>
    public static StressClassTable Lategan2011 { get; } = new(
        "Lategan 2011 (Shiraz, warm climate)",
        "Lategan 2011, in Myburgh 2018, Handbook for Irrigation of Wine Grapes in South Africa, p. 171, Table 6.4",
        LateganWords,
        new Dictionary<WaterPotentialMeasure, IReadOnlyList<double>>
        {
            [WaterPotentialMeasure.Stem] = [0.45, 1.1, 1.65, 1.9],
            [WaterPotentialMeasure.Leaf] = [1.2, 1.75, 1.95, 2.1],
        });

    /// <summary>The trade's words for midday leaf tension: 7–8 bar low and early, 10–12 moderate, 14 high, 16–18 very high.</summary>
    /// <remarks>Common practice, no published source. The limits lie midway between the named tensions; the one below "low" is ours.</remarks>
    public static StressClassTable TradeLeaf { get; } = new(
        "trade words, midday leaf",
        "common practice, no published source; limits midway between the named tensions",
        TradeWords,
        new Dictionary<WaterPotentialMeasure, IReadOnlyList<double>>
        {
            [WaterPotentialMeasure.Leaf] = [0.6, 0.9, 1.3, 1.5],
        });

    /// <summary>The tables that ship, the default first.</summary>
    public static IReadOnlyList<StressClassTable> All { get; } = [VanLeeuwen2009, Lategan2011, TradeLeaf];

    /// <summary>Short name.</summary>
    public string Name { get; }

    /// <summary>Where the limits come from, and how sure that is.</summary>
    public string Source { get; }

    /// <summary>The words, from the wettest class to the driest.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>Measures that the table knows.</summary>
    public IReadOnlyCollection<WaterPotentialMeasure> Measures => limits.Keys;

    /// <summary>The four tensions between the classes of a measure, rising. [MPa, positive]</summary>
    /// <param name="measure">One of <see cref="Measures"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The table does not know the measure.</exception>
    public IReadOnlyList<double> LimitsMpa(WaterPotentialMeasure measure) =>
        limits.TryGetValue(measure, out var found)
            ? found
            : throw new ArgumentOutOfRangeException(nameof(measure), measure, $"The table \"{Name}\" knows {string.Join(", ", limits.Keys.Order())}.");

    /// <summary>The class of a tension.</summary>
    /// <param name="measure">One of <see cref="Measures"/>.</param>
    /// <param name="tensionMpa">0 to 10. [MPa, positive]</param>
    /// <exception cref="ArgumentOutOfRangeException">The tension is outside its range, or the table does not know the measure.</exception>
    public StressClass Classify(WaterPotentialMeasure measure, double tensionMpa)
    {
        Require.InRange(tensionMpa, 0, 10, "MPa of tension");
        var level = LimitsMpa(measure).Count(limit => tensionMpa > limit + RoundingMpa);
        return new StressClass(level, Words[level]);
    }

    /// <summary>The class of a tension in bar.</summary>
    /// <param name="measure">One of <see cref="Measures"/>.</param>
    /// <param name="tensionBar">0 to 100. [bar, positive]</param>
    /// <exception cref="ArgumentOutOfRangeException">The tension is outside its range, or the table does not know the measure.</exception>
    public StressClass ClassifyBar(WaterPotentialMeasure measure, double tensionBar) =>
        Classify(measure, Require.InRange(tensionBar, 0, 100, "bar of tension") / 10);
}
