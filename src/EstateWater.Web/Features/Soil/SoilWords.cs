using EstateWater.Web.Parts;

namespace EstateWater.Web.Features.Soil;

/// <summary>Says how a tube stands.</summary>
public static class SoilWords
{
    /// <summary>“268 mm to 1.00 m on Mon 19 Jan (yesterday), 6 mm less than on Mon 12 Jan; full 301 mm, refill at 240 mm: 28 mm above the refill point.”</summary>
    /// <param name="series">The tube.</param>
    /// <param name="today">The estate's day.</param>
    public static string Standing(TubeSeries series, DateOnly today)
    {
        var day = $"{EstateText.Day(series.Latest.Date)} ({EstateText.Age(series.Latest.Date, today)})";
        if (series.Mm(series.Latest) is not { } mm)
        {
            return $"On {day} it was not read down to {Metres(series.SpanM)}, so its water cannot be summed.";
        }

        return $"{Mm(mm)} to {Metres(series.SpanM)} on {day}{Change(series, mm)}; {Between(series, mm)}";
    }

    private static string Change(TubeSeries series, double mm)
    {
        if (series.Profiles.SkipLast(1).LastOrDefault(profile => series.Mm(profile) is not null) is not { } before)
        {
            return "";
        }

        var change = Math.Round(mm) - Math.Round(series.Mm(before)!.Value);
        return change == 0 ? $", as on {EstateText.Day(before.Date)}" : $", {Mm(Math.Abs(change))} {(change < 0 ? "less" : "more")} than on {EstateText.Day(before.Date)}";
    }

    private static string Between(TubeSeries series, double mm)
    {
        if (series.Points is not { } points)
        {
            return "full and refill point are not known yet: the readings must have wetted and dried.";
        }

        // Counted from what is written, so that the numbers of the sentence add up.
        var above = Math.Round(mm) - Math.Round(points.RefillMm);
        var place = points.IsDue(mm) ? $"{Mm(Math.Abs(Math.Min(0, above)))} under the refill point" : $"{Mm(Math.Max(0, above))} above the refill point";
        return $"full {Mm(points.FullMm)}, refill at {Mm(points.RefillMm)}: {place}.";
    }

    /// <summary>A depth of water: “268 mm”.</summary>
    public static string Mm(double mm) => EstateText.Number(mm, 0) + "\u00A0mm";

    /// <summary>A depth of soil: “1.00 m”.</summary>
    public static string Metres(double m) => EstateText.Number(m, 2) + "\u00A0m";
}
