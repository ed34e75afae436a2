using System.Globalization;
using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Phenology;

/// <summary>How well a published value is known to us.</summary>
public enum SourceAgreement
{
    /// <summary>Several sources quote the same number.</summary>
    Several,

    /// <summary>One source was seen.</summary>
    One,

    /// <summary>Sources disagree; the other number is in the source text.</summary>
    Disagree,

    /// <summary>Taken from other varieties, for want of a value.</summary>
    Fallback,
}

/// <summary>Thermal time that a variety needs to flower and to change colour. Defaults to be replaced by what an estate finds.</summary>
/// <param name="Variety">Name.</param>
/// <param name="FloweringCd">F* of 50 % flowering, 800 to 2000. [°C·d]</param>
/// <param name="VeraisonCd">F* of 50 % veraison, 1800 to 3600. [°C·d]</param>
/// <param name="Agreement">How well the numbers are known.</param>
/// <param name="Source">Where they were read.</param>
public sealed record VarietyHeatNeeds(string Variety, double FloweringCd, double VeraisonCd, SourceAgreement Agreement, string Source)
{
    private const string Parker = "Parker et al. (2013), Agric. For. Meteorol. 180: 249–264, as quoted by one public research script; to be checked";
    private const string ParkerSeveral = "Parker et al. (2013), Agric. For. Meteorol. 180: 249–264, as quoted by several public sources";

    /// <summary>Varieties with both values known.</summary>
    public static IReadOnlyList<VarietyHeatNeeds> Defaults { get; } =
    [
        new("Chardonnay", 1217, 2547, SourceAgreement.Several, ParkerSeveral),
        new("Pinot noir", 1219, 2511, SourceAgreement.Several, ParkerSeveral),
        new("Merlot", 1266, 2627, SourceAgreement.One, Parker),
        new("Cabernet Sauvignon", 1270, 2641, SourceAgreement.One, Parker),
        new("Cabernet franc", 1225, 2655, SourceAgreement.One, Parker),
        new("Syrah", 1277, 2598, SourceAgreement.One, Parker),
        new("Shiraz", 1277, 2598, SourceAgreement.One, Parker + " (as Syrah)"),
        new("Grenache", 1269, 2750, SourceAgreement.One, Parker),
        new("Riesling", 1242, 2584, SourceAgreement.One, Parker),
        new("Chasselas", 1274, 2342, SourceAgreement.One, Parker),
        new("Aligoté", 1227, 2502, SourceAgreement.One, Parker),
        new("Pinot meunier", 1120, 2379, SourceAgreement.One, Parker),
        new("Ugni blanc", 1376, 2777, SourceAgreement.One, Parker),
        new("Sauvignon blanc", 1282, 2528, SourceAgreement.Disagree, "Parker et al. (2013) as quoted by two sources; a third quotes 1238 and 2517"),
    ];

    /// <summary>For a variety that is not listed: the middle of the list.</summary>
    public static VarietyHeatNeeds AnyVariety { get; } = new(
        string.Empty, 1266, 2584, SourceAgreement.Fallback, "Median of the varieties in Parker et al. (2013); no value for this variety");

    /// <summary>F* of 50 % flowering, 800 to 2000. [°C·d]</summary>
    public double FloweringCd { get; init => field = Flowering(value); } = Flowering(FloweringCd);

    /// <summary>F* of 50 % veraison, 1800 to 3600. [°C·d]</summary>
    public double VeraisonCd { get; init => field = Veraison(value); } = Veraison(VeraisonCd);

    /// <summary>The values of a variety, whatever its case and accents; those of any variety when it is not listed.</summary>
    /// <param name="variety">Name; null when not known.</param>
    /// <param name="known">The estate's own list; null for the defaults.</param>
    public static VarietyHeatNeeds Of(string? variety, IReadOnlyList<VarietyHeatNeeds>? known = null)
    {
        const CompareOptions loosely = CompareOptions.IgnoreCase | CompareOptions.IgnoreNonSpace;
        return (known ?? Defaults).FirstOrDefault(v => CultureInfo.InvariantCulture.CompareInfo.Compare(v.Variety, variety?.Trim(), loosely) == 0)
            ?? AnyVariety;
    }

    private static double Flowering(double value) => Require.InRange(value, 800, 2000, "°C·d", nameof(FloweringCd));

    private static double Veraison(double value) => Require.InRange(value, 1800, 3600, "°C·d", nameof(VeraisonCd));
}
