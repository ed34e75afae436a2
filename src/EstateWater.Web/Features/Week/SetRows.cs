using System.Globalization;
using EstateWater.Planning;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Week;

/// <summary>How a set is named where it is shown.</summary>
public static class SetRows
{
    /// <summary>The id of its table row: valve and start.</summary>
    public static string IdOf(PlannedSet set) =>
        string.Create(CultureInfo.InvariantCulture, $"set-{Uri.EscapeDataString(set.Valve)}-{set.Start.UtcDateTime:yyyyMMddHHmm}");

    /// <summary>A set in words.</summary>
    public static string Words(PlannedSet set, UnitChoice units) =>
        $"{set.Valve} on {set.Source}, {units.DayClock(set.Start)} to {units.Clock(set.End)}, "
        + $"{units.Hours(set.Hours)}, {units.Flow(set.FlowM3PerH)}";
}
