namespace EstateWater.Agronomy.Outlook;

/// <summary>What is declared of a block's root zone and canopy. Starting points only: the fit trusts none of them.</summary>
/// <param name="TotalAvailableWaterMm">Water held between full and dry over the root depth, &gt; 0. [mm]</param>
/// <param name="AvailableWaterM3PerM3">The same per depth of soil, 0–0.4. [m³/m³]</param>
/// <param name="WettedFraction">Share of the root zone that the drippers wet, 0–1.</param>
/// <param name="DeliveredShare">Share of the applied water that enters the soil, as far as meters tell, 0–1.2.</param>
public sealed record BlockDeclaration(double TotalAvailableWaterMm, double AvailableWaterM3PerM3, double WettedFraction, double DeliveredShare);
