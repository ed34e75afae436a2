using System.Numerics;

namespace EstateWater.Agronomy.Outlook;

/// <summary>A stream of standard normal numbers that depends on its name alone: the same input gives the same plan.</summary>
/// <remarks>SplitMix64 (Steele, Lea and Flood 2014), two by two through the transform of Box and Muller (1958): an estate draws millions.</remarks>
public sealed class NormalNumbers
{
    // A multiple of twice every vector's width.
    private readonly double[] drawn = new double[256];

    private ulong state;
    private int next;

    /// <param name="name">Any name; the same name gives the same numbers.</param>
    public NormalNumbers(string name)
    {
        // FNV-1a: string.GetHashCode differs from run to run.
        ulong hash = 14695981039346656037;
        foreach (var c in name)
        {
            hash = (hash ^ c) * 1099511628211;
        }

        state = hash;
        next = drawn.Length;
    }

    /// <summary>The next number.</summary>
    public double Next()
    {
        if (next == drawn.Length)
        {
            Draw();
        }

        return drawn[next++];
    }

    private void Draw()
    {
        for (var i = 0; i < drawn.Length; i++)
        {
            drawn[i] = Uniform();
        }

        var half = drawn.Length / 2;
        for (var i = 0; i < half; i += Vector<double>.Count)
        {
            var radius = Vector.SquareRoot(-2 * Vector.Log(new Vector<double>(drawn, i)));
            var (sine, cosine) = Vector.SinCos(2 * Math.PI * new Vector<double>(drawn, half + i));
            (radius * sine).CopyTo(drawn, i);
            (radius * cosine).CopyTo(drawn, half + i);
        }

        next = 0;
    }

    // Strictly between 0 and 1.
    private double Uniform()
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        z ^= z >> 31;
        return ((z >> 11) + 0.5) * (1.0 / (1UL << 53));
    }
}
