using System.Globalization;
using EstateWater.Agronomy.Units;

namespace EstateWater.Web.Parts.Units;

/// <content>How values are written.</content>
public sealed partial record UnitChoice : IWording
{
    // A gallon is far finer than what meters and plans tell.
    private const double CoarseGallons = 100;

    /// <summary>A number with a fixed count of decimals.</summary>
    public string Number(double value, int decimals = 1) => value.ToString("F" + decimals, Numbers.Numbers);

    /// <summary>A number without needless decimals: “6”, “6.25”.</summary>
    public string Trimmed(double value) => value.ToString("0.##", Numbers.Numbers);

    /// <summary>Hours: “6 h”, “6.25 h”.</summary>
    public string Hours(double hours) => Trimmed(hours) + " h";

    /// <summary>A share: “83 %”.</summary>
    public string Percent(double pct) => Number(pct, 0) + " %";

    /// <summary>“13.2 bar”, “1.32 MPa”.</summary>
    public string Tension(double bar, int decimals = 1) => $"{BareTension(bar, decimals)} {Pressure.Symbol}";

    /// <summary>“13.2”, “1.32”: for where the unit stands beside it.</summary>
    public string BareTension(double bar, int decimals = 1) => Bare(Pressure, bar, decimals);

    /// <summary>“9.8 mm”, “0.39 in”.</summary>
    public string DepthOf(double mm, int decimals = 1) => $"{BareDepth(mm, decimals)} {Depth.Symbol}";

    /// <summary>“9.8”, “0.39”.</summary>
    public string BareDepth(double mm, int decimals = 1) => Bare(Depth, mm, decimals);

    /// <summary>“41 000 m³”, “10,831,100 gal”, “398.87 acre-in”.</summary>
    public string VolumeOf(double m3)
    {
        var shown = Volume.Show(m3);
        var rounded = Volume == DisplayUnit.Gallon && Math.Abs(shown) >= 10 * CoarseGallons ? Math.Round(shown / CoarseGallons) * CoarseGallons : Math.Round(shown, Volume.MoreDecimals);
        return $"{rounded.ToString("N" + Volume.MoreDecimals, Numbers.Numbers)} {Volume.Symbol}";
    }

    /// <summary>What a meter showed, to a tenth: “171.5 m³”.</summary>
    public string Meter(double m3) => $"{Volume.Show(m3).ToString("#,0.#", Numbers.Numbers)} {Volume.Symbol}";

    /// <summary>“28.4 m³/h”, “125 gal/min”, “0.28 acre-in/h”.</summary>
    public string Flow(double m3PerH) => $"{BareFlow(m3PerH)}\u00A0{FlowSymbol}";

    /// <summary>“28.4”, “125”, “0.28”.</summary>
    public string BareFlow(double m3PerH) => (Volume == DisplayUnit.Gallon ? m3PerH / Conversions.CubicMetresPerHourPerGpm : Volume.Show(m3PerH))
        .ToString(Volume == DisplayUnit.Gallon ? "#,0" : Volume == DisplayUnit.AcreInch ? "0.##" : "0.#", Numbers.Numbers);

    /// <summary>m³/h, gal/min, acre-in/h.</summary>
    public string FlowSymbol => Volume == DisplayUnit.Gallon ? "gal/min" : Volume.Symbol + "/h";

    /// <summary>“2.1 ha”, “5.2 ac”.</summary>
    public string AreaOf(double m2) => $"{Bare(Area, m2, 1)} {Area.Symbol}";

    /// <summary>A length on the land: “0.9 m”, “3.0 ft”.</summary>
    public string Length(double m, int decimals = 1) => Area == DisplayUnit.Acre ? $"{Number(m / Conversions.MetresPerFoot, decimals)} ft" : $"{Number(m, decimals)} m";

    /// <summary>A depth in the soil or the length of a shoot: “30 cm”, “12 in”.</summary>
    public string ShortLengthOf(double cm) => $"{Bare(ShortLength, cm, 0)} {ShortLength.Symbol}";

    /// <summary>A depth to which something is summed: “1.00 m”, “39 in”.</summary>
    public string Span(double m) => ShortLength == DisplayUnit.Centimetre ? $"{Number(m, 2)}\u00A0m" : $"{Bare(ShortLength, 100 * m, 0)}\u00A0{ShortLength.Symbol}";

    /// <summary>“39 °C”, “102 °F”.</summary>
    public string TemperatureOf(double celsius, int decimals = 0) => $"{BareTemperature(celsius, decimals)} {Temperature.Symbol}";

    /// <summary>“39”, “102”.</summary>
    public string BareTemperature(double celsius, int decimals = 0) => Bare(Temperature, celsius, decimals);

    /// <summary>A day or an instant in estate time, in the person's order; the format is written day first, with 24 hours.</summary>
    public string Date(IFormattable value, string format)
    {
        ArgumentNullException.ThrowIfNull(value);
        return value.ToString(Numbers.Turned(format), CultureInfo.InvariantCulture);
    }

    /// <summary>“Wed 22 Jan 2025, 06:00”.</summary>
    public string Moment(DateTimeOffset at) => Date(at, "ddd d MMM yyyy, HH:mm");

    /// <summary>“Tue 21 Jan 20:00”.</summary>
    public string DayClock(DateTimeOffset at) => Date(at, "ddd d MMM HH:mm");

    /// <summary>“20:00”.</summary>
    public string Clock(DateTimeOffset at) => Date(at, "HH:mm");

    /// <summary>“Wed 22 Jan”.</summary>
    public string Day(DateOnly day) => Date(day, "ddd d MMM");

    /// <summary>Days from one to another, the month once where it is the same: “12–18 Jan”, “Jan 12–18”, “28 Jan–3 Feb”.</summary>
    public string Days(DateOnly from, DateOnly to)
    {
        const string Whole = "d MMM", Bare = "%d";
        var isOneMonth = from.Month == to.Month;
        return $"{Date(from, isOneMonth && !Numbers.MonthFirst ? Bare : Whole)}–{Date(to, isOneMonth && Numbers.MonthFirst ? Bare : Whole)}";
    }

    /// <summary>The weekday within a week from today, else the date: “today”, “tomorrow”, “Thursday”, “Thu 6 Feb”.</summary>
    public string NearDay(DateOnly day, DateOnly today) => (day.DayNumber - today.DayNumber) switch
    {
        0 => "today",
        1 => "tomorrow",
        > 1 and < 7 => day.DayOfWeek.ToString(),
        _ => Day(day),
    };

    /// <inheritdoc/>
    public string Tell(Quantity quantity) => quantity.Kind switch
    {
        QuantityKind.Volume => quantity.IsBare ? throw new NotSupportedException("Volumes are told with their unit: how finely depends on it.")
            : quantity.Decimals > 0 ? In(Volume, quantity with { Groups = true }) : VolumeOf(quantity.Value),
        QuantityKind.Flow => quantity.IsBare ? BareFlow(quantity.Value) : Flow(quantity.Value),
        QuantityKind.Tension => In(Pressure, quantity),
        QuantityKind.Depth => In(Depth, quantity),
        QuantityKind.Temperature => In(Temperature, quantity),
        QuantityKind.ShortLength => In(ShortLength, quantity),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "A kind of quantity."),
    };

    /// <inheritdoc/>
    public string Tell(IFormattable value, string? format) => value is DateOnly or DateTimeOffset or TimeOnly
        ? Date(value, format ?? "ddd d MMM")
        : value.ToString(format, Numbers.Numbers);

    private string In(DisplayUnit unit, Quantity quantity)
    {
        var number = unit.Show(quantity.Value).ToString(quantity.Format(quantity.Decimals + unit.MoreDecimals), Numbers.Numbers);
        return quantity.IsBare ? number : $"{number} {unit.Symbol}";
    }

    private string Bare(DisplayUnit unit, double kept, int decimals) => Number(unit.Show(kept), decimals + unit.MoreDecimals);
}
