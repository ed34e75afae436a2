using System.Globalization;
using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Data.Store.Taken;

namespace EstateWater.Web.Features.Taking;

/// <summary>What the phone sends of something taken in the rows. Everything may be missing or wrong until <see cref="Mistakes"/> is empty.</summary>
public sealed record ReadingMessage
{
    /// <summary>More leaves than so many are no set.</summary>
    public const int MostLeaves = 100;

    private const int MostDepths = 50;
    private const int MostBaggedMin = 10_000;
    private const int MostDelayS = 100_000;
    private const int LongestName = 80;
    private const int LongestNote = 200;

    /// <summary>Made on the phone; the same entry sent twice has the same.</summary>
    public Guid? EntryId { get; init; }

    /// <summary>chamber, soil, canopy or stage; withdrawal for taking back what <see cref="Replaces"/> names.</summary>
    public string? Kind { get; init; }

    /// <summary>The block's code.</summary>
    public string? Block { get; init; }

    /// <summary>When it was taken; of leaves, each says when.</summary>
    public DateTimeOffset? TakenAt { get; init; }

    /// <summary>leaf, stem or predawn.</summary>
    public string? Measure { get; init; }

    /// <summary>Leaves in the order in which they were read.</summary>
    public IReadOnlyList<LeafMessage>? Leaves { get; init; }

    /// <summary>The soil tube.</summary>
    public string? Tube { get; init; }

    /// <summary>Standard count of the session.</summary>
    public double? StandardCount { get; init; }

    /// <summary>Depths of the tube.</summary>
    public IReadOnlyList<DepthMessage>? Depths { get; init; }

    /// <summary>[cm]</summary>
    public double? ShootLengthCm { get; init; }

    /// <summary>Share of the ground shaded at solar noon, 0–1.</summary>
    public double? ShadedFraction { get; init; }

    /// <summary>Shoots whose tips still grow. [%]</summary>
    public double? GrowingTipsPct { get; init; }

    /// <summary>0 none to 3 leaves yellowing or lost.</summary>
    public int? VisualStress { get; init; }

    /// <summary>Modified Eichhorn–Lorenz number, 1–47.</summary>
    public double? ElStage { get; init; }

    /// <summary>The entry that this one corrects or withdraws; null for a first.</summary>
    public Guid? Replaces { get; init; }

    /// <summary>Who took it.</summary>
    public string? TakenBy { get; init; }

    /// <summary>A remark.</summary>
    public string? Note { get; init; }

    /// <summary>The phone's clock when it was entered.</summary>
    public DateTimeOffset? EnteredAt { get; init; }

    private bool IsWithdrawal => Kind == "withdrawal";

    private TakenKind? KindTaken => Word<TakenKind>(Kind);

    /// <summary>What is wrong, by field, all at once; empty when nothing is.</summary>
    /// <param name="rules">In the sender's words.</param>
    public Dictionary<string, string[]> Mistakes(ReadingRules rules) => Always(rules).Concat(KindTaken switch
    {
        TakenKind.Chamber => OfLeaves(rules),
        TakenKind.Soil => OfSoil(rules),
        TakenKind.Canopy => OfCanopy(rules),
        TakenKind.Stage => [("elStage", ElStage is not (>= GrowthStages.First and <= GrowthStages.Last), rules.Stage)],
        _ => [],
    })
        .Where(check => check.Wrong)
        .GroupBy(check => check.Field)
        .ToDictionary(checks => checks.Key, checks => checks.Select(c => c.Rule).Distinct().ToArray());

    /// <summary>The entry to store, of a message without mistakes.</summary>
    public TakenMessage ToEntry() => new(EntryId!.Value, IsWithdrawal ? null : Content(), Replaces, TakenBy!.Trim(), EnteredAt!.Value);

    private TakenContent Content() => new()
    {
        Kind = KindTaken!.Value,
        BlockCode = Block!.Trim(),
        TakenAt = KindTaken == TakenKind.Chamber ? Leaves!.Min(l => l.TakenAt!.Value) : TakenAt!.Value,
        Leaves = KindTaken == TakenKind.Chamber ? new LeafSet(Word<WaterPotentialMeasure>(Measure)!.Value, [.. Leaves!.Select(l => l.ToLeaf())]) : null,
        Soil = KindTaken == TakenKind.Soil ? new TubeProfile(Tube!.Trim(), StandardCount, [.. Depths!.Select(d => new TubeDepth(d.DepthCm!.Value, d.VwcM3PerM3, d.Count)).OrderBy(d => d.DepthCm)]) : null,
        Canopy = KindTaken == TakenKind.Canopy ? new CanopyFacts(ShootLengthCm, ShadedFraction, GrowingTipsPct, VisualStress) : null,
        ElStage = KindTaken == TakenKind.Stage ? ElStage : null,
        Note = string.IsNullOrWhiteSpace(Note) ? null : Note.Trim(),
    };

    private IEnumerable<(string Field, bool Wrong, string Rule)> Always(ReadingRules rules) =>
    [
        ("entryId", EntryId is null || EntryId == Guid.Empty, rules.Id),
        ("kind", !IsWithdrawal && KindTaken is null, rules.Kind),
        ("replaces", IsWithdrawal && Replaces is null, rules.Withdrawal),
        ("block", !IsWithdrawal && string.IsNullOrWhiteSpace(Block), rules.Block),
        ("takenAt", KindTaken is not null and not TakenKind.Chamber && TakenAt is null, rules.TakenAt),
        ("takenBy", string.IsNullOrWhiteSpace(TakenBy) || TakenBy.Length > LongestName, rules.TakenBy(LongestName)),
        ("note", Note?.Length > LongestNote, rules.Note(LongestNote)),
        ("enteredAt", EnteredAt is null, rules.EnteredAt),
    ];

    private IEnumerable<(string Field, bool Wrong, string Rule)> OfLeaves(ReadingRules rules) =>
    [
        ("measure", Word<WaterPotentialMeasure>(Measure) is null, rules.WhichMeasure),
        ("leaves", Leaves is not { Count: >= 1 and <= MostLeaves } || Leaves.Any(l => l is null), rules.Leaves(MostLeaves)),
        .. (Leaves ?? []).OfType<LeafMessage>().SelectMany((leaf, i) => leaf.Checks(i, rules)),
    ];

    private IEnumerable<(string Field, bool Wrong, string Rule)> OfSoil(ReadingRules rules) =>
    [
        ("tube", string.IsNullOrWhiteSpace(Tube) || Tube.Length > LongestName, rules.Tube),
        ("depths", Depths is not { Count: >= 1 and <= MostDepths } || Depths.Any(d => d is null), rules.Depths(MostDepths)),
        ("depths", Depths is not null && Depths.OfType<DepthMessage>().GroupBy(d => d.DepthCm).Any(d => d.Count() > 1), rules.DepthOnce),
        ("standardCount", Depths is not null && Depths.OfType<DepthMessage>().Any(d => d.Count is not null) && !(StandardCount > 0 && double.IsFinite(StandardCount.Value)), rules.Standard),
        .. (Depths ?? []).OfType<DepthMessage>().SelectMany((depth, i) => depth.Checks(i, rules)),
    ];

    private IEnumerable<(string Field, bool Wrong, string Rule)> OfCanopy(ReadingRules rules) =>
    [
        ("shootLengthCm", ShootLengthCm is not (null or (>= 0 and <= ReadingLimits.MostLengthCm)), rules.Shoot),
        ("shadedFraction", ShadedFraction is not (null or (>= 0 and <= 1)), rules.Shade),
        ("growingTipsPct", GrowingTipsPct is not (null or (>= 0 and <= 100)), rules.Tips),
        ("visualStress", VisualStress is not (null or (>= 0 and <= 3)), rules.Stress),
        ("canopy", ShootLengthCm is null && ShadedFraction is null && GrowingTipsPct is null && VisualStress is null, rules.Canopy),
    ];

    // Names only: a number is no word of the list.
    private static T? Word<T>(string? text)
        where T : struct, Enum => Enum.GetValues<T>().Cast<T?>().FirstOrDefault(value => string.Equals(value.ToString(), text, StringComparison.OrdinalIgnoreCase));

    /// <summary>A leaf as the phone sends it.</summary>
    public sealed record LeafMessage
    {
        /// <summary>When it was read.</summary>
        public DateTimeOffset? TakenAt { get; init; }

        /// <summary>Balancing pressure. [bar, positive]</summary>
        public double? TensionBar { get; init; }

        /// <summary>Group of vines along the block.</summary>
        public string? Group { get; init; }

        /// <summary>sun or shade.</summary>
        public string? Exposure { get; init; }

        /// <summary>[min]</summary>
        public double? BaggedMin { get; init; }

        /// <summary>[s]</summary>
        public double? DelayS { get; init; }

        internal IEnumerable<(string Field, bool Wrong, string Rule)> Checks(int place, ReadingRules rules)
        {
            string Field(string name) => string.Create(CultureInfo.InvariantCulture, $"leaves[{place}].{name}");
            return
            [
                (Field("takenAt"), TakenAt is null, rules.LeafTakenAt),
                (Field("tensionBar"), TensionBar is not (> 0 and <= ReadingLimits.MostTensionBar), rules.Tension),
                (Field("group"), Group?.Length > LongestName, rules.Group(LongestName)),
                (Field("exposure"), Exposure is not null && Word<LeafExposure>(Exposure) is null, rules.Exposure),
                (Field("baggedMin"), BaggedMin is not (null or (>= 0 and <= MostBaggedMin)), rules.Bagged(MostBaggedMin)),
                (Field("delayS"), DelayS is not (null or (>= 0 and <= MostDelayS)), rules.Delay(MostDelayS)),
            ];
        }

        internal TakenLeaf ToLeaf() => new(TakenAt!.Value, TensionBar!.Value)
        {
            Group = string.IsNullOrWhiteSpace(Group) ? null : Group.Trim(),
            Exposure = Word<LeafExposure>(Exposure),
            BaggedMin = BaggedMin,
            DelayS = DelayS,
        };
    }

    /// <summary>A depth as the phone sends it.</summary>
    public sealed record DepthMessage
    {
        /// <summary>[cm]</summary>
        public double? DepthCm { get; init; }

        /// <summary>[m³/m³]</summary>
        public double? VwcM3PerM3 { get; init; }

        /// <summary>Neutron count.</summary>
        public double? Count { get; init; }

        internal IEnumerable<(string Field, bool Wrong, string Rule)> Checks(int place, ReadingRules rules)
        {
            string Field(string name) => string.Create(CultureInfo.InvariantCulture, $"depths[{place}].{name}");
            return
            [
                (Field("depthCm"), DepthCm is not (> 0 and <= ReadingLimits.MostLengthCm), rules.Depth),
                (Field("vwcM3PerM3"), VwcM3PerM3 is not (null or (>= 0 and <= 1)), rules.Content),
                (Field("count"), Count is { } count && !(count >= 0 && double.IsFinite(count)), rules.Count),
                (Field("vwcM3PerM3"), VwcM3PerM3 is null == Count is null, rules.ContentOrCount),
            ];
        }
    }
}
