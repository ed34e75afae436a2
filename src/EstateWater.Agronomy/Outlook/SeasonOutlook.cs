using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>A fitted block lived through day by day, with few enough members to try a whole season many times.</summary>
/// <remarks>
/// The members are every eighth of the fit's: they are exchangeable, so any part of them is a smaller ensemble of the same
/// thing. The last set's surprise, which <see cref="BlockOutlook"/> carries for some days, is left out: it is gone long
/// before the season ends.
/// </remarks>
public sealed class SeasonOutlook
{
    /// <summary>Members it carries; a multiple of every vector width.</summary>
    public const int Members = 32;

    private readonly RootZoneEnsemble rootZone;
    private readonly MemberTensions tensions;

    /// <summary>Brings a fitted block up to a day.</summary>
    /// <param name="block">As fitted.</param>
    /// <param name="measure">What it speaks of.</param>
    /// <param name="today">The first day to be lived through; the block's season must reach the day before.</param>
    /// <exception cref="ArgumentOutOfRangeException">The block's season ends before yesterday, or begins after today.</exception>
    public SeasonOutlook(FittedBlock block, WaterPotentialMeasure measure, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(block);
        var season = block.Evidence.Season;
        var days = season.IndexOf(today);
        if (days < 0 || days > season.Days)
        {
            throw new ArgumentOutOfRangeException(nameof(today), today, $"must be {season.FirstDay:yyyy-MM-dd} to {season.FirstDay.AddDays(season.Days):yyyy-MM-dd}, where the block's season is known");
        }

        var every = BlockFit.Members / Members;
        var unknowns = block.Unknowns.Select(u => u.Where((_, m) => m % every == 0).ToArray()).ToArray();
        tensions = new MemberTensions(unknowns, measure);
        rootZone = new RootZoneEnsemble(block.Evidence.Declared, unknowns, Unknowns.StartOfSeason);
        rootZone.LiveThrough(season, days);
    }

    private SeasonOutlook(SeasonOutlook other)
    {
        rootZone = other.rootZone.Branch();
        tensions = other.tensions;
    }

    /// <summary>A copy that can be lived through on its own.</summary>
    public SeasonOutlook Branch() => new(this);

    /// <summary>Tension of every member at solar noon, before dawn where that is the measure. [MPa]</summary>
    /// <param name="vpdKpa">Vapour pressure deficit near solar noon, ≥ 0. [kPa]</param>
    /// <param name="lightShare">0–1 (<see cref="Weather.MiddayLight"/>).</param>
    public double[] TensionsMpa(double vpdKpa, double lightShare)
    {
        var values = new double[Members];
        rootZone.Look();
        tensions.At(vpdKpa, lightShare, rootZone.RootShareLeft, values);
        return values;
    }

    /// <summary>Lives through a day.</summary>
    /// <param name="et0Mm">Reference evapotranspiration, ≥ 0. [mm/d]</param>
    /// <param name="rainMm">Rain, ≥ 0. [mm]</param>
    /// <param name="appliedMm">Water of its evening over the block's area, ≥ 0. [mm]</param>
    /// <param name="shadedFraction">Of the ground at solar noon, 0–1.</param>
    public void Step(double et0Mm, double rainMm, double appliedMm, double shadedFraction) => rootZone.Step(et0Mm, rainMm, appliedMm, shadedFraction);
}
