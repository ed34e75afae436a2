using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>The daily balance of <see cref="DailyBalance"/> for many blocks and many parameter sets, several sets at once and blocks in parallel.</summary>
[Method(
    "Daily root-zone water balance, in batches",
    Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 80–88; the split into a wetted and another part is ours",
    Check = "The daily balance itself, set by set, to 1e-9 mm")]
public static class SeasonBalanceBatch
{
    /// <summary>Runs every block's season.</summary>
    /// <param name="seasons">One for each block.</param>
    /// <returns>One for each block, in the same order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input of a season is outside its range.</exception>
    public static IReadOnlyList<BlockSeasonResult> Run(IReadOnlyList<BlockSeason> seasons)
    {
        ArgumentNullException.ThrowIfNull(seasons);

        // Checked here, one after the other: a refusal names its input and is not wrapped.
        foreach (var season in seasons)
        {
            season.Validate();
        }

        var results = new BlockSeasonResult[seasons.Count];
        Parallel.For(0, seasons.Count, b => results[b] = Run(seasons[b]));
        return results;
    }

    private static BlockSeasonResult Run(BlockSeason season)
    {
        var lanes = new SeasonBalanceLanes(season.Sets);
        var wetted = new double[season.DaysKept.Count][];
        var other = new double[season.DaysKept.Count][];
        var row = 0;
        for (var d = 0; d < season.Days.Count; d++)
        {
            lanes.Step(season.Days[d]);
            if (row < season.DaysKept.Count && season.DaysKept[row] == d)
            {
                wetted[row] = lanes.WettedMm[..season.Sets.Count];
                other[row] = lanes.OtherMm[..season.Sets.Count];
                row++;
            }
        }

        return new BlockSeasonResult(wetted, other, lanes.ActualEtMm[..season.Sets.Count], lanes.DeepPercolationMm[..season.Sets.Count]);
    }
}

/// <summary>A block's season and its possible root zones.</summary>
/// <param name="Sets">The root zones.</param>
/// <param name="Days">The days, in order.</param>
/// <param name="DaysKept">Places, from 0 and rising, of the days whose depletion is wanted.</param>
public sealed record BlockSeason(RootZoneParameterSets Sets, IReadOnlyList<BalanceInputs> Days, IReadOnlyList<int> DaysKept)
{
    internal void Validate()
    {
        Sets.Validate();
        foreach (var day in Days)
        {
            day.Validate();
        }

        for (var i = 0; i < DaysKept.Count; i++)
        {
            Require.InRange(DaysKept[i], i == 0 ? 0 : DaysKept[i - 1] + 1, Days.Count - 1, "(place of a day, rising)", nameof(DaysKept));
        }
    }
}

/// <summary>What a season left: in each list a value for every set.</summary>
/// <param name="WettedDepletionMm">For each kept day, missing from the wetted part at its end. [mm]</param>
/// <param name="OtherDepletionMm">For each kept day, missing from the other part at its end. [mm]</param>
/// <param name="ActualEtMm">Crop ET of the season. [mm]</param>
/// <param name="DeepPercolationMm">Deep percolation of the season. [mm]</param>
public sealed record BlockSeasonResult(
    IReadOnlyList<IReadOnlyList<double>> WettedDepletionMm,
    IReadOnlyList<IReadOnlyList<double>> OtherDepletionMm,
    IReadOnlyList<double> ActualEtMm,
    IReadOnlyList<double> DeepPercolationMm);
