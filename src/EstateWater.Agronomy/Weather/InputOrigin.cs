namespace EstateWater.Agronomy.Weather;

/// <summary>Where a quantity in a computation came from.</summary>
public enum InputOrigin
{
    /// <summary>Read from an instrument, or given by a forecast.</summary>
    Measured,

    /// <summary>Estimated from other quantities, because it was missing.</summary>
    Estimated,
}
