using EstateWater.Agronomy.Units;

namespace EstateWater.Planning.Reasons;

/// <summary>Quantities and days as reasons write them.</summary>
internal static class Wording
{
    public static Sentence Hours(int quarters) => Sentence.Of($"{quarters / 4.0:0.##} h");

    public static Quantity Tension(double mpa) => Quantity.TensionOfMpa(mpa);

    /// <summary>A tension beside another that has the unit.</summary>
    public static Quantity BareTension(double mpa) => Tension(mpa) with { IsBare = true };

    public static Quantity Volume(double m3) => Quantity.Volume(m3) with { Groups = true };

    public static Sentence Day(DateOnly day) => Sentence.Of($"{day:ddd d MMM}");
}
