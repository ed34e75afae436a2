using System.Globalization;
using System.Runtime.CompilerServices;

namespace EstateWater.Agronomy.Methods;

/// <summary>Refuses numbers that no measurement can be.</summary>
internal static class Require
{
    /// <summary>Gives the value back when it lies within the range; NaN lies in none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static double InRange(double value, double lowest, double highest, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        // Written as "not inside" so that NaN is refused too.
        if (!(value >= lowest && value <= highest))
        {
            throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"Expected {lowest} to {highest} {unit}."));
        }

        return value;
    }

    /// <summary>Gives the value back when it is finite and above the limit.</summary>
    public static double Above(double value, double limit, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > limit && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"Expected a finite value above {limit} {unit}."));

    /// <summary>Gives the value back when it is finite and at least the limit.</summary>
    public static double AtLeast(double value, double limit, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= limit && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"Expected a finite value of at least {limit} {unit}."));

    /// <summary>Gives the value back when it is finite.</summary>
    public static double Finite(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"Expected a finite value in {unit}.");

    /// <summary>Gives the list back when it is long enough and every value is finite.</summary>
    public static IReadOnlyList<double> Values(IReadOnlyList<double> values, int atLeast, [CallerArgumentExpression(nameof(values))] string name = "")
    {
        ArgumentNullException.ThrowIfNull(values, name);
        AtLeast(values.Count, atLeast, "values", name);
        foreach (var value in values)
        {
            if (!double.IsFinite(value))
            {
                throw new ArgumentOutOfRangeException(name, value, "Expected finite values only.");
            }
        }

        return values;
    }
}
