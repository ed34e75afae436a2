namespace EstateWater.Simulation.Numbers;

/// <summary>
/// A small random number generator of a published algorithm (SplitMix64: Steele, Lea and Flood 2014), so that a seed
/// gives the same estate on every machine and runtime. Each use draws from its own named stream: what one part draws
/// never shifts what another part gets.
/// </summary>
public sealed class Dice
{
    private ulong _state;
    private double? _spareNormal;

    private Dice(ulong state) => _state = state;

    /// <summary>The stream of a seed that belongs to these names.</summary>
    public static Dice Of(ulong seed, params ReadOnlySpan<object> names)
    {
        const ulong FnvPrime = 1099511628211;
        var hash = 14695981039346656037UL ^ (seed * 0x9E3779B97F4A7C15UL);
        foreach (var name in names)
        {
            foreach (var c in FormattableString.Invariant($"{Text(name)}|"))
            {
                hash = (hash ^ c) * FnvPrime;
            }
        }

        return new Dice(hash);
    }

    /// <summary>Evenly from 0 up to, not including, 1.</summary>
    public double Uniform() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Evenly between two numbers.</summary>
    public double Between(double low, double high) => low + ((high - low) * Uniform());

    /// <summary>A whole number from <paramref name="low"/> through <paramref name="high"/>.</summary>
    public int Whole(int low, int high) => low + (int)(Uniform() * (high - low + 1));

    /// <summary>Whether something of this chance happens.</summary>
    public bool Chance(double probability) => Uniform() < probability;

    /// <summary>From a normal distribution (Box and Muller 1958).</summary>
    public double Normal(double mean = 0, double sd = 1)
    {
        if (_spareNormal is { } spare)
        {
            _spareNormal = null;
            return mean + (sd * spare);
        }

        var radius = Math.Sqrt(-2 * Math.Log(1 - Uniform()));
        var angle = 2 * Math.PI * Uniform();
        _spareNormal = radius * Math.Sin(angle);
        return mean + (sd * radius * Math.Cos(angle));
    }

    /// <summary>From an exponential distribution.</summary>
    public double Exponential(double mean) => -mean * Math.Log(1 - Uniform());

    private ulong Next()
    {
        var z = _state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    private static string Text(object name) =>
        name is DateOnly date ? date.DayNumber.ToString(System.Globalization.CultureInfo.InvariantCulture) : name.ToString()!;
}
