namespace EstateWater.Simulation.Vine;

/// <summary>Growth stage (modified Eichhorn–Lorenz number) by degree days above 10 °C since budburst; an invented middling variety.</summary>
public static class GrowthStage
{
    private static readonly (double DegreeDays, double Stage)[] Course =
    [
        (0, 4), (70, 9), (150, 12), (320, 19), (390, 23), (480, 27), (660, 31), (820, 33), (1010, 35), (1230, 36),
        (1400, 37), (1530, 38), (1700, 41), (1900, 43), (2100, 47),
    ];

    /// <summary>The stage after so many degree days; 1 before budburst.</summary>
    public static double At(double degreeDays)
    {
        if (degreeDays <= 0)
        {
            return 1;
        }

        for (var i = 1; i < Course.Length; i++)
        {
            if (degreeDays < Course[i].DegreeDays)
            {
                var (from, to) = (Course[i - 1], Course[i]);
                return from.Stage + ((to.Stage - from.Stage) * (degreeDays - from.DegreeDays) / (to.DegreeDays - from.DegreeDays));
            }
        }

        return 47;
    }
}
