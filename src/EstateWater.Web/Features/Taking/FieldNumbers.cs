using System.Text.Json;
using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Rounds;

namespace EstateWater.Web.Features.Taking;

/// <summary>The numbers with which the phone computes what the server would: limits of the checks and Student's t.</summary>
/// <param name="HalfWidthBar">Half-width wanted. [bar]</param>
/// <param name="T">Student's t at 95 %, by degrees of freedom from 1.</param>
/// <param name="FewestLeaves">Of a set.</param>
/// <param name="MostLeaves">That a round asks for.</param>
/// <param name="OutlierZ">Limit of the modified z score.</param>
/// <param name="SmallestSpreadBar">Smallest usual spread: a leaf within so many of it is no outlier. [bar]</param>
/// <param name="Plausible">Lowest and highest usual tension by measure. [bar]</param>
public sealed record FieldNumbers(
    double HalfWidthBar,
    IReadOnlyList<double> T,
    int FewestLeaves,
    int MostLeaves,
    double OutlierZ,
    double SmallestSpreadBar,
    IReadOnlyDictionary<string, double[]> Plausible)
{
    /// <summary>As JSON that the page's script reads.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, JsonSerializerOptions.Web);

    /// <summary>The numbers for a wanted precision.</summary>
    public static FieldNumbers For(RoundSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return new FieldNumbers(
            settings.HalfWidthBar,
            [.. Enumerable.Range(1, ReadingMessage.MostLeaves).Select(df => Math.Round(Descriptive.StudentT(df), 6))],
            ReadingSetRules.Default.FewestLeaves,
            UsualLeaves.Most,
            Outliers.ModifiedZLimit,
            ReadingSetStatistics.SmallestUsualSpreadMpa * Conversions.BarPerMegapascal,
            Enum.GetValues<WaterPotentialMeasure>().ToDictionary(m => m.ToString().ToLowerInvariant(), PlausibleBar));
    }

    private static double[] PlausibleBar(WaterPotentialMeasure measure)
    {
        var (low, high) = ReadingSetRules.PlausibleRange(measure);
        return [low * Conversions.BarPerMegapascal, high * Conversions.BarPerMegapascal];
    }
}
