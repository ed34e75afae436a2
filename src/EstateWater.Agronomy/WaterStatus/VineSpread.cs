using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>How far the vines of a block lie from one another week after week: what reading the same vines again does not tell of the block.</summary>
/// <param name="GroupMpa">Standard deviation between groups of vines. [MPa]</param>
/// <param name="VineMpa">Standard deviation between vines of a group. [MPa]</param>
[Method(
    "Vines that stay wetter or drier than their block",
    Source = "Koch (1967), Technometrics 9:93–118 (from memory, to be checked): variance components from products of pairs; what two weeks share is no reading error",
    Check = "Components that data were drawn with")]
public sealed record VineSpread(double GroupMpa, double VineMpa)
{
    // Blocks that agree with the usual keep a small estate from certainty; a block read less often than this says little. Ours.
    private const double ImaginaryBlocks = 3;
    private const int FewestSets = 3;

    /// <summary>Before any vine was read twice. Ours.</summary>
    public static VineSpread Usual { get; } = new(0.035, 0.05);

    /// <summary>From an estate's reading sets.</summary>
    /// <param name="blocks">Of each block, its sets of one measure: the leaves of each.</param>
    public static VineSpread Of(IReadOnlyList<IReadOnlyList<IReadOnlyList<LeafFact>>> blocks)
    {
        ArgumentNullException.ThrowIfNull(blocks);
        List<Components> known = [.. blocks.Where(sets => sets.Count >= FewestSets).Select(ComponentsOf).OfType<Components>()];
        double Pooled(double usualMpa, Func<Components, double> of) =>
            Math.Sqrt(Math.Max(0, ((ImaginaryBlocks * usualMpa * usualMpa) + known.Sum(of)) / (ImaginaryBlocks + known.Count)));
        return new VineSpread(Pooled(Usual.GroupMpa, c => c.Group), Pooled(Usual.VineMpa, c => c.Vine));
    }

    /// <summary>Standard deviation between the mean of some vines and their block. [MPa]</summary>
    /// <param name="vines">How many, ≥ 1.</param>
    /// <param name="groups">In how many groups, ≥ 1.</param>
    /// <remarks>Of a sample in two stages (Cochran 1977, Sampling Techniques, section 10.3; from memory): σg² ∕ groups + σv² ∕ vines.</remarks>
    public double OfMeanMpa(int vines, int groups) => Math.Sqrt((GroupMpa * GroupMpa / groups) + (VineMpa * VineMpa / vines));

    // Null where the same vines were not read again.
    private static Components? ComponentsOf(IReadOnlyList<IReadOnlyList<LeafFact>> sets)
    {
        var leaves = new List<Deviation>();
        for (var t = 0; t < sets.Count; t++)
        {
            var named = sets[t].Where(l => l.Vine is not null).ToList();
            var mean = named.Select(l => l.TensionMpa).DefaultIfEmpty().Average();
            leaves.AddRange(named.Select(l => new Deviation(t, l.Group, l.Vine, l.TensionMpa - mean)));
        }

        var ofVine = Pairs(leaves, l => (l.Group, l.Vine));
        var inGroup = Pairs(leaves, l => l.Group);
        var all = Pairs(leaves, _ => 0);
        var (vinesOfGroup, groups) = (inGroup - ofVine, all - inGroup);
        return ofVine.Count == 0 ? null
            : vinesOfGroup.Count == 0 ? new Components(0, ofVine.Mean - (groups.Count == 0 ? 0 : groups.Mean))
            : new Components(groups.Count == 0 ? 0 : vinesOfGroup.Mean - groups.Mean, ofVine.Mean - vinesOfGroup.Mean);
    }

    // What two leaves of different sets lie off their sets' means, multiplied: leaves' own scatter is nought in the mean of such products.
    private static Products Pairs<TKey>(List<Deviation> leaves, Func<Deviation, TKey> alike)
    {
        var sum = new Products(0, 0);
        foreach (var some in leaves.GroupBy(alike))
        {
            var bySet = some.GroupBy(l => l.Set).Select(s => (Off: s.Sum(l => l.OffMpa), Count: (double)s.Count())).ToList();
            var (off, count) = (bySet.Sum(s => s.Off), bySet.Sum(s => s.Count));
            sum += new Products((off * off) - bySet.Sum(s => s.Off * s.Off), (count * count) - bySet.Sum(s => s.Count * s.Count));
        }

        return sum;
    }

    private readonly record struct Components(double Group, double Vine);

    private readonly record struct Deviation(int Set, string? Group, string? Vine, double OffMpa);

    private readonly record struct Products(double Sum, double Count)
    {
        public double Mean => Sum / Count;

        public static Products operator +(Products a, Products b) => new(a.Sum + b.Sum, a.Count + b.Count);

        public static Products operator -(Products a, Products b) => new(a.Sum - b.Sum, a.Count - b.Count);
    }
}
