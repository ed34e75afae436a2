using EstateWater.Agronomy.Canopy;
using EstateWater.Agronomy.Phenology;

namespace EstateWater.Planning.Blocks;

/// <summary>Share of the ground shaded at solar noon, day by day.</summary>
internal static class ShadeCourse
{
    // What a block shades at full canopy when nobody has looked: the shade whose crop coefficient is FAO-56's of mid-season.
    private const double Unknown = CropCoefficient.Fao56Mid / CropCoefficient.WilliamsAyarsSlope;
    private const double BareWood = 0.02;
    private const double Trusted = 30;

    // A look older than this says nothing more of today's canopy.
    private const int LongestPastDays = 90;

    /// <summary>By day: canopy visits where there are some, the declared full canopy on its growth curve elsewhere.</summary>
    /// <remarks>A visit sees the canopy with an error, so visits within ten days are averaged.</remarks>
    public static double[] Of(PlanBlock block, GrowthStageProjection stages, DateOnly first, int days, DateOnly asOf)
    {
        var full = block.ShadedFraction ?? Unknown;
        var visits = block.CanopyLooks
            .Where(v => v.ShadedFraction is not null && v.Date >= first.AddDays(-LongestPastDays) && v.Date <= asOf)
            .Select(v => (Day: v.Date.DayNumber - first.DayNumber, Share: v.ShadedFraction!.Value / Curve(stages.At(v.Date))))
            .ToList();
        var shade = new double[days];
        for (var day = 0; day < days; day++)
        {
            shade[day] = Curve(stages.At(first.AddDays(day))) * FullCanopy(visits, day, full);
        }

        return shade;
    }

    // The full canopy as the visits near this day see it; the declaration stands for one visit a month away.
    private static double FullCanopy(List<(int Day, double Share)> visits, int day, double declared)
    {
        double weights = 0.1, sum = 0.1 * declared;
        foreach (var visit in visits)
        {
            var weight = Math.Exp(-Math.Abs(visit.Day - day) / 10.0) + (0.02 * Math.Exp(-Math.Abs(visit.Day - day) / Trusted));
            weights += weight;
            sum += weight * visit.Share;
        }

        return Math.Clamp(sum / weights, BareWood, 1);
    }

    /// <summary>Share of the full canopy at a growth stage: from budburst (4) to setting (27), and less as leaves fall (43–47).</summary>
    private static double Curve(double elStage) => elStage switch
    {
        <= 4 => BareWood,
        < 27 => BareWood + ((1 - BareWood) * Math.Pow((elStage - 4) / 23, 1.3)),
        <= 41 => 1,
        < 47 => 1 - (0.9 * (elStage - 41) / 6),
        _ => 0.1,
    };
}
