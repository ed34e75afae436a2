using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Soil;

/// <summary>Says how a tube stands.</summary>
public static class SoilWords
{
    /// <summary>“268 mm of water down to 1.00 m on Mon 19 Jan (yesterday), 6 mm less than on Mon 12 Jan; full 301 mm, refill at 240 mm: 28 mm above the refill point.”</summary>
    /// <param name="series">The tube.</param>
    /// <param name="today">The estate's day.</param>
    /// <param name="units">The reader's units.</param>
    public static string Standing(TubeSeries series, DateOnly today, UnitChoice units)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(units);
        var day = $"{units.Day(series.Latest.Date)} ({EstateText.Age(series.Latest.Date, today)})";
        if (series.Mm(series.Latest) is not { } mm)
        {
            return $"On {day} it was not read down to {units.Span(series.SpanM)}, so its water cannot be summed.";
        }

        return $"{Told(Written(mm, units), units)} of water down to {units.Span(series.SpanM)} on {day}{Change(series, mm, units)}; {Between(series, mm, units)}";
    }

    private static string Change(TubeSeries series, double mm, UnitChoice units)
    {
        if (series.Profiles.SkipLast(1).LastOrDefault(profile => series.Mm(profile) is not null) is not { } before)
        {
            return "";
        }

        var change = Written(mm, units) - Written(series.Mm(before)!.Value, units);
        return change == 0 ? $", as on {units.Day(before.Date)}" : $", {Told(Math.Abs(change), units)} {(change < 0 ? "less" : "more")} than on {units.Day(before.Date)}";
    }

    private static string Between(TubeSeries series, double mm, UnitChoice units)
    {
        if (series.Points is not { } points)
        {
            return "full and refill point are not known yet: the readings must have wetted and dried.";
        }

        var (full, refill) = (Written(points.FullMm, units), Written(points.RefillMm, units));
        var above = Written(mm, units) - refill;
        var place = points.IsDue(mm) ? $"{Told(Math.Abs(Math.Min(0, above)), units)} under the refill point" : $"{Told(Math.Max(0, above), units)} above the refill point";
        return $"full {Told(full, units)}, refill at {Told(refill, units)}: {place}.";
    }

    // In the reader's unit as it is written: differences are counted from that, so that the numbers of the sentence add up.
    private static decimal Written(double mm, UnitChoice units) => Math.Round((decimal)units.Depth.Show(mm), units.Depth.MoreDecimals);

    private static string Told(decimal depth, UnitChoice units) => $"{units.Number((double)depth, units.Depth.MoreDecimals)}\u00A0{units.Depth.Symbol}";
}
