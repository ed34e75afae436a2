using EstateWater.Data.Model;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Report;

/// <summary>Says what was seen of a canopy.</summary>
public static class CanopyWords
{
    private static readonly string[] VisualStress = ["none", "tips slowing", "leaves dull or drooping at midday", "leaves yellowing or lost"];

    /// <summary>“Shoots 105 cm, 120 cm wanted at ripening; tips still growing 40 %; ground shaded at noon 31 %; stress seen: tips slowing (1 of 3).”</summary>
    /// <param name="visit">The visit.</param>
    /// <param name="block">Its block.</param>
    /// <param name="units">The reader's units.</param>
    public static string Of(CanopyVisit visit, Block block, UnitChoice units)
    {
        ArgumentNullException.ThrowIfNull(units);
        var wanted = block.TargetShootLengthCm is { } target ? $", {units.ShortLengthOf(target)} wanted at ripening" : "";
        var seen = new[]
        {
            visit.ShootLengthCm is { } length ? $"shoots {units.ShortLengthOf(length)}{wanted}" : null,
            visit.GrowingTipsPct is { } tips ? $"tips still growing {units.Percent(tips)}" : null,
            visit.ShadedFraction is { } shaded ? $"ground shaded at noon {units.Percent(100 * shaded)}" : null,
            visit.VisualStress is { } stress && stress >= 0 && stress < VisualStress.Length ? $"stress seen: {VisualStress[stress]} ({stress} of {VisualStress.Length - 1})" : null,
        }.OfType<string>().ToList();
        return seen.Count == 0 ? "Nothing measured." : EstateText.Capital(string.Join("; ", seen)) + ".";
    }
}
