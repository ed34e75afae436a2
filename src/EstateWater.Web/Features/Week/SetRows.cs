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

    /// <summary>A valve with the blocks it waters: “V20 · D1 D2”.</summary>
    public static string Name(string valve, IEnumerable<WeekBlock> blocks)
    {
        var codes = string.Join(' ', blocks.Where(b => b.Valve == valve).Select(b => b.Code));
        return codes.Length == 0 ? valve : $"{valve} · {codes}";
    }

    /// <summary>A set in words.</summary>
    /// <param name="set">The set.</param>
    /// <param name="name">Its valve and blocks.</param>
    /// <param name="units">How the reader is told times and flows.</param>
    public static string Words(PlannedSet set, string name, UnitChoice units) =>
        $"{name} on {set.Source}, {units.DayClock(set.Start)} to {units.Clock(set.End)}, "
        + $"{units.Hours(set.Hours)}, {units.Flow(set.FlowM3PerH)}";
}
