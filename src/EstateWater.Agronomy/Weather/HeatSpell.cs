namespace EstateWater.Agronomy.Weather;

/// <summary>Consecutive hot days.</summary>
/// <param name="From">First hot day.</param>
/// <param name="To">Last hot day.</param>
/// <param name="PeakTMaxC">Hottest day. [°C]</param>
/// <param name="Days">From first to last, bridged days included. [d]</param>
/// <param name="Severe">Whether it reaches the rule's severe mark.</param>
public sealed record HeatSpell(DateOnly From, DateOnly To, double PeakTMaxC, int Days, bool Severe);
