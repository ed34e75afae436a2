namespace EstateWater.Planning.WhatIf;

/// <summary>What follows from changes: one plan against another of the same estate at the same moment.</summary>
public sealed record PlanConsequences
{
    // More likely than not.
    private const double Passes = 0.5;

    // A peak that is less higher comes of sets at another hour; ours.
    private const double WorthTellingBar = 0.3;

    /// <summary>Blocks for which anything below differs, in order of code.</summary>
    public required IReadOnlyList<BlockConsequence> Blocks { get; init; }

    /// <summary>Sources whose water differs, in order of code.</summary>
    public required IReadOnlyList<SourceConsequence> Sources { get; init; }

    /// <summary>Valve hours more than before; negative when fewer. [h]</summary>
    public required double HoursMore { get; init; }

    /// <summary>Water more than before; negative when less. [m³]</summary>
    public required double M3More { get; init; }

    /// <summary>Blocks that pass their ceiling now and did not before, or pass it sooner, the soonest first.</summary>
    public IEnumerable<BlockConsequence> Worse => Blocks
        .Where(b => b.After.FirstDayPast is { } now && (b.Before.FirstDayPast is not { } then || now < then))
        .OrderBy(b => b.After.FirstDayPast).ThenBy(b => b.Block, StringComparer.Ordinal);

    /// <summary>Blocks that pass their ceiling as soon as before, but on more days or further, the most days more first.</summary>
    public IEnumerable<BlockConsequence> Deeper => Blocks
        .Where(b => b.Before.FirstDayPast is { } then && b.After.FirstDayPast >= then && (b.DaysMore > 0 || b.PeakMoreBar >= WorthTellingBar))
        .OrderByDescending(b => b.DaysMore).ThenByDescending(b => b.PeakMoreBar).ThenBy(b => b.Block, StringComparer.Ordinal);

    /// <summary>Blocks that passed their ceiling before and do not now.</summary>
    public IEnumerable<BlockConsequence> Spared => Blocks.Where(b => b.Before.FirstDayPast is not null && b.After.FirstDayPast is null);

    /// <summary>Compares two plans.</summary>
    /// <param name="before">Without the changes.</param>
    /// <param name="after">With them.</param>
    public static PlanConsequences Between(Plan before, Plan after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var then = before.Blocks.ToDictionary(b => b.Block, b => Of(before, b));
        return new PlanConsequences
        {
            Blocks = [.. after.Blocks
                .Where(b => then.ContainsKey(b.Block))
                .Select(b => new BlockConsequence(b.Block, then[b.Block], Of(after, b)))
                .Where(b => b.Before != b.After)
                .OrderBy(b => b.Block, StringComparer.Ordinal)],
            Sources = [.. before.Water
                .Join(after.Water, w => w.Source, w => w.Source, (b, a) => new SourceConsequence(b.Source, b, a))
                .Where(s => s.Before != s.After)
                .OrderBy(s => s.Source, StringComparer.Ordinal)],
            HoursMore = after.Sets.Sum(s => s.Hours) - before.Sets.Sum(s => s.Hours),
            M3More = Math.Round(after.Water.Sum(w => w.PlannedM3) - before.Water.Sum(w => w.PlannedM3), 1),
        };
    }

    // The chance is told for the heat where heat is ahead, else for the worst day.
    private static BlockStanding Of(Plan plan, BlockPlan block)
    {
        // Nothing that is put on now changes today.
        var days = block.Risks.Skip(1).ToList();
        var hot = days.Where(d => d.InHeat).ToList();
        var past = days.Where(d => d.ChancePastCeiling > Passes).ToList();
        return new BlockStanding(
            block.Hours,
            block.VolumeM3,
            plan.Unmet.Where(u => u.Block == block.Block).Sum(u => u.Hours),
            (hot.Count > 0 ? hot : days).Select(d => d.ChancePastCeiling).DefaultIfEmpty(0).Max(),
            past.Count,
            past.Count > 0 ? past[0].Date : null,
            Math.Round(block.Outlook.Skip(1).Select(d => d.PlannedBar.P50).DefaultIfEmpty(0).Max(), 1));
    }
}

/// <summary>A block before and after.</summary>
/// <param name="Block">Its code.</param>
/// <param name="Before">Without the changes.</param>
/// <param name="After">With them.</param>
public sealed record BlockConsequence(string Block, BlockStanding Before, BlockStanding After)
{
    /// <summary>Days past the ceiling more than before; negative when fewer.</summary>
    public int DaysMore => After.DaysPast - Before.DaysPast;

    /// <summary>How much higher the peak is than before; negative when lower. [bar]</summary>
    public double PeakMoreBar => After.PeakBar - Before.PeakBar;
}

/// <summary>How a block stands in a plan.</summary>
/// <param name="Hours">Planned. [h]</param>
/// <param name="VolumeM3">Water used. [m³]</param>
/// <param name="UnmetHours">Wanted and not planned. [h]</param>
/// <param name="Chance">Of passing the ceiling, on the worst day of the heat ahead, or of all days where none is ahead; 0–1.</param>
/// <param name="DaysPast">Days ahead on which it passes its ceiling more likely than not.</param>
/// <param name="FirstDayPast">The first of them; null when there is none.</param>
/// <param name="PeakBar">The middle of its outlook on the driest day ahead, to a tenth; 0 without an outlook. [bar]</param>
public sealed record BlockStanding(double Hours, double VolumeM3, double UnmetHours, double Chance, int DaysPast, DateOnly? FirstDayPast, double PeakBar);

/// <summary>A source's water before and after.</summary>
/// <param name="Source">Its code.</param>
/// <param name="Before">Without the changes.</param>
/// <param name="After">With them.</param>
public sealed record SourceConsequence(string Source, SourceWater Before, SourceWater After);
