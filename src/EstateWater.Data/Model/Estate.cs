namespace EstateWater.Data.Model;

/// <summary>The estate itself: one per database and one per estate folder.</summary>
public sealed record Estate
{
    /// <summary>Always 1: a database holds one estate.</summary>
    public int Id { get; init; } = 1;

    /// <summary>The estate's name as people say it.</summary>
    public required string Name { get; init; }

    /// <summary>IANA time zone, for example <c>Africa/Johannesburg</c>.</summary>
    public required string TimeZone { get; init; }

    /// <summary>Country, free text; <see langword="null"/> when not given.</summary>
    public string? Country { get; init; }

    /// <summary>The units people see first; each person may choose otherwise.</summary>
    public DisplayUnits DisplayUnits { get; init; }
}

/// <summary>Families of display units.</summary>
public enum DisplayUnits
{
    /// <summary>mm, m³, ha, °C.</summary>
    Metric,

    /// <summary>in, gal, ac, °F.</summary>
    Us,
}
