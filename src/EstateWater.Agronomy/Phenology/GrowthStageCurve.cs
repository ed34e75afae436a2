using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Phenology;

/// <summary>A point of the growth-stage curve.</summary>
/// <param name="ElStage">Modified E-L number, 1 to 47.</param>
/// <param name="ProgressCd">Thermal time since the start of the sum; past harvest-ripe 10 stand for each day. [°C·d]</param>
/// <param name="TypicalDay">Days after the start of the sum in a middling climate. [d]</param>
public sealed record GrowthStagePoint(double ElStage, double ProgressCd, double TypicalDay);

/// <summary>How growth stages follow thermal time, and the calendar where temperature is not known.</summary>
/// <remarks>
/// <para>Full bloom (E-L 23) and veraison (35) stand at the variety's F* of the GFV model. The stages between them, and the typical days, are
/// ours: common practice, no published source, to be replaced by an estate's own dates. Observed stages always stand above the curve.</para>
/// <para>Past harvest-ripe (38) temperature no longer leads: 45 days to the beginning of leaf fall, 30 more to its end.</para>
/// </remarks>
[Method("Growth stage projected from thermal time, corrected by observed stages", Source = "GFV model (Parker et al. 2011, 2013) for full bloom and veraison; spacing of the other stages and typical dates are common practice, no published source", Check = "Passes through observed stages, monotone, both hemispheres, with and without weather")]
public sealed class GrowthStageCurve
{
    /// <summary>Progress of a day past harvest-ripe. [°C·d]</summary>
    public const double PerDayAfterRipe = 10;

    /// <summary>Budburst, as all these a modified Eichhorn–Lorenz number (Coombe 1995).</summary>
    public const double BudburstElStage = 4;

    /// <summary>Setting of the fruit.</summary>
    public const double FruitSetElStage = 27;

    /// <summary>Veraison: berries begin to colour and enlarge.</summary>
    public const double VeraisonElStage = 35;

    /// <summary>The stage past which the calendar leads: harvest-ripe.</summary>
    public const double RipeElStage = 38;

    /// <summary>Beginning of leaf fall.</summary>
    public const double LeafFallElStage = 43;

    private const double RipeAfterVeraisonCd = 800;

    /// <summary>Makes a curve from its points.</summary>
    /// <param name="points">From E-L 1 at progress 0 to E-L 47, rising in all three.</param>
    /// <exception cref="ArgumentException">The points do not start, end or rise as said.</exception>
    public GrowthStageCurve(IReadOnlyList<GrowthStagePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var rising = points.Zip(points.Skip(1)).All(p =>
            p.First.ElStage < p.Second.ElStage && p.First.ProgressCd < p.Second.ProgressCd && p.First.TypicalDay < p.Second.TypicalDay);
        if (points.Count < 2 || !rising || points[0] is not { ElStage: GrowthStages.First, ProgressCd: 0 } || points[^1].ElStage != GrowthStages.Last)
        {
            throw new ArgumentException("Expected points rising from E-L 1 at 0 °C·d to E-L 47.", nameof(points));
        }

        Points = points;
        RipeCd = ProgressAt(RipeElStage);
    }

    /// <summary>The points, rising.</summary>
    public IReadOnlyList<GrowthStagePoint> Points { get; }

    /// <summary>Progress at harvest-ripe. [°C·d]</summary>
    public double RipeCd { get; }

    /// <summary>The curve of a variety.</summary>
    /// <param name="needs">Its thermal requirements.</param>
    public static GrowthStageCurve For(VarietyHeatNeeds needs)
    {
        ArgumentNullException.ThrowIfNull(needs);
        var (bloom, veraison) = (needs.FloweringCd, needs.VeraisonCd);
        var between = veraison - bloom;
        var ripe = veraison + RipeAfterVeraisonCd;
        return new GrowthStageCurve(
        [
            new(1, 0, 0),
            new(4, 0.32 * bloom, 40),
            new(12, 0.58 * bloom, 65),
            new(19, 0.91 * bloom, 92),
            new(23, bloom, 99),
            new(27, bloom + (0.17 * between), 111),
            new(31, bloom + (0.41 * between), 126),
            new(32, bloom + (0.57 * between), 136),
            new(35, veraison, 160),
            new(RipeElStage, ripe, 201),
            new(43, ripe + (45 * PerDayAfterRipe), 246),
            new(47, ripe + (75 * PerDayAfterRipe), 276),
        ]);
    }

    /// <summary>Progress at a stage. [°C·d]</summary>
    /// <param name="elStage">1 to 47.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public double ProgressAt(double elStage) => Interpolate(
        Require.InRange(elStage, GrowthStages.First, GrowthStages.Last, "as modified E-L number"), p => p.ElStage, p => p.ProgressCd);

    /// <summary>Stage at a progress, 1 to 47.</summary>
    /// <param name="progressCd">At or above 0. [°C·d]</param>
    /// <exception cref="ArgumentOutOfRangeException">Below 0, or not a number.</exception>
    public double StageAt(double progressCd) =>
        Interpolate(Require.InRange(progressCd, 0, double.MaxValue, "°C·d"), p => p.ProgressCd, p => p.ElStage);

    /// <summary>Progress that a day brings where its temperature is not known. [°C·d]</summary>
    /// <param name="daysAfterStart">Days after the start of the sum; before it nothing happens. [d]</param>
    internal double TypicalProgressOfDay(int daysAfterStart) =>
        Interpolate(daysAfterStart + 1, p => p.TypicalDay, p => p.ProgressCd) - Interpolate(daysAfterStart, p => p.TypicalDay, p => p.ProgressCd);

    private double Interpolate(double at, Func<GrowthStagePoint, double> x, Func<GrowthStagePoint, double> y)
    {
        if (at <= x(Points[0]))
        {
            return y(Points[0]);
        }

        for (var i = 1; i < Points.Count; i++)
        {
            var (left, right) = (Points[i - 1], Points[i]);
            if (at <= x(right))
            {
                return y(left) + ((at - x(left)) / (x(right) - x(left)) * (y(right) - y(left)));
            }
        }

        return y(Points[^1]);
    }
}
