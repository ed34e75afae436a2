using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>How much caution a heat index calls for.</summary>
public enum HeatCaution
{
    /// <summary>Below every band.</summary>
    None,

    /// <summary>Fatigue possible with long exposure and work.</summary>
    Caution,

    /// <summary>Heat cramps and heat exhaustion possible.</summary>
    ExtremeCaution,

    /// <summary>Heat cramps and heat exhaustion likely, heat stroke possible.</summary>
    Danger,

    /// <summary>Heat stroke likely.</summary>
    ExtremeDanger,
}

/// <summary>Lower ends of the bands of caution; to be set to what the place's rules say.</summary>
/// <remarks>Defaults: 80, 90, 103 and 125 °F, the NWS classes. An older NWS page has 105 and 130 for the upper two.</remarks>
public sealed record HeatIndexBands
{
    /// <summary>The NWS classes.</summary>
    public static HeatIndexBands Default { get; } = new();

    /// <summary>Caution from here, 15 to 70. [°C]</summary>
    public double CautionC { get; init => field = Require.InRange(value, 15, 70, "°C", nameof(CautionC)); } = (80 - 32) / 1.8;

    /// <summary>Extreme caution from here, 15 to 70. [°C]</summary>
    public double ExtremeCautionC { get; init => field = Require.InRange(value, 15, 70, "°C", nameof(ExtremeCautionC)); } = (90 - 32) / 1.8;

    /// <summary>Danger from here, 15 to 70. [°C]</summary>
    public double DangerC { get; init => field = Require.InRange(value, 15, 70, "°C", nameof(DangerC)); } = (103 - 32) / 1.8;

    /// <summary>Extreme danger from here, 15 to 70. [°C]</summary>
    public double ExtremeDangerC { get; init => field = Require.InRange(value, 15, 70, "°C", nameof(ExtremeDangerC)); } = (125 - 32) / 1.8;

    /// <summary>The band of a heat index; equal to a limit belongs to the hotter one.</summary>
    /// <param name="heatIndexC">Heat index, −60 to 300. [°C]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public HeatCaution Of(double heatIndexC)
    {
        Require.InRange(heatIndexC, -60, 300, "°C");
        return heatIndexC >= ExtremeDangerC ? HeatCaution.ExtremeDanger
            : heatIndexC >= DangerC ? HeatCaution.Danger
            : heatIndexC >= ExtremeCautionC ? HeatCaution.ExtremeCaution
            : heatIndexC >= CautionC ? HeatCaution.Caution
            : HeatCaution.None;
    }
}
