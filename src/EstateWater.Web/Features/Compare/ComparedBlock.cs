using EstateWater.Agronomy.Drip;
using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.Features.Estate;
using EstateWater.Web.Features.Readings;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Compare;

/// <summary>A block beside others: its status, its outlook, and this season beside the one before at the same date.</summary>
/// <param name="Row">Status and plan, as the estate's list says them.</param>
/// <param name="SeasonStart">First day of this season; the one before is taken to have begun a year earlier.</param>
/// <param name="Water">Water of this season to date; null when none is recorded.</param>
/// <param name="WaterBefore">Water of the season before to the same date; null when none is recorded.</param>
/// <param name="Readings">Readings of both seasons, in order of the day of the season.</param>
public sealed record ComparedBlock(
    BlockRow Row, DateOnly SeasonStart, SeasonWater? Water, SeasonWater? WaterBefore, IReadOnlyList<SeasonReading> Readings)
{
    /// <summary>Looks at a snapshot.</summary>
    public static ComparedBlock From(BlockRow row, EstateSnapshot snapshot)
    {
        var start = BlockHistory.SeasonStartOf(snapshot, row.Block);
        var today = snapshot.Today;
        return new ComparedBlock(
            row,
            start,
            WaterOf(row.Block, snapshot, start, today),
            WaterOf(row.Block, snapshot, start.AddYears(-1), today.AddYears(-1)),
            ReadingsOf(row, snapshot, start));
    }

    private static SeasonWater? WaterOf(Block block, EstateSnapshot snapshot, DateOnly from, DateOnly to)
    {
        var sets = snapshot.Contents.AppliedWaters
            .Where(w => w.ValveCode == block.ValveCode && w.StartedAt <= snapshot.AsOf && snapshot.DayOf(w.StartedAt) is var day && day >= from && day <= to)
            .ToList();
        var rate = DripLine.ApplicationRateMmPerH(block.EmitterFlowLPerH, block.EmittersPerVine, block.RowSpacingM, block.VineSpacingM);
        return sets.Count == 0 ? null : new SeasonWater(sets.Count, sets.Sum(s => s.Hours), sets.Sum(s => s.Hours) * rate);
    }

    private static List<SeasonReading> ReadingsOf(BlockRow row, EstateSnapshot snapshot, DateOnly start)
    {
        var before = start.AddYears(-1);
        return
        [
            .. ReadingSets
                .From(snapshot.Contents.ChamberReadings.Where(r => r.BlockCode == row.Block.Code && r.Measure == row.Plan.Measure), snapshot.TimeZone, snapshot.AsOf)
                .Where(set => set.Date >= before)
                .Select(set => set.Date >= start
                    ? new SeasonReading(set, false, set.Date.DayNumber - start.DayNumber)
                    : new SeasonReading(set, true, set.Date.DayNumber - before.DayNumber))
                .OrderBy(reading => reading.DayOfSeason),
        ];
    }
}

/// <summary>Water put on in a part of a season.</summary>
/// <param name="Sets">How many sets.</param>
/// <param name="Hours">[h]</param>
/// <param name="Mm">Over the block's area, before losses. [mm]</param>
public sealed record SeasonWater(int Sets, double Hours, double Mm);

/// <summary>A reading set on its day of the season.</summary>
/// <param name="Set">The set.</param>
/// <param name="IsPast">Whether of the season before.</param>
/// <param name="DayOfSeason">Days since the season's first.</param>
public sealed record SeasonReading(ReadingSet Set, bool IsPast, int DayOfSeason);
