using System.Globalization;
using EstateWater.Planning.Rounds;

namespace EstateWater.Web.Features.Rounds;

/// <summary>Round settings as they are typed.</summary>
/// <param name="WalkKmPerH">[km/h]</param>
/// <param name="MinutesPerLeaf">[min]</param>
/// <param name="MinutesPerBlock">[min]</param>
/// <param name="HalfWidthBar">[bar]</param>
public sealed record RoundSettingsText(string? WalkKmPerH, string? MinutesPerLeaf, string? MinutesPerBlock, string? HalfWidthBar)
{
    private const double MetresPerMinutePerKmPerH = 1000.0 / 60;

    /// <summary>As settings are shown.</summary>
    public static RoundSettingsText Of(RoundSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return new(Text(settings.WalkMPerMin / MetresPerMinutePerKmPerH), Text(settings.MinutesPerLeaf), Text(settings.MinutesPerBlock), Text(settings.HalfWidthBar));
    }

    /// <summary>What is wrong, each with the rule and an example; empty when nothing is.</summary>
    public IReadOnlyList<string> Mistakes =>
    [
        .. new[]
        {
            Wrong(WalkKmPerH, 1, 40, "Speed between blocks is 1 to 40 km/h, like 3.6."),
            Wrong(MinutesPerLeaf, 0.25, 15, "A leaf takes 0.25 to 15 minutes, like 1.5."),
            Wrong(MinutesPerBlock, 0, 60, "Setting up in a block takes 0 to 60 minutes, like 4."),
            Wrong(HalfWidthBar, 0.2, 5, "The precision wanted is 0.2 to 5 bar, like 1."),
        }.OfType<string>(),
    ];

    /// <summary>The settings of a text without mistakes.</summary>
    public RoundSettings ToSettings() => new()
    {
        WalkMPerMin = Number(WalkKmPerH)!.Value * MetresPerMinutePerKmPerH,
        MinutesPerLeaf = Number(MinutesPerLeaf)!.Value,
        MinutesPerBlock = Number(MinutesPerBlock)!.Value,
        HalfWidthBar = Number(HalfWidthBar)!.Value,
    };

    private static string? Wrong(string? text, double least, double most, string rule) => Number(text) is { } value && value >= least && value <= most ? null : rule;

    private static double? Number(string? text) =>
        double.TryParse(text?.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : null;

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
