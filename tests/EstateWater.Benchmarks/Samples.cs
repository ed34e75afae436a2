using System.Globalization;

namespace EstateWater.Benchmarks;

/// <summary>Repeated measurements of one thing.</summary>
/// <param name="Name">What was measured.</param>
/// <param name="Unit">Its unit.</param>
internal sealed record Samples(string Name, string Unit)
{
    private readonly List<double> values = [];

    public double Median => Quantile(0.5);

    public void Add(double value) => values.Add(value);

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"  {Name}: median {Median:0.###} {Unit}, quartiles {Quantile(0.25):0.###} to {Quantile(0.75):0.###}, {values.Min():0.###} to {values.Max():0.###} in {values.Count} repetitions");

    private double Quantile(double p)
    {
        var sorted = values.Order().ToArray();
        var at = p * (sorted.Length - 1);
        var (below, above) = (sorted[(int)Math.Floor(at)], sorted[(int)Math.Ceiling(at)]);
        return below + ((at - Math.Floor(at)) * (above - below));
    }
}
