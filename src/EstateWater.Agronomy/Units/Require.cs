using System.Globalization;
using System.Runtime.CompilerServices;

namespace EstateWater.Agronomy.Units;

/// <summary>Guards of inputs: each refuses a value outside its range, not-a-number included, and names both.</summary>
internal static class Require
{
    /// <summary>Refuses a value that is not from <paramref name="lowest"/> to <paramref name="highest"/>, both included.</summary>
    public static double Within(double value, double lowest, double highest, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        // Written as "not inside" so that NaN is refused too.
        if (!(value >= lowest && value <= highest))
        {
            throw Refusal(name, value, string.Create(CultureInfo.InvariantCulture, $"Expected {lowest} to {highest} {unit}, was {value}."));
        }

        return value;
    }

    /// <summary>Refuses a value that is not finite or not above <paramref name="limit"/>.</summary>
    public static double Above(double value, double limit, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > limit && double.IsFinite(value)))
        {
            throw Refusal(name, value, string.Create(CultureInfo.InvariantCulture, $"Expected a finite value above {limit} {unit}, was {value}."));
        }

        return value;
    }

    /// <summary>Refuses a value that is not finite or below <paramref name="limit"/>.</summary>
    public static double AtLeast(double value, double limit, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= limit && double.IsFinite(value)))
        {
            throw Refusal(name, value, string.Create(CultureInfo.InvariantCulture, $"Expected a finite value of at least {limit} {unit}, was {value}."));
        }

        return value;
    }

    /// <summary>Refuses NaN and the infinities.</summary>
    public static double Finite(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value))
        {
            throw Refusal(name, value, string.Create(CultureInfo.InvariantCulture, $"Expected a finite value in {unit}, was {value}."));
        }

        return value;
    }

    /// <summary>Refuses a list shorter than <paramref name="atLeast"/> or with a value that is not finite.</summary>
    public static IReadOnlyList<double> Values(IReadOnlyList<double> values, int atLeast, [CallerArgumentExpression(nameof(values))] string name = "")
    {
        ArgumentNullException.ThrowIfNull(values, name);
        if (values.Count < atLeast)
        {
            throw Refusal(name, values.Count, string.Create(CultureInfo.InvariantCulture, $"Expected at least {atLeast} values, had {values.Count}."));
        }

        for (var i = 0; i < values.Count; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw Refusal(name, values[i], string.Create(CultureInfo.InvariantCulture, $"Expected finite values, number {i + 1} was {values[i]}."));
            }
        }

        return values;
    }

    private static ArgumentOutOfRangeException Refusal(string name, object value, string message) => new(name, value, message);
}
