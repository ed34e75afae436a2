using MathNet.Numerics.Distributions;

namespace EstateWater.Agronomy.Outlook;

/// <summary>A stream of standard normal numbers that depends on its name alone: the same input gives the same plan.</summary>
/// <remarks>SplitMix64 (Steele, Lea and Flood 2014) through the inverse normal distribution.</remarks>
internal sealed class NormalNumbers
{
    private ulong state;

    public NormalNumbers(string name)
    {
        // FNV-1a: string.GetHashCode differs from run to run.
        ulong hash = 14695981039346656037;
        foreach (var c in name)
        {
            hash = (hash ^ c) * 1099511628211;
        }

        state = hash;
    }

    public double Next()
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        z ^= z >> 31;
        var uniform = ((z >> 11) + 0.5) * (1.0 / (1UL << 53));
        return Normal.InvCDF(0, 1, uniform);
    }
}
