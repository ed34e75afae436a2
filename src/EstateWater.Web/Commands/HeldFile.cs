using System.Globalization;
using EstateWater.Planning.Accuracy;

namespace EstateWater.Web.Commands;

/// <summary>Past outlooks and what was read, a row each, as comma-separated values.</summary>
internal static class HeldFile
{
    private const string Header = "block,date,measure,days_ahead,read_bar,standard_error_bar,expected_p10_bar,expected_p50_bar,expected_p90_bar,no_change_bar,straight_line_bar";

    public static IEnumerable<string> Lines(IEnumerable<HeldAgainst> held) => held.Select(Row).Prepend(Header);

    private static string Row(HeldAgainst held) => string.Create(
        CultureInfo.InvariantCulture,
        $"{held.Block},{held.Date:yyyy-MM-dd},{held.Measure.ToString().ToLowerInvariant()},{held.LeadDays},{held.ReadBar:0.###},{held.StandardErrorBar:0.###},{held.Expected.P10},{held.Expected.P50},{held.Expected.P90},{held.NoChangeBar:0.###},{held.StraightLineBar:0.###}");
}
